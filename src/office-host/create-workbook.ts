import { type Area, intersection, parseArea } from './cell-area.ts';
import { formulaDown } from './formula-rows.ts';
import { HostError, invalidArgument } from './host-error.ts';
import {
  type Cell,
  findSheet,
  type MemoryWorkbook,
  newId,
  newSheet,
  type Row,
  type Sheet,
  setCell,
  type Table,
  tableArea,
} from './memory-workbook.ts';
import type {
  CellLiteral,
  SheetDescription,
  TableColumnDescription,
  TableDescription,
  WorkbookDescription,
} from './workbook-description.ts';

const NO_RESULT = '#CALC!';

/** The cell that a literal describes. A formula without a stored result shows that nothing calculates here. */
function cellOf(literal: CellLiteral, column?: TableColumnDescription): Cell | undefined {
  const numberFormat = column?.numberFormat ?? 'General';
  if (literal === null) return column?.numberFormat === undefined ? undefined : { value: '', numberFormat };
  if (typeof literal !== 'object') return { value: literal, numberFormat };
  const { formula } = literal;
  return {
    value: literal.value ?? (formula === undefined ? '' : NO_RESULT),
    numberFormat: literal.numberFormat ?? numberFormat,
    ...(formula === undefined ? {} : { formula }),
    ...(literal.format === undefined ? {} : { format: literal.format }),
  };
}

function putRow(sheet: Sheet, row: number, column: number, cells: Row): void {
  const whole = [...(sheet.rows[row] ?? [])];
  cells.forEach((cell, index) => {
    if (cell) whole[column + index] = cell;
  });
  sheet.rows[row] = whole;
}

function addTable(workbook: MemoryWorkbook, sheet: Sheet, given: TableDescription): void {
  const { row, column } = parseArea(given.at);
  const columns = given.columns.map((each) => (typeof each === 'string' ? { name: each } : each));
  const rows = given.rows ?? [];
  const table: Table = {
    id: newId(workbook),
    name: given.name,
    sheet,
    row,
    column,
    columns: columns.map(({ name, formula }, index) => ({
      id: index + 1,
      name,
      ...(formula === undefined ? {} : { formula }),
    })),
    bodyRows: Math.max(1, rows.length),
    showHeaders: true,
    showTotals: given.totals !== undefined,
    style: given.style ?? 'TableStyleMedium2',
    showBandedRows: true,
    showBandedColumns: false,
    showFilterButton: true,
    highlightFirstColumn: false,
    highlightLastColumn: false,
  };
  const taken = (other: Table): boolean =>
    other.name.toLowerCase() === table.name.toLowerCase() ||
    (other.sheet === sheet && intersection(tableArea(other), tableArea(table)) !== null);
  if (columns.length === 0 || workbook.tables.some(taken)) throw new HostError('InvalidArgument', given.name);
  workbook.tables.push(table);
  putRow(
    sheet,
    row,
    column,
    columns.map(({ name }) => cellOf(name)),
  );
  for (let index = 0; index < table.bodyRows; index++) {
    const cells = columns.map((each, place) => {
      const literal = rows[index]?.[place];
      if (literal !== undefined) return cellOf(literal, each);
      // Only a row that is given, if short, has the column's formula; a table's one blank row is blank.
      const formula = rows[index] && each.formula ? formulaDown(each.formula, index) : undefined;
      return cellOf(formula === undefined ? null : { formula }, each);
    });
    putRow(sheet, row + 1 + index, column, cells);
  }
  if (given.totals) {
    putRow(
      sheet,
      row + 1 + table.bodyRows,
      column,
      given.totals.map((literal) => cellOf(literal)),
    );
  }
}

function describeSheet(workbook: MemoryWorkbook, given: SheetDescription): void {
  if (findSheet(workbook, given.name)) throw new HostError('ItemAlreadyExists', given.name);
  const sheet = newSheet(workbook, given.name);
  workbook.sheets.push(sheet);
  sheet.visibility = given.visibility ?? 'Visible';
  sheet.isProtected = given.isProtected ?? false;
  sheet.tabColor = given.tabColor ?? '';
  sheet.showGridlines = given.showGridlines ?? true;
  sheet.frozenRows = given.frozenRows ?? 0;
  for (const [address, block] of Object.entries(given.cells ?? {})) {
    const { row, column } = parseArea(address);
    block.forEach((literals, index) => {
      literals.forEach((literal, place) => {
        const cell = cellOf(literal);
        if (cell) setCell(sheet, row + index, column + place, cell);
      });
    });
  }
  for (const table of given.tables ?? []) addTable(workbook, sheet, table);
  for (const [letters, width] of Object.entries(given.columnWidths ?? {})) {
    sheet.columnWidths.set(parseArea(`${letters}:${letters}`).column, width);
  }
  sheet.validations = (given.validations ?? []).map((each) => ({
    area: parseArea(each.address) satisfies Area,
    rule: each.rule,
    ignoreBlanks: each.ignoreBlanks ?? true,
    prompt: each.prompt ?? null,
    errorAlert: each.errorAlert ?? null,
  }));
}

/**
 * Makes a workbook in memory from plain data.
 * Throws `HostError` where the data describes no workbook: no sheet, two sheets or tables of one name, tables that
 * overlap, an address that is none.
 */
export function createMemoryWorkbook(description: WorkbookDescription): MemoryWorkbook {
  const workbook: MemoryWorkbook = {
    name: description.name ?? 'Workbook.xlsx',
    dateSystem: description.dateSystem ?? 1900,
    readOnly: description.readOnly ?? false,
    sheets: [],
    tables: [],
    names: Object.entries(description.names ?? {}).map(([name, refers]) => ({
      name,
      formula: refers.startsWith('=') ? refers : `=${refers}`,
    })),
    settings: new Map(Object.entries(description.settings ?? {})),
    calculationMode: 'Automatic',
    firstSheetId: '',
    nextId: 1,
  };
  for (const sheet of description.sheets) describeSheet(workbook, sheet);
  const { activeSheet } = description;
  const first =
    activeSheet === undefined
      ? workbook.sheets.find(({ visibility }) => visibility === 'Visible')
      : findSheet(workbook, activeSheet);
  if (!first) throw invalidArgument('A workbook needs a visible sheet.');
  workbook.firstSheetId = first.id;
  return workbook;
}
