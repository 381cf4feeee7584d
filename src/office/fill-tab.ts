import type { DateSystem } from '../core/serial-date.ts';
import type { ColumnBlueprint, TableBlueprint } from '../workbook/blueprint.ts';
import { columnReference, listName } from '../workbook/blueprint-names.ts';
import type { CellWrite } from '../workbook/port.ts';
import { DAY_FORMAT, formatToWrite, valueToWrite } from './cell-content.ts';
import { GENERAL_FORMAT, TEXT_FORMAT } from './cell-values.ts';
import { headerRowOf, rowCountOf, type TabPlan } from './plan-tabs.ts';
import { bytesOf, ROUND_TRIP_BYTES, type Weighed } from './round-trips.ts';

/** A piece of work on a new tab that goes out in one request. */
export interface TabJob extends Weighed {
  readonly queue: (context: Excel.RequestContext) => void;
}

export const NUMBER_FORMATS: Readonly<Record<ColumnBlueprint['format'], string>> = {
  text: TEXT_FORMAT,
  'long text': TEXT_FORMAT,
  number: GENERAL_FORMAT,
  day: DAY_FORMAT,
  money: '#,##0.00',
  percent: '0.00%',
};
const TABLE_STYLE = 'TableStyleLight1';
const MUTED = '#6B7278';
/** What a handful of calls weighs. */
export const CALL_BYTES = 3000;
/** The width of a tab that holds nothing but lines of text. */
const TEXT_WIDTH = 100;

/** A column's width in points, from characters of the standard font (7 pixels each, and 5 around them). */
export const points = (characters: number): number => (7 * characters + 5) * 0.75;

/** A range takes one value for all its cells, though its type says only arrays. */
const forAll = (value: string): string[][] => value as unknown as string[][];

/** The work that puts lines, header, rows and the table on a tab; formulas and validations come later. */
export function cellJobs(plan: TabPlan, dateSystem: DateSystem): TabJob[] {
  const start: TabJob = {
    bytes: CALL_BYTES + bytesOf(plan.tab.lines ?? []),
    queue: (context) => startTab(context, plan),
  };
  const { table } = plan;
  if (table === null) return [start];
  return [
    start,
    { bytes: CALL_BYTES * 4, queue: (context) => dressColumns(context, plan, table) },
    ...rowJobs(plan, table, dateSystem),
    { bytes: CALL_BYTES, queue: (context) => makeTable(context, plan, table) },
  ];
}

function startTab(context: Excel.RequestContext, { name, tab, table }: TabPlan): void {
  const sheet = context.workbook.worksheets.getItem(name);
  if (tab.colour !== undefined) sheet.tabColor = `#${tab.colour}`;
  sheet.showGridlines = false;
  const { lines = [] } = tab;
  if (lines.length > 0) {
    const range = sheet.getRangeByIndexes(0, 0, lines.length, 1);
    range.numberFormat = forAll(TEXT_FORMAT);
    range.values = lines.map((line) => [line]);
    range.getRow(0).format.font.bold = true;
  }
  if (table === null) {
    const column = sheet.getRangeByIndexes(0, 0, 1, 1).getEntireColumn();
    column.format.columnWidth = points(TEXT_WIDTH);
  }
}

function dressColumns(context: Excel.RequestContext, { name, tab }: TabPlan, table: TableBlueprint): void {
  const sheet = context.workbook.worksheets.getItem(name);
  const header = headerRowOf(tab);
  const headers = sheet.getRangeByIndexes(header, 0, 1, table.columns.length);
  headers.numberFormat = forAll(TEXT_FORMAT);
  headers.values = [table.columns.map((column) => column.header)];
  headers.format.wrapText = true;
  table.columns.forEach((column, index) => {
    const cells = sheet.getRangeByIndexes(header + 1, index, rowCountOf(table), 1);
    cells.numberFormat = forAll(NUMBER_FORMATS[column.format]);
    cells.getEntireColumn().format.columnWidth = points(column.width);
    cells.format.verticalAlignment = 'Top';
    if (column.format === 'long text') cells.format.wrapText = true;
    if (column.muted) cells.format.font.color = MUTED;
  });
  sheet.freezePanes.freezeRows(header + 1);
}

/** The rows, in blocks that fit into a request each. */
function rowJobs({ name, tab }: TabPlan, table: TableBlueprint, dateSystem: DateSystem): TabJob[] {
  const blocks: { from: number; bytes: number; rows: (CellWrite | null)[][] }[] = [];
  table.rows.forEach((given, index) => {
    const row = table.columns.map((_, column) => given[column] ?? null);
    const bytes = bytesOf(row);
    const last = blocks.at(-1);
    if (last !== undefined && last.bytes + bytes <= ROUND_TRIP_BYTES / 2) {
      last.rows.push(row);
      last.bytes += bytes;
    } else blocks.push({ from: index, bytes, rows: [row] });
  });
  return blocks.map(({ from, bytes, rows }) => ({
    bytes: bytes + CALL_BYTES,
    queue: (context) => {
      const sheet = context.workbook.worksheets.getItem(name);
      const first = headerRowOf(tab) + 1 + from;
      const range = sheet.getRangeByIndexes(first, 0, rows.length, table.columns.length);
      const formats = rows.map((row) =>
        row.map((cell, column) => {
          const own = NUMBER_FORMATS[table.columns[column]?.format ?? 'number'];
          return cell === null ? null : formatToWrite(cell, own);
        }),
      );
      if (formats.some((row) => row.some((format) => format !== null))) range.numberFormat = formats;
      range.values = rows.map((row) =>
        row.map((cell) => (cell === null ? null : valueToWrite(cell, dateSystem))),
      );
    },
  }));
}

function makeTable(context: Excel.RequestContext, { name, tab }: TabPlan, blueprint: TableBlueprint): void {
  const sheet = context.workbook.worksheets.getItem(name);
  const { length } = blueprint.columns;
  const range = sheet.getRangeByIndexes(headerRowOf(tab), 0, rowCountOf(blueprint) + 1, length);
  const table = sheet.tables.add(range, true);
  table.name = blueprint.name;
  table.style = TABLE_STYLE;
}

/** The work that needs all tables to be there: formulas, totals, notes and choices. */
export function lateJobs({ table }: TabPlan): TabJob[] {
  if (table === null) return [];
  return [
    {
      bytes: CALL_BYTES * 2 + bytesOf(table.columns) + table.rows.length * bytesOf(formulasOf(table)),
      queue: (context) => {
        const made = context.workbook.tables.getItem(table.name);
        putFormulas(made, table);
        putValidations(made, table);
        if (table.totals) putTotals(made, table, table.totals);
      },
    },
  ];
}

const formulasOf = (table: TableBlueprint): string[] =>
  table.columns.flatMap(({ formula }) => (formula === undefined ? [] : [formula]));

function putFormulas(made: Excel.Table, { columns, rows }: TableBlueprint): void {
  const body = made.getDataBodyRange();
  columns.forEach(({ formula }, index) => {
    if (formula === undefined) return;
    const cells = Array.from({ length: Math.max(1, rows.length) }, (_, row) => [
      rows[row]?.[index] ? null : `=${formula}`,
    ]);
    body.getColumn(index).formulas = cells;
  });
}

function putTotals(
  made: Excel.Table,
  { name, columns }: TableBlueprint,
  { label, sums }: NonNullable<TableBlueprint['totals']>,
): void {
  made.showTotals = true;
  const range = made.getTotalRowRange();
  columns.forEach(({ header }, index) => {
    const cell = range.getCell(0, index);
    if (sums.includes(header)) cell.formulas = [[`=SUBTOTAL(109,${columnReference(name, header)})`]];
    else if (index === 0) cell.values = [[label]];
    else cell.values = [['']];
  });
}

const TITLE_LENGTH = 32;

function putValidations(made: Excel.Table, { columns }: TableBlueprint): void {
  const body = made.getDataBodyRange();
  columns.forEach(({ header, note, choices, strict }, index) => {
    if (note === undefined && choices === undefined) return;
    const validation = body.getColumn(index).dataValidation;
    // A note without choices hangs on a rule that anything meets.
    validation.rule =
      choices === undefined
        ? { custom: { formula: '=TRUE' } }
        : { list: { inCellDropDown: true, source: listSource(choices) } };
    validation.ignoreBlanks = true;
    const title = header.slice(0, TITLE_LENGTH);
    if (note !== undefined) validation.prompt = { showPrompt: true, title, message: note };
    const showAlert = choices !== undefined && strict === true;
    validation.errorAlert = { showAlert, style: 'Stop', title, message: 'Choose one of the list.' };
  });
}

function listSource(choices: NonNullable<ColumnBlueprint['choices']>): string {
  return 'table' in choices ? `=${listName(choices.table, choices.column)}` : choices.join(',');
}
