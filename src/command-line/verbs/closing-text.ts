import type { ClosingLot, ClosingMaterial, ClosingStock } from '../../core/closing-stock.ts';
import { isoDay, spokenDay } from '../../core/day.ts';
import { quantityNumber } from '../../core/exact-number.ts';
import { moneyText } from '../../core/money.ts';
import { counted, spokenNumber, unitFor } from '../../core/wording.ts';
import { currencyCode, day, money } from '../answers-json.ts';
import { inCurrency, spokenMoney } from '../check-text.ts';
import { heading, type Terminal, wrapped } from '../terminal.ts';
import { type TextColumn, textTable } from '../text-table.ts';

const COLUMNS: readonly TextColumn[] = [
  { header: 'material', align: 'left' },
  { header: 'lot', align: 'left' },
  { header: 'received', align: 'left' },
  { header: 'left', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'cost of one', align: 'right' },
  { header: 'worth', align: 'right' },
  { header: 'good until', align: 'left' },
  { header: 'state', align: 'left' },
];

/** What stands under every closing stock. */
const FOR_THE_ACCOUNTANT =
  'At cost, each lot at what it cost itself. Nothing is written down: what has gone off or is set aside stands at ' +
  'full cost and is marked. Whether stock is worth less than it cost (the lower of cost and what it would fetch, ' +
  'IAS 2) is for the accountant to say.';

/** The closing stock as a text to print: every material with the sum of its lots, then these, and the total. */
export function closingText(stock: ClosingStock, terminal: Terminal): string[] {
  const { currency, materials, known, unknown } = stock;
  const title = heading(`Closing stock on ${spokenDay(stock.day)}${inCurrency(currency)}`, terminal);
  const rows = materials.flatMap((each) => [
    materialRow(each, stock),
    ...each.lots.map((lot) => lotRow(lot, stock)),
  ]);
  const missing = unknown === 0 ? '' : `, and ${counted(unknown, 'lot')} without a cost, which it misses`;
  return [
    title,
    '',
    ...(materials.length === 0 ? ['Nothing is in stock.'] : textTable(COLUMNS, rows, terminal.width)),
    '',
    `In all ${moneyText(known, currency)}${missing}.`,
    '',
    ...wrapped(FOR_THE_ACCOUNTANT, terminal.width, 0),
  ];
}

function lotRow(each: ClosingLot, { currency }: ClosingStock): string[] {
  const { lot, left, unit, unitCost, worth, goodUntil } = each;
  const number = spokenNumber(left);
  return [
    '',
    lot.name,
    spokenDay(lot.record.received),
    number,
    unitFor(number, unit),
    unitCost === null ? '?' : spokenNumber(unitCost),
    spokenMoney(worth, currency),
    goodUntil === null ? '' : spokenDay(goodUntil),
    stateText(each),
  ];
}

function materialRow({ material, left, unit, worth }: ClosingMaterial, { currency }: ClosingStock): string[] {
  const number = spokenNumber(left);
  return [material.name, '', '', number, unitFor(number, unit), '', spokenMoney(worth, currency), '', ''];
}

function stateText({ state, expired, left }: ClosingLot): string {
  const marks = [
    ...(state === 'Usable' ? [] : [state]),
    ...(expired ? ['Gone off'] : []),
    ...(left.compare(0) < 0 ? ['Overdrawn'] : []),
    ...(left.equals(0) ? ['Empty'] : []),
  ];
  return marks.join(', ');
}

export function closingJson({ day: asOf, currency, materials, total, known, unknown }: ClosingStock) {
  return {
    asOf: isoDay(asOf),
    currency: currencyCode(currency),
    basis: 'cost',
    materials: materials.map(({ material, left, unit, worth, lots }) => ({
      material: material.name,
      unit: unit.name,
      left: quantityNumber(left),
      worth: money(worth, currency),
      lots: lots.map((each) => ({
        lot: each.lot.name,
        received: isoDay(each.lot.record.received),
        left: quantityNumber(each.left),
        unit: each.unit.name,
        unitCost: each.unitCost === null ? null : quantityNumber(each.unitCost),
        worth: money(each.worth, currency),
        goodUntil: day(each.goodUntil),
        state: each.state,
        expired: each.expired,
      })),
    })),
    total: money(total, currency),
    known: moneyText(known, currency),
    unknown,
  };
}
