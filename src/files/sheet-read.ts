import type { CellValue, NumberLook } from '../workbook/port.ts';
import { type CellArea, cellName } from './cell-reference.ts';
import { cellValueIn, smallInteger } from './cell-value.ts';
import { damaged } from './file-refused.ts';
import { translateFormula } from './formula-shift.ts';
import { plainCellText, readStringItem, type SharedStrings } from './shared-strings.ts';
import { markOf, type TableGrid } from './sheet-grid.ts';
import { columnAt, type RowIndex, rowNumberAt, type SheetText } from './sheet-rows.ts';
import { XmlCursor } from './xml-cursor.ts';
import { prefixOf } from './xml-tag.ts';

/** What of a sheet is to be read: the body of a table, into its grid. */
export interface BodyToRead {
  readonly body: CellArea;
  readonly grid: TableGrid;
}

/** What cells refer to outside their sheet. */
export interface CellContext {
  readonly strings: SharedStrings;
  readonly look: (style: number | undefined) => NumberLook;
}

interface SharedFormula {
  readonly row: number;
  readonly column: number;
  readonly formula: string;
}

/**
 * Reads a sheet in one pass: checks its form, finds its rows, and fills the grids of its tables.
 * @throws FileRefused where the sheet is damaged
 */
export function readSheet(
  text: string,
  part: string,
  tab: string,
  bodies: readonly BodyToRead[],
  context: CellContext,
): SheetText {
  const cursor = new XmlCursor(text, part);
  cursor.next();
  const prefix = prefixOf(cursor.tag);
  const rows: RowIndex = { numbers: [], starts: [], ends: [] };
  while (cursor.next()) {
    if (cursor.begins('sheetData')) {
      const { start } = cursor;
      if (cursor.isOpening) new BodyReader(cursor, tab, bodies, context).readRows(start, rows);
      const { end } = cursor;
      while (cursor.next()) {
        // The rest is only checked for its form here.
      }
      return {
        part,
        tab,
        head: text.slice(0, start),
        data: text.slice(start, end),
        tail: text.slice(end),
        prefix,
        rows,
      };
    }
    cursor.skipElement();
  }
  throw damaged(`the tab ${tab} has no cells`);
}

/** Reads a sheet only for where its rows stand. */
export function readSheetText(text: string, part: string, tab: string): SheetText {
  return readSheet(text, part, tab, [], {
    strings: { texts: [], formatted: new Set() },
    look: () => 'plain',
  });
}

class BodyReader {
  readonly #cursor: XmlCursor;
  readonly #tab: string;
  readonly #bodies: readonly BodyToRead[];
  readonly #context: CellContext;
  readonly #shared = new Map<string, SharedFormula>();

  constructor(cursor: XmlCursor, tab: string, bodies: readonly BodyToRead[], context: CellContext) {
    this.#cursor = cursor;
    this.#tab = tab;
    this.#bodies = bodies;
    this.#context = context;
  }

  /** Reads all rows; the cursor stands on the opening `sheetData` and is left on the closing one. */
  readRows(dataStart: number, rows: RowIndex): void {
    const cursor = this.#cursor;
    let number = 0;
    while (cursor.next() && !cursor.isClosing) {
      if (!cursor.is('row')) {
        cursor.skipElement();
        continue;
      }
      number = rowNumberAt(cursor, number, this.#tab);
      rows.numbers.push(number);
      rows.starts.push(cursor.start - dataStart);
      if (cursor.isOpening) this.#readCells(number);
      rows.ends.push(cursor.end - dataStart);
    }
  }

  #readCells(row: number): void {
    const cursor = this.#cursor;
    const bodies = this.#bodies.filter(({ body }) => row >= body.firstRow && row <= body.lastRow);
    let column = 0;
    while (cursor.next() && !cursor.isClosing) {
      if (!cursor.is('c')) {
        cursor.skipElement();
        continue;
      }
      column = columnAt(cursor, column, row, this.#tab);
      let target: BodyToRead | undefined;
      for (const each of bodies) {
        if (column >= each.body.firstColumn && column <= each.body.lastColumn) target = each;
      }
      this.#readCell(row, column, target);
    }
  }

  #readCell(row: number, column: number, target: BodyToRead | undefined): void {
    const cursor = this.#cursor;
    const { text, attributePlaces: places } = cursor;
    let type = '';
    let style: number | undefined;
    for (let index = 0; index < cursor.attributeCount * 4; index += 4) {
      const nameStart = places[index] as number;
      if ((places[index + 1] as number) !== nameStart + 1) continue;
      const sign = text.charCodeAt(nameStart);
      if (sign === 116) type = text.slice(places[index + 2], places[index + 3]);
      else if (sign === 115)
        style = smallInteger(text, places[index + 2] as number, places[index + 3] as number);
    }
    let value: CellValue = null;
    let formula: string | null = null;
    if (cursor.isOpening) {
      while (cursor.next() && !cursor.isClosing) {
        if (cursor.is('v')) {
          if (cursor.isEmpty) value = type === 'str' ? '' : null;
          else {
            const start = cursor.end;
            const end = cursor.skipElement();
            if (target) value = this.#value(type, start, end, row, column);
          }
        } else if (cursor.is('f')) formula = this.#readFormula(row, column);
        else if (cursor.is('is') && type === 'inlineStr') value = readStringItem(cursor).text;
        else cursor.skipElement();
      }
    }
    if (!target) return;
    if (formula !== null && value === null) value = { shown: `=${formula}` };
    const gridColumn = column - target.body.firstColumn;
    const gridRow = row - target.body.firstRow;
    const mark = markOf(this.#context.look(style), formula !== null);
    if (value !== null) (target.grid.values[gridColumn] as CellValue[])[gridRow] = value;
    if (mark !== 0) (target.grid.marks[gridColumn] as number[])[gridRow] = mark;
  }

  #value(type: string, start: number, end: number, row: number, column: number): CellValue {
    const value = cellValueIn(this.#cursor.text, start, end, type, this.#context.strings);
    if (value !== undefined) return value;
    throw damaged(`${cellName(row, column)} on the tab ${this.#tab} refers to a text that isn't there`);
  }

  /** The formula of the cell, for one of a shared group as it would read in this cell. */
  #readFormula(row: number, column: number): string {
    const cursor = this.#cursor;
    const kind = cursor.attribute('t');
    const group = cursor.attribute('si') ?? '';
    const formula = cursor.isOpening ? plainCellText(this.#elementText()) : '';
    if (kind !== 'shared') return formula;
    if (formula !== '') {
      this.#shared.set(group, { row, column, formula });
      return formula;
    }
    const master = this.#shared.get(group);
    return master ? translateFormula(master.formula, row - master.row, column - master.column) : '';
  }

  #elementText(): string {
    const { text, end } = this.#cursor;
    return text.slice(end, this.#cursor.skipElement());
  }
}
