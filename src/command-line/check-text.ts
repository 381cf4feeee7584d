import type { PlacedNotice, WorkbookCheck } from '../actions/check-workbook.ts';
import { type Day, spokenDay } from '../core/day.ts';
import { type Coins, type Currency, moneyText } from '../core/money.ts';
import type { Severity } from '../core/notice.ts';
import { MATERIAL_KINDS } from '../core/records.ts';
import type { LotFigures, MaterialFigures } from '../core/stock.ts';
import { counted, spokenNumber, unitFor } from '../core/wording.ts';
import { heading, severityMark, type Terminal, wrapped } from './terminal.ts';
import { type TextColumn, textTable } from './text-table.ts';

/** Money for people; a question mark where nothing says what it is. */
export function spokenMoney(coins: Coins | null, currency: Currency): string {
  return coins === null ? '?' : moneyText(coins, currency);
}

/** In which currency amounts are, as an addition to a heading. */
export function inCurrency({ code }: Currency): string {
  return code === '' ? '' : `, amounts in ${code}`;
}

const MATERIAL_COLUMNS: readonly TextColumn[] = [
  { header: 'material', align: 'left' },
  { header: 'left', align: 'right' },
  { header: 'usable', align: 'right' },
  { header: 'planned', align: 'right' },
  { header: 'on order', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'good until', align: 'left' },
  { header: 'worth', align: 'right' },
];

const LOT_COLUMNS: readonly TextColumn[] = [
  { header: 'lot', align: 'left' },
  { header: 'material', align: 'left' },
  { header: 'left', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'good until', align: 'left' },
  { header: 'state', align: 'left' },
  { header: 'worth', align: 'right' },
];

/** The stock and the notices as text. */
export function checkText(answer: WorkbookCheck, withLots: boolean, terminal: Terminal): string[] {
  const { stock, settings, notices } = answer;
  const { currency } = settings;
  const lines = [heading(`Stock on ${spokenDay(stock.today)}${inCurrency(currency)}`, terminal)];
  if (stock.materials.length === 0)
    lines.push('', 'No material is kept yet: the table Materials has no row, or is not there.');
  for (const kind of MATERIAL_KINDS) {
    const materials = stock.materials.filter(({ material }) => material.record.kind === kind);
    if (materials.length === 0) continue;
    const rows = materials.map((figures) => materialRow(figures, currency));
    lines.push('', heading(kind, terminal), ...textTable(MATERIAL_COLUMNS, rows, terminal.width));
  }
  if (withLots && stock.lots.length > 0) {
    const rows = stock.lots.map((figures) => lotRow(figures, currency, stock.today));
    lines.push('', heading('Lots', terminal), ...textTable(LOT_COLUMNS, rows, terminal.width));
  }
  lines.push('', ...noticesText(notices, terminal));
  return lines;
}

function materialRow(
  { material, left, usable, reorder, onOrder, goodUntil, worth }: MaterialFigures,
  currency: Currency,
) {
  const dash = (value: typeof onOrder): string => (value.equals(0) ? '' : spokenNumber(value));
  if (left === null || usable === null) {
    return [material.name, 'not counted', '', '', dash(onOrder), unitFor('2', material.unit), '', ''];
  }
  return [
    material.name,
    spokenNumber(left),
    spokenNumber(usable),
    dash(reorder.planned),
    dash(onOrder),
    unitFor(spokenNumber(left), material.unit),
    goodUntil === null ? '' : spokenDay(goodUntil),
    spokenMoney(worth, currency),
  ];
}

function lotRow(
  { lot, left, goodUntil, state, usable, worth }: LotFigures,
  currency: Currency,
  today: Day,
): string[] {
  return [
    lot.name,
    lot.material.name,
    spokenNumber(left),
    unitFor(spokenNumber(left), lot.record.unit),
    goodUntil === null ? '' : spokenDay(goodUntil),
    usable ? state : whyUnusable({ lot, left, goodUntil, state }, today),
    spokenMoney(worth, currency),
  ];
}

/** What keeps a lot from being drawn on, the first reason that holds. */
function whyUnusable(
  { lot, left, goodUntil, state }: Pick<LotFigures, 'lot' | 'left' | 'goodUntil' | 'state'>,
  today: Day,
): string {
  if (lot.record.received > today) return `from ${spokenDay(lot.record.received)}`;
  if (state !== 'Usable') return state;
  if (left.compare(0) <= 0) return left.equals(0) ? 'Empty' : 'Overdrawn';
  return goodUntil !== null && goodUntil < today ? 'Gone off' : 'Not usable';
}

/** The notices as text, most pressing first, under a line that counts them. */
function noticesText(notices: readonly PlacedNotice[], terminal: Terminal): string[] {
  if (notices.length === 0) return ['Nothing needs attention.'];
  const count = (severity: Severity): number => notices.filter((each) => each.severity === severity).length;
  const parts = [
    `${count('stop')} to mend first (stop)`,
    counted(count('warn'), 'warning'),
    counted(count('note'), 'note'),
  ];
  return [heading(`Needs attention: ${parts.join(', ')}`, terminal), ...noticeLines(notices, terminal)];
}

/** Notices as text, each with how it presses and the cell that it is about. */
export function noticeLines(notices: readonly PlacedNotice[], terminal: Terminal): string[] {
  return notices.flatMap((each) => {
    const where = each.message.startsWith(each.address) ? '' : ` (${each.address})`;
    const [first = '', ...others] = wrapped(`${each.message}${where}`, terminal.width, 8);
    return [`  ${severityMark(each.severity, terminal)}  ${first}`, ...others];
  });
}
