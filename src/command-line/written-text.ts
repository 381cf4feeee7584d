import type { Written } from '../actions/writing-desk.ts';
import { spokenDay } from '../core/day.ts';
import type { Shortfall } from '../core/draw.ts';
import { type Exact, sum, ZERO } from '../core/exact-number.ts';
import { accountsOf, costIn } from '../core/ledger.ts';
import { isUsableOn } from '../core/life.ts';
import { type LotAccount, stateOn, totalCost } from '../core/lot-account.ts';
import { isUnmaking } from '../core/unmake.ts';
import { counted, spokenNumber, spokenQuantity, unitFor } from '../core/wording.ts';
import { inCurrency, spokenMoney } from './check-text.ts';
import { heading, listed, type Terminal, wrapped } from './terminal.ts';
import { type TextColumn, textTable } from './text-table.ts';

const MOVEMENT_COLUMNS: readonly TextColumn[] = [
  { header: 'entry', align: 'left' },
  { header: 'material', align: 'left' },
  { header: 'lot', align: 'left' },
  { header: 'lot is', align: 'left' },
  { header: 'quantity', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'cost', align: 'right' },
];

/** What logging, drawing or undoing did, as text. */
export function writtenText(written: Written, nothing: string, terminal: Terminal): string[] {
  const { drawing, posting, remarks } = written;
  const { entries, movements, shortfalls } = drawing;
  const lines: string[] = [];
  for (const { entry, drawn, extent } of entries) {
    const { record, treatment } = entry;
    const item = record.item === null ? '' : `, item ${record.item}`;
    const isTaken = movements.some((movement) => movement.entry === entry.name);
    const how =
      drawn === 'yes'
        ? 'drawn'
        : drawn === 'part'
          ? isTaken || entry.record.drawn !== null
            ? 'drawn in part'
            : 'not drawn, for want of stock'
          : 'not drawn';
    const what = `${treatment.name}, ${spokenNumber(extent)} ${treatment.record.extentUnit}`;
    const line = `Entry ${entry.name}: ${what}, job ${record.job}${item}, ${spokenDay(record.date)}: ${how}.`;
    lines.push(...wrapped(line, terminal.width, 2));
  }
  if (movements.length === 0) lines.push(nothing);
  else lines.push('', ...movementsText(written, terminal));
  if (shortfalls.length > 0) {
    lines.push('', heading('Not covered by any lot', terminal));
    for (const shortfall of shortfalls) {
      const { entry, material, missing, unit } = shortfall;
      const line = `${spokenQuantity(missing, unit)} of ${material.name} for entry ${entry.name}: ${whatIsThere(drawing.ledger, shortfall)}`;
      lines.push(...listed(line, terminal));
    }
    const kept = counted(new Set(shortfalls.map(({ entry }) => entry)).size, 'entry', 'entries');
    lines.push(
      ...wrapped(
        `${kept} in the log still to draw in full: enter the lot that is missing, or a Count in Movements, and draw again.`,
        terminal.width,
        2,
      ),
    );
  }
  for (const remark of remarks) lines.push('', ...wrapped(remark, terminal.width, 0));
  if (posting !== null) lines.push('', `Posting ${posting}.`);
  return lines;
}

/** The movements of a posting with what they cost; what was taken back is told in the amounts of the rows reversed. */
function movementsText({ drawing }: Written, terminal: Terminal): string[] {
  const { ledger } = drawing;
  const { currency } = ledger.studio.settings;
  // That nothing is left of a lot that was not made or received after all is told by a remark.
  const movements = drawing.movements.filter((movement) => !isUnmaking(movement, drawing.movements));
  if (movements.length === 0) return [heading('Taken back', terminal)];
  const isTakenBack = movements.every(({ reverses }) => reverses !== null);
  const costs = movements.map((movement) => {
    const cost = costIn(ledger, movement);
    return cost !== null && isTakenBack ? -cost : cost;
  });
  const rows = movements.map((movement, place) => {
    const quantity = spokenNumber(isTakenBack ? movement.quantity.neg() : movement.quantity);
    return [
      movement.entry ?? '',
      movement.lot.material.name,
      movement.lot.name,
      movement.lotIs ?? '',
      quantity,
      unitFor(quantity, movement.unit),
      spokenMoney(costs[place] ?? null, currency),
    ];
  });
  const total = totalCost(costs.filter((cost) => cost !== null));
  const unknown = costs.filter((cost) => cost === null).length;
  const missing = unknown === 0 ? '' : `, and ${counted(unknown, 'movement')} of lots without a cost`;
  return [
    heading(`${isTakenBack ? 'Taken back' : 'Taken from stock'}${inCurrency(currency)}`, terminal),
    ...textTable(MOVEMENT_COLUMNS, rows, terminal.width),
    `In all ${spokenMoney(total, currency)}${missing}.`,
  ];
}

/** Why the lots of a material don't cover more: what they hold, or that there are none. */
function whatIsThere(ledger: Written['drawing']['ledger'], { entry, material }: Shortfall): string {
  const { date } = entry.record;
  const accounts = accountsOf(ledger, material).filter((account) => stateOn(account, date) !== 'Discarded');
  if (accounts.length === 0) return 'there is no lot of it.';
  const hold = (some: readonly LotAccount[]): Exact =>
    sum(
      some.map(({ lot, postings }) => {
        const last = postings.at(-1)?.left ?? lot.record.quantity;
        return last.mul(lot.converter.factor(lot.record.unit, material.unit) ?? ZERO);
      }),
    );
  const usable = hold(accounts.filter((account) => isUsableOn(account, date)));
  if (usable.compare(0) > 0) {
    return `lots that were not named, or rests of less than a whole unit, hold ${spokenQuantity(usable, material.unit)}.`;
  }
  const barred = hold(accounts);
  return barred.compare(0) > 0
    ? `lots that have gone off, are set aside, or came later hold ${spokenQuantity(barred, material.unit)}.`
    : 'its lots are empty.';
}
