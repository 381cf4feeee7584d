import { columnLetters } from './cell-reference.ts';
import { damaged } from './file-refused.ts';
import { MAX_COLUMNS, MAX_ROWS } from './limits.ts';
import { XmlCursor } from './xml-cursor.ts';
import { attributeOf } from './xml-tag.ts';

/**
 * The text of a sheet's part in three pieces, and where its rows stand in the middle one. Only the middle is
 * large, so what stands before and behind it can be rewritten cheaply.
 */
export interface SheetText {
  readonly part: string;
  /** The name of the tab. */
  readonly tab: string;
  readonly head: string;
  /** The `sheetData` element. */
  readonly data: string;
  readonly tail: string;
  /** The namespace prefix of the sheet's elements, colon included, or ''. */
  readonly prefix: string;
  readonly rows: RowIndex;
}

/** The rows that the sheet holds, ascending: number, start and end in `data`. */
export interface RowIndex {
  readonly numbers: number[];
  readonly starts: number[];
  readonly ends: number[];
}

/** The place of the row in the index, or of the next higher one. */
export function rowPlace(rows: RowIndex, number: number): number {
  let low = 0;
  let high = rows.numbers.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rows.numbers[middle] as number) < number) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** A cell as it is written in a row; places are in the text that was read. */
export interface RawCell {
  readonly column: number;
  readonly start: number;
  readonly end: number;
  readonly style: number | undefined;
  /** The attribute `t`. */
  readonly type: string | undefined;
  /** Whether it has a stored value, and the text of its formula element with its tag, if there is one. */
  readonly hasValue: boolean;
  readonly formula: RawFormula | undefined;
}

export interface RawFormula {
  readonly tag: string;
  readonly start: number;
  readonly end: number;
  /** As in the XML, entities unresolved. */
  readonly source: string;
}

export interface RawRow {
  /** The place of its tag, and where its content ends. */
  readonly start: number;
  readonly tagEnd: number;
  readonly contentEnd: number;
  readonly end: number;
  readonly tag: string;
  readonly isEmpty: boolean;
  readonly style: number | undefined;
  readonly cells: readonly RawCell[];
}

/** Reads the cells of one row, by its place in the index. */
export function readRow(sheet: SheetText, place: number): RawRow {
  const start = sheet.rows.starts[place] as number;
  const end = sheet.rows.ends[place] as number;
  const cursor = new XmlCursor(sheet.data, sheet.part, [start, end]);
  cursor.next();
  const { tag, end: tagEnd, isEmpty } = cursor;
  const written = attributeOf(tag, 'customFormat') === '1' ? attributeOf(tag, 's') : undefined;
  const style = written === undefined ? undefined : Number(written);
  const row = { start, tagEnd, end, tag, isEmpty, style };
  if (isEmpty) return { ...row, contentEnd: tagEnd, cells: [] };
  const cells: RawCell[] = [];
  let column = 0;
  while (cursor.next() && !cursor.isClosing) {
    if (cursor.is('c')) {
      column = columnAt(cursor, column, sheet.rows.numbers[place] as number, sheet.tab);
      cells.push(readRawCell(cursor, column));
    } else cursor.skipElement();
  }
  return { ...row, contentEnd: cursor.start, cells };
}

function readRawCell(cursor: XmlCursor, column: number): RawCell {
  const { start } = cursor;
  const style = cursor.attribute('s');
  const type = cursor.attribute('t');
  let hasValue = false;
  let formula: RawFormula | undefined;
  if (cursor.isOpening) {
    const depth = cursor.depth;
    while (cursor.next() && cursor.depth >= depth) {
      if (cursor.begins('f')) {
        const { tag, start: formulaStart, end: tagEnd, isOpening } = cursor;
        const sourceEnd = cursor.skipElement();
        const source = isOpening ? cursor.text.slice(tagEnd, sourceEnd) : '';
        formula = { tag, start: formulaStart, end: cursor.end, source };
      } else if (cursor.begins('v') || cursor.begins('is')) {
        hasValue = cursor.isOpening && cursor.skipElement() > 0;
      }
    }
  }
  return {
    column,
    start,
    end: cursor.end,
    style: style === undefined ? undefined : Number(style),
    type,
    hasValue,
    formula,
  };
}

/** The row number that a `row` tag stands for, given the one before it. */
export function rowNumberAt(cursor: XmlCursor, before: number, tab: string): number {
  const written = cursor.attribute('r');
  const number = written === undefined ? before + 1 : Number(written);
  if (!Number.isInteger(number) || number <= before || number > MAX_ROWS) {
    throw damaged(`on the tab ${tab} the row "${written ?? number}" comes after row ${before}`);
  }
  return number;
}

/** The column that a `c` tag stands for, given the one before it in the row. */
export function columnAt(cursor: XmlCursor, before: number, row: number, tab: string): number {
  const { text, attributePlaces: places } = cursor;
  for (let index = 0; index < cursor.attributeCount * 4; index += 4) {
    const nameStart = places[index] as number;
    if ((places[index + 1] as number) !== nameStart + 1 || text.charCodeAt(nameStart) !== 114) continue;
    let at = places[index + 2] as number;
    const end = places[index + 3] as number;
    let column = 0;
    let sign = text.charCodeAt(at);
    while (at < end && sign >= 65) {
      column = column * 26 + ((sign & 0xdf) - 64);
      sign = text.charCodeAt(++at);
    }
    let written = 0;
    while (at < end) {
      written = written * 10 + (text.charCodeAt(at++) - 48);
    }
    if (column > before && column <= MAX_COLUMNS && written === row) return column;
    const name = text.slice(places[index + 2], end);
    throw damaged(`on the tab ${tab} the cell "${name}" is out of place in row ${row}`);
  }
  if (before >= MAX_COLUMNS)
    throw damaged(`on the tab ${tab} row ${row} runs beyond ${columnLetters(before)}`);
  return before + 1;
}
