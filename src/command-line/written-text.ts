import { costIn, type Written } from '../actions/writing-desk.ts';
import { spokenDay } from '../core/day.ts';
import { sum } from '../core/exact-number.ts';
import { totalCost } from '../core/lot-account.ts';
import { spokenNumber, spokenQuantity, unitFor } from '../core/wording.ts';
import { inCurrency, spokenMoney } from './check-text.ts';
import { heading, type Terminal, wrapped } from './terminal.ts';
import { type TextColumn, textTable } from './text-table.ts';

const MOVEMENT_COLUMNS: readonly TextColumn[] = [
  { header: 'entry', align: 'left' },
  { header: 'material', align: 'left' },
  { header: 'lot', align: 'left' },
  { header: '', align: 'left' },
  { header: 'quantity', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'cost', align: 'right' },
];

/** What logging, drawing or undoing did, as text. */
export function writtenText(written: Written, nothing: string, terminal: Terminal): string[] {
  const { drawing, posting, remarks } = written;
  const { ledger, entries, movements, shortfalls } = drawing;
  const { currency } = ledger.studio.settings;
  const lines: string[] = [];
  for (const { entry, drawn, extent } of entries) {
    const { record, treatment } = entry;
    const item = record.item === null ? '' : `, item ${record.item}`;
    const how = drawn === 'yes' ? 'drawn' : drawn === 'part' ? 'drawn in part' : 'not drawn';
    const what = `${treatment.name}, ${spokenNumber(extent)} ${treatment.record.extentUnit}`;
    lines.push(`Entry ${entry.name}: ${what}, job ${record.job}${item}, ${spokenDay(record.date)}: ${how}`);
  }
  if (movements.length === 0) lines.push(nothing);
  else {
    const costs = movements.map((movement) => costIn(ledger, movement));
    const rows = movements.map((movement, place) => [
      movement.entry ?? '',
      movement.lot.material.name,
      movement.lot.name,
      movement.lotIs ?? '',
      spokenNumber(movement.quantity),
      unitFor(spokenNumber(movement.quantity), movement.unit),
      spokenMoney(costs[place] ?? null, currency),
    ]);
    lines.push('', heading(`Taken from stock${inCurrency(currency)}`, terminal), ...textTable(MOVEMENT_COLUMNS, rows));
    const total = totalCost(costs.filter((cost) => cost !== null));
    const unknown = costs.filter((cost) => cost === null).length;
    const missing = unknown === 0 ? '' : `, and ${unknown} of lots without a cost`;
    lines.push(`In all ${spokenMoney(total, currency)}${missing}.`);
  }
  if (shortfalls.length > 0) {
    lines.push('', heading('Not covered by any lot', terminal));
    for (const { entry, material, missing, unit } of shortfalls) {
      lines.push(`  ${spokenQuantity(missing, unit)} of ${material.name} for entry ${entry.name}: ${whatIsThere(written, material)}`);
    }
    lines.push('The entry is kept as drawn in part. Receive, make or count a lot, then draw again.');
  }
  for (const remark of remarks) lines.push('', ...wrapped(remark, terminal.width, 0));
  if (posting !== null) lines.push('', `Posting ${posting}.`);
  return lines;
}

/** Why the lots of a material don't cover more: what they hold, or that there are none. */
function whatIsThere({ drawing }: Written, material: Written['drawing']['shortfalls'][number]['material']): string {
  const lots = drawing.ledger.studio.lotsOfMaterial.get(material) ?? [];
  if (lots.length === 0) return 'there is no lot of it.';
  const held = sum(
    lots.map((lot) => {
      const factor = lot.converter.factor(lot.record.unit, material.unit) ?? 0;
      const last = drawing.ledger.accounts.get(lot)?.postings.at(-1)?.left ?? lot.record.quantity;
      return last.mul(factor);
    }),
  );
  return held.compare(0) > 0
    ? `${spokenQuantity(held, material.unit)} is left in lots that have gone off, are set aside, or came later.`
    : 'its lots are empty.';
}
