import { cellName } from './cell-reference.ts';
import { isTaken, type RowsTaken } from './rows-taken.ts';
import { type RawRow, readRow, rowPlace, type SheetText } from './sheet-rows.ts';
import { XmlCursor } from './xml-cursor.ts';
import { openingTag, withAttribute } from './xml-tag.ts';

/**
 * The text of a sheet after rows were taken out of a table: what stands below them in the table moves up within
 * its columns, cell by cell as written. Cells beside the table, and the rows themselves, stay in place.
 * @param sheet without formulas that cells share
 */
export function withRowsTaken(sheet: SheetText, taken: RowsTaken): string {
  const { data, rows, head, tail } = sheet;
  const pieces: string[] = [];
  let at = 0;
  let from = taken.at;
  for (let row = taken.at; row <= taken.lastRow; row++, from++) {
    while (isTaken(taken, from)) from += 1;
    const place = rowPlace(rows, row);
    const own = rows.numbers[place] === row ? readRow(sheet, place) : null;
    const sourcePlace = rowPlace(rows, from);
    const hasSource = from <= taken.lastRow && rows.numbers[sourcePlace] === from;
    const source = hasSource ? readRow(sheet, sourcePlace) : null;
    if (!own && !source) continue;
    const start = own?.start ?? rows.starts[place] ?? data.lastIndexOf('</');
    pieces.push(data.slice(at, start), rowText(sheet, row, own, source, taken));
    at = own?.end ?? start;
  }
  pieces.push(data.slice(at));
  return head + pieces.join('') + tail;
}

function rowText(
  sheet: SheetText,
  row: number,
  own: RawRow | null,
  source: RawRow | null,
  { firstColumn, lastColumn }: RowsTaken,
): string {
  const { data, prefix } = sheet;
  const isInside = (column: number): boolean => column >= firstColumn && column <= lastColumn;
  const kept = (own?.cells ?? []).filter(({ column }) => !isInside(column));
  const moved = (source?.cells ?? []).filter(({ column }) => isInside(column));
  const cells = [...kept, ...moved].toSorted((a, b) => a.column - b.column);
  const content = cells.map(({ start, end, column }) => named(data.slice(start, end), cellName(row, column)));
  const rest = own ? data.slice(own.cells.at(-1)?.end ?? own.tagEnd, own.contentEnd) : '';
  const tag = own ? openingTag(own.tag) : `<${prefix}row r="${row}">`;
  return `${tag}${content.join('')}${rest}</${prefix}row>`;
}

function named(cell: string, name: string): string {
  const cursor = new XmlCursor(cell, 'a cell', [0, cell.length]);
  cursor.next();
  return withAttribute(cursor.tag, 'r', name) + cell.slice(cursor.end);
}
