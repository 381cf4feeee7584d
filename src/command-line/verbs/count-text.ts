import type { PlacedNotice } from '../../actions/check-workbook.ts';
import type { CountWritten } from '../../actions/stocktake.ts';
import { type Day, isoDay, spokenDay } from '../../core/day.ts';
import { quantityNumber } from '../../core/exact-number.ts';
import { totalCost } from '../../core/lot-account.ts';
import type { LotToCount, Stocktake, StocktakeList } from '../../core/stocktake.ts';
import type { CountDifference } from '../../core/stocktake-differences.ts';
import { counted as countedNoun, spokenNumber, spokenQuantity, unitFor } from '../../core/wording.ts';
import { money, writtenJson } from '../answers-json.ts';
import { inCurrency, spokenMoney } from '../check-text.ts';
import { heading, listed, type Terminal, wrapped } from '../terminal.ts';
import { type TextColumn, textTable } from '../text-table.ts';

const LIST_COLUMNS: readonly TextColumn[] = [
  { header: 'lot', align: 'left' },
  { header: 'material', align: 'left' },
  { header: 'jar g', align: 'right' },
  { header: 'expected', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'counted', align: 'left' },
];
/** Where a figure is filled in by hand. */
const BLANK = '______________';
const NO_PLACE = 'No place given';

/** The list for a walk through the studio, as text. */
export function stocktakeText(
  { stocktake, places, stocktakes }: StocktakeList,
  today: Day,
  place: string | null,
  terminal: Terminal,
): string[] {
  const lots = places.flatMap((each) => each.lots);
  const where = place === null ? '' : `, ${place}`;
  const lines = [heading(`To count on ${spokenDay(today)}${where}`, terminal)];
  if (stocktake !== null) {
    const done = lots.filter(({ counted }) => counted !== null).length;
    lines.push(`Stocktake ${stocktake} is under way: ${done} of ${countedNoun(lots.length, 'lot')} counted.`);
  }
  if (lots.length === 0) lines.push('', 'Nothing is there to be counted.');
  for (const each of places) {
    const rows = each.lots.map(listRow);
    lines.push(
      '',
      heading(each.place ?? NO_PLACE, terminal),
      ...textTable(LIST_COLUMNS, rows, terminal.width),
    );
  }
  if (stocktakes.length > 0) lines.push('', heading('Stocktakes', terminal));
  for (const each of stocktakes) lines.push(...listed(stocktakeWords(each), terminal));
  return lines;
}

function listRow({ lot, expected, counted, typed }: LotToCount): string[] {
  const { tare, unit } = lot.record;
  const number = spokenNumber(expected);
  const found =
    counted === null
      ? typed === null
        ? BLANK
        : `${BLANK} Left typed: ${spokenQuantity(typed, unit)}`
      : `${spokenQuantity(counted.quantity, counted.unit)}, ${spokenDay(counted.countedOn)}${counted.posting === null ? '' : ', posted'}`;
  return [
    lot.name,
    lot.material.name,
    tare === null ? '' : spokenNumber(tare),
    number,
    unitFor(number, unit),
    found,
  ];
}

function stocktakeWords({ name, waiting, posted, firstDay, lastDay, takenBack }: Stocktake): string {
  const days = firstDay === lastDay ? spokenDay(lastDay) : `${spokenDay(firstDay)} to ${spokenDay(lastDay)}`;
  const parts = [
    ...(waiting > 0 ? [`${countedNoun(waiting, 'lot')} waiting to be posted`] : []),
    ...(posted > 0
      ? [`${countedNoun(posted, 'lot')} posted${takenBack ? ' and taken back since' : ''}`]
      : []),
  ];
  return `${name} (${days}): ${parts.join(', ')}.`;
}

export function stocktakeJson(
  { stocktake, places, stocktakes }: StocktakeList,
  today: Day,
  place: string | null,
) {
  return {
    asOf: isoDay(today),
    place,
    stocktake,
    places: places.map((each) => ({
      place: each.place,
      lots: each.lots.map(({ lot, expected, counted, typed }) => ({
        lot: lot.name,
        material: lot.material.name,
        expected: quantityNumber(expected),
        unit: lot.record.unit.name,
        tare: lot.record.tare === null ? null : quantityNumber(lot.record.tare),
        counted: counted === null ? null : quantityNumber(counted.quantity),
        countedUnit: counted?.unit.name ?? null,
        countedOn: counted === null ? null : isoDay(counted.countedOn),
        posting: counted?.posting ?? null,
        leftTyped: typed === null ? null : quantityNumber(typed),
      })),
    })),
    stocktakes: stocktakes.map(({ name, waiting, posted, firstDay, lastDay, takenBack }) => ({
      stocktake: name,
      from: isoDay(firstDay),
      to: isoDay(lastDay),
      waiting,
      posted,
      takenBack,
    })),
  };
}

const COUNT_COLUMNS: readonly TextColumn[] = [
  { header: 'lot', align: 'left' },
  { header: 'material', align: 'left' },
  { header: 'expected', align: 'right' },
  { header: 'counted', align: 'right' },
  { header: 'difference', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'loss', align: 'right' },
];

/** What counting or posting did, as text. */
export function countedText(written: CountWritten, isPosted: boolean, terminal: Terminal): string[] {
  const { stocktake, differences, drawing, posting, remarks } = written;
  const { currency } = drawing.ledger.studio.settings;
  const lines: string[] = [];
  if (differences.length === 0 && remarks.length === 0) {
    lines.push(isPosted ? 'Nothing is counted that is not posted.' : 'Nothing was counted.');
  }
  if (differences.length > 0) {
    lines.push(
      heading(`Stocktake ${stocktake}${inCurrency(currency)}`, terminal),
      ...textTable(
        COUNT_COLUMNS,
        differences.map((each) => countRow(each, written)),
        terminal.width,
      ),
      ...wrapped(sumOf(written, isPosted), terminal.width, 0),
    );
  }
  for (const remark of remarks) lines.push('', ...wrapped(remark, terminal.width, 0));
  if (posting !== null) lines.push('', `Posting ${posting}.`);
  return lines;
}

function countRow(
  { lot, counted, expected, difference, cost }: CountDifference,
  written: CountWritten,
): string[] {
  const number = spokenNumber(counted);
  const isSame = difference.equals(0);
  return [
    lot.name,
    lot.material.name,
    spokenNumber(expected),
    number,
    isSame ? '' : `${difference.compare(0) > 0 ? '+' : ''}${spokenNumber(difference)}`,
    unitFor(number, lot.record.unit),
    isSame ? '' : spokenMoney(cost, written.drawing.ledger.studio.settings.currency),
  ];
}

/** What the differences come to; a loss is what the Counts cost. */
function sumOf({ differences, drawing }: CountWritten, isPosted: boolean): string {
  const differing = differences.filter(({ difference }) => !difference.equals(0));
  if (differing.length === 0) return 'Nothing differs.';
  const { currency } = drawing.ledger.studio.settings;
  const costs = differing.map(({ cost }) => cost).filter((cost) => cost !== null);
  const unknown = differing.length - costs.length;
  const missing = unknown === 0 ? '' : `, and ${countedNoun(unknown, 'lot')} without a cost`;
  const total = totalCost(costs) ?? 0n;
  const sum = `in all a ${total < 0n ? 'gain' : 'loss'} of ${spokenMoney(total < 0n ? -total : total, currency)}`;
  const waits = isPosted ? '' : ' Nothing is posted yet: --post does it.';
  return `${countedNoun(differing.length, 'lot')} with a difference: ${sum}${missing}.${waits}`;
}

export function countedJson(written: CountWritten, notices: readonly PlacedNotice[]) {
  const { currency } = written.drawing.ledger.studio.settings;
  const { posting, movements, notices: told } = writtenJson(written, notices);
  return {
    stocktake: written.stocktake === '' ? null : written.stocktake,
    posting,
    counts: written.differences.map(({ record, lot, counted, expected, difference, cost }) => ({
      lot: lot.name,
      material: lot.material.name,
      countedOn: isoDay(record.countedOn),
      counted: quantityNumber(counted),
      expected: quantityNumber(expected),
      difference: quantityNumber(difference),
      unit: lot.record.unit.name,
      cost: money(cost, currency),
    })),
    movements,
    remarks: written.remarks,
    notices: told,
  };
}
