import type { CellValue, NumberLook } from '../workbook/port.ts';
import { type CellEdit, valueOfContent } from './cell-edit.ts';
import { cellName } from './cell-reference.ts';
import { cellValueIn } from './cell-value.ts';
import { damaged } from './file-refused.ts';
import { formulaAt } from './shared-formulas.ts';
import { readStringItem } from './shared-strings.ts';
import { markHasFormula } from './sheet-grid.ts';
import { type RawCell, readRow, rowPlace, type SheetText } from './sheet-rows.ts';
import { firstBodyRow, lastBodyRow } from './table-part.ts';
import type { WorkbookState } from './workbook-state.ts';
import { XmlCursor } from './xml-cursor.ts';

/** A cell of a tab as it is to be shown. */
export interface ShownCell {
  /** Counted from 1. */
  readonly column: number;
  /** Of a formula its stored result. */
  readonly value: CellValue;
  /** Without the equals sign; null where the cell holds none. */
  readonly formula: string | null;
  /** The number format code: 'General', '0.00', 'yyyy-mm-dd'. */
  readonly format: string;
  readonly look: NumberLook;
}

/** The cells of one row of a tab that have a value, a formula or a format of their own, by column. */
export function cellsOfRow(state: WorkbookState, part: string, row: number): ShownCell[] {
  const { text, edits } = state.sheet(part);
  const written = edits.get(row);
  const place = rowPlace(text.rows, row);
  const stored = text.rows.numbers[place] === row ? readRow(text, place).cells : [];
  const cells = stored
    .filter((cell) => !written?.has(cell.column))
    .map((cell) => storedCell(state, text, row, cell));
  for (const [column, edit] of written ?? []) cells.push(editedCell(state, column, edit));
  return cells.sort((a, b) => a.column - b.column);
}

/** Whether a cell holds a value or a formula; quick within tables, whose cells have been read already. */
export function isFilled(state: WorkbookState, part: string, row: number, column: number): boolean {
  for (const { part: table, sheet, grid } of state.tables) {
    if (sheet !== part || row < firstBodyRow(table) || row > lastBodyRow(table)) continue;
    const place = column - table.area.firstColumn;
    const values = grid.values[place];
    if (values) {
      const body = row - firstBodyRow(table);
      return values[body] !== null || markHasFormula(grid.marks[place]?.[body]);
    }
  }
  return cellsOfRow(state, part, row).some((cell) => {
    return cell.column === column && (cell.value !== null || cell.formula !== null);
  });
}

function storedCell(state: WorkbookState, sheet: SheetText, row: number, cell: RawCell): ShownCell {
  const { column, style, formula } = cell;
  const text = formula ? (formulaAt(sheet, row, column) ?? '') : null;
  const value = storedValue(state, sheet, row, cell);
  return {
    column,
    value: text !== null && value === null ? { shown: `=${text}` } : value,
    formula: text,
    format: state.styles.code(style),
    look: state.styles.look(style),
  };
}

function storedValue(state: WorkbookState, sheet: SheetText, row: number, cell: RawCell): CellValue {
  if (!cell.hasValue) return cell.type === 'str' && cell.formula ? '' : null;
  const cursor = new XmlCursor(sheet.data, sheet.part, [cell.start, cell.end]);
  cursor.next();
  while (cursor.next() && !cursor.isClosing) {
    if (cursor.is('v')) {
      const start = cursor.end;
      const value = cellValueIn(sheet.data, start, cursor.skipElement(), cell.type ?? '', state.strings);
      if (value !== undefined) return value;
      const name = cellName(row, cell.column);
      throw damaged(`${name} on the tab ${sheet.tab} refers to a text that isn't there`);
    }
    if (cursor.is('is')) return readStringItem(cursor).text;
    cursor.skipElement();
  }
  return null;
}

function editedCell(state: WorkbookState, column: number, { style, content }: CellEdit): ShownCell {
  return {
    column,
    value: valueOfContent(content),
    formula: content.kind === 'formula' ? content.formula : null,
    format: state.styles.code(style),
    look: state.styles.look(style),
  };
}
