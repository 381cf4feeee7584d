import { isoDay, spokenDay } from '../../core/day.ts';
import type { Disposals, Disposed, DisposedMaterial } from '../../core/disposals.ts';
import { quantityNumber } from '../../core/exact-number.ts';
import { type Currency, moneyText } from '../../core/money.ts';
import { counted, spokenNumber, spokenQuantity, unitFor } from '../../core/wording.ts';
import { currencyCode, money } from '../answers-json.ts';
import { inCurrency, spokenMoney } from '../check-text.ts';
import { heading, type Terminal, wrapped } from '../terminal.ts';
import { type TextColumn, textTable } from '../text-table.ts';

const COLUMNS: readonly TextColumn[] = [
  { header: 'day', align: 'left' },
  { header: 'lot', align: 'left' },
  { header: 'quantity', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'worth', align: 'right' },
  { header: 'for', align: 'left' },
  { header: 'note', align: 'left' },
];

/** What stands under every list. */
const DEFERRAL =
  "This says what was written down, not how anything may be thrown away: follow the supplier's safety data sheet, " +
  'local codes and whoever is licensed to take it.';

/** What was thrown away in a year, as a text to print. */
export function disposalText(disposals: Disposals, terminal: Terminal): string[] {
  const { year, currency, materials, undated, jobWaste, studioLoss, withoutCost } = disposals;
  const lines = [heading(`Thrown away in ${year}${inCurrency(currency)}`, terminal)];
  if (materials.length === 0) lines.push('', 'Nothing was thrown away, as far as it was written down.');
  for (const each of materials) lines.push('', ...materialText(each, currency, terminal));
  if (undated.length > 0) {
    lines.push('', heading('Discarded, no day is written down (fill in State since)', terminal));
    lines.push(
      ...textTable(
        COLUMNS,
        undated.map((row) => rowText(row, currency)),
        terminal.width,
      ),
    );
  }
  const missing =
    withoutCost === 0 ? '' : ` It misses ${counted(withoutCost, 'row')} of lots without a cost.`;
  const sums = `The studio's own loss: ${moneyText(studioLoss, currency)}. Normal waste of jobs: ${moneyText(jobWaste, currency)}.`;
  lines.push('', ...wrapped(sums + missing, terminal.width, 0));
  lines.push('', ...wrapped(DEFERRAL, terminal.width, 0));
  return lines;
}

function materialText(each: DisposedMaterial, currency: Currency, terminal: Terminal): string[] {
  const { material, quantity, unit, worth, withoutCost, rule, hazards, rows } = each;
  const price = withoutCost === rows.length ? '?' : moneyText(worth, currency);
  return [
    heading(`${material.name}: ${spokenQuantity(quantity, unit)}, worth ${price}`, terminal),
    ...wrapped(`Disposal: ${rule ?? 'nothing is said in Materials'}`, terminal.width, 2),
    ...(hazards === null ? [] : wrapped(`Hazards: ${hazards}`, terminal.width, 2)),
    ...textTable(
      COLUMNS,
      rows.map((row) => rowText(row, currency)),
      terminal.width,
    ),
  ];
}

function rowText(
  { day, lot, quantity, unit, worth, job, borneBy, by, note }: Disposed,
  currency: Currency,
): string[] {
  const number = spokenNumber(quantity);
  return [
    day === null ? 'unknown' : spokenDay(day),
    lot.name,
    number,
    unitFor(number, unit),
    spokenMoney(worth, currency),
    borneBy === 'job' ? `job ${job ?? ''}` : 'the studio',
    [by === 'state' ? 'lot discarded, no Waste written' : '', note ?? '']
      .filter((text) => text !== '')
      .join('; '),
  ];
}

export function disposalJson(disposals: Disposals) {
  const { year, currency, materials, jobWaste, studioLoss, withoutCost, undated } = disposals;
  return {
    year,
    currency: currencyCode(currency),
    materials: materials.map((each) => ({
      material: each.material.name,
      unit: each.unit.name,
      quantity: quantityNumber(each.quantity),
      worth: moneyText(each.worth, currency),
      withoutCost: each.withoutCost,
      disposal: each.rule,
      hazards: each.hazards,
      rows: each.rows.map((row) => rowJson(row, currency)),
    })),
    studioLoss: moneyText(studioLoss, currency),
    jobWaste: moneyText(jobWaste, currency),
    withoutCost,
    undated: undated.map((row) => rowJson(row, currency)),
  };
}

function rowJson(row: Disposed, currency: Currency) {
  return {
    movement: row.movement,
    date: row.day === null ? null : isoDay(row.day),
    lot: row.lot.name,
    quantity: quantityNumber(row.quantity),
    unit: row.unit.name,
    worth: money(row.worth, currency),
    job: row.job,
    borneBy: row.borneBy,
    by: row.by,
    note: row.note,
  };
}
