import { type Area, contains, isUnbounded } from './cell-area.ts';
import { cellAfterInput } from './cell-input.ts';
import type { Editing, TableChange } from './editing.ts';
import { invalidArgument, wrongArraySize } from './host-error.ts';
import { type Cell, cellAt, type Sheet, setCell, type TableColumn, tablesIn } from './memory-workbook.ts';
import { growTable, partInTable, tableThatGrows } from './table-growth.ts';

/**
 * An array as wide and high as an area. A single value stands for every cell.
 * Throws `InvalidArgument` where an array has another size. Cell values of whole rows or columns can't be set:
 * "Read or write to an unbounded range using the Excel JavaScript API".
 */
export function sizedArray(of: Area, given: unknown): readonly (readonly unknown[])[] {
  if (isUnbounded(of)) throw invalidArgument();
  if (!Array.isArray(given)) {
    return Array.from({ length: of.rows }, () => Array.from({ length: of.columns }, () => given));
  }
  const fits =
    given.length === of.rows && given.every((row) => Array.isArray(row) && row.length === of.columns);
  if (!fits) throw wrongArraySize();
  return given as readonly (readonly unknown[])[];
}

/** A header is text, isn't blank and no other column's. */
export function uniqueHeader(wanted: string, others: readonly string[], index: number): string {
  const taken = new Set(others.map((other) => other.toLowerCase()));
  const base = wanted.trim() === '' ? `Column${index + 1}` : wanted;
  if (!taken.has(base.toLowerCase())) return base;
  let number = 2;
  while (taken.has(`${base}${number}`.toLowerCase())) number++;
  return `${base}${number}`;
}

/** Takes the names of a table's columns from its header cells, as they now stand, and mends those that can't be. */
function followHeaders(editing: Editing, sheet: Sheet, written: Area): void {
  for (const table of tablesIn(editing.workbook, sheet, written)) {
    if (!table.showHeaders || table.row < written.row || table.row >= written.row + written.rows) continue;
    const names: string[] = [];
    table.columns = table.columns.map((column, index): TableColumn => {
      const cell = cellAt(sheet, table.row, table.column + index);
      const later = table.columns.slice(index + 1).map(({ name }) => name);
      const unchanged = cell.value === column.name && cell.formula === undefined;
      const name = unchanged ? column.name : uniqueHeader(String(cell.value), [...names, ...later], index);
      names.push(name);
      if (!unchanged || cell.value !== name) {
        const { formula: _formula, ...rest } = cell;
        setCell(sheet, table.row, table.column + index, { ...rest, value: name });
      }
      return { ...column, name };
    });
  }
}

/** Tells that the cells of an area were edited, for the sheet and for each table that holds some of them. */
export function tellEdited(
  editing: Editing,
  sheet: Sheet,
  of: Area,
  single?: { readonly before: Cell; readonly after: Cell },
): void {
  const tables = tablesIn(editing.workbook, sheet, of).map((table): TableChange => {
    const part = partInTable(table, of) ?? of;
    return { table, changeType: 'RangeEdited', area: part };
  });
  editing.tell({
    kind: 'cells',
    sheet,
    area: of,
    changeType: 'RangeEdited',
    shift: 'None',
    tables,
    ...(single === undefined ? {} : { single }),
  });
}

/**
 * Writes values or formulas to the cells of an area; both take both. A table that ends right above gets longer.
 * Nothing is written where one of the values can't be.
 */
export function writeCells(editing: Editing, sheet: Sheet, to: Area, given: unknown, grows = true): void {
  const values = sizedArray(to, given);
  const cells = values.map((row, down) =>
    row.map((value, across) =>
      cellAfterInput(cellAt(sheet, to.row + down, to.column + across), value, editing.rules),
    ),
  );
  const something = values.some((row) =>
    row.some((value) => value !== null && value !== undefined && value !== ''),
  );
  const growing = grows && something ? tableThatGrows(editing, sheet, to) : null;
  const before = cellAt(sheet, to.row, to.column);
  cells.forEach((row, down) => {
    row.forEach((cell, across) => {
      if (values[down]?.[across] !== null) setCell(sheet, to.row + down, to.column + across, cell);
    });
  });
  if (growing) growTable(growing, to.rows);
  followHeaders(editing, sheet, to);
  const after = cellAt(sheet, to.row, to.column);
  tellEdited(editing, sheet, to, to.rows * to.columns === 1 ? { before, after } : undefined);
}

/** Sets the number formats of an area; null leaves a cell's as it is. A format that is given turns nothing already there into something else. */
export function writeNumberFormats(sheet: Sheet, to: Area, given: unknown): void {
  const formats = sizedArray(to, given);
  const areFormats = (row: readonly unknown[]): row is readonly (string | null)[] =>
    row.every((each) => each === null || typeof each === 'string');
  if (!formats.every(areFormats)) throw invalidArgument();
  for (const [down, row] of formats.entries()) {
    for (const [across, numberFormat] of row.entries()) {
      if (numberFormat === null) continue;
      const cell = cellAt(sheet, to.row + down, to.column + across);
      setCell(sheet, to.row + down, to.column + across, {
        ...cell,
        numberFormat: numberFormat === '' ? 'General' : numberFormat,
      });
    }
  }
}

/** Empties an area: its contents, its formats, or both. Headers of tables can't be blank: they get a name. */
export function clearCells(
  editing: Editing,
  sheet: Sheet,
  of: Area,
  what: 'All' | 'Contents' | 'Formats',
): void {
  const end = Math.min(of.row + of.rows, sheet.rows.length);
  for (let row = of.row; row < end; row++) {
    const width = Math.min(of.column + of.columns, sheet.rows[row]?.length ?? 0);
    for (let column = of.column; column < width; column++) {
      const { value, formula, numberFormat, format } = cellAt(sheet, row, column);
      const kept =
        what === 'Formats' ? { value, ...(formula === undefined ? {} : { formula }) } : { value: '' };
      const looks =
        what === 'Contents'
          ? { numberFormat, ...(format === undefined ? {} : { format }) }
          : { numberFormat: 'General' };
      setCell(sheet, row, column, { ...kept, ...looks });
    }
  }
  if (what === 'All') {
    sheet.validations = sheet.validations.filter((each) => !contains(of, each.area));
  }
  if (what !== 'Formats') {
    followHeaders(editing, sheet, of);
    tellEdited(editing, sheet, of);
  }
}
