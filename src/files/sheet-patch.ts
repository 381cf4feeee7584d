import { type CellEdit, cellXml, type NumberOfText } from './cell-edit.ts';
import { areaName, type CellArea, cellName, parseArea } from './cell-reference.ts';
import { readRow, rowPlace, type SheetText } from './sheet-rows.ts';
import { XmlCursor } from './xml-cursor.ts';
import { attributeOf, openingTag, withAttribute } from './xml-tag.ts';

/** The cells to be written on a sheet: by row, then by column. */
export type SheetEdits = ReadonlyMap<number, ReadonlyMap<number, CellEdit>>;

/**
 * The text of a sheet's part with cells written. Rows without edits stay as they are, byte for byte; in the
 * others only the cells written change. Rows and cells stay in ascending order.
 * @returns the text, and how many more cells (fewer: negative) refer to shared strings than before
 */
export function patchSheet(
  sheet: SheetText,
  edits: SheetEdits,
  numberOfText: NumberOfText,
): { text: string; sharedReferences: number } {
  let sharedReferences = 0;
  const counted: NumberOfText = (text) => {
    const number = numberOfText(text);
    if (number !== null) sharedReferences++;
    return number;
  };
  const { data, prefix, rows } = sheet;
  const rowNumbers = [...edits.keys()].toSorted((a, b) => a - b);
  const isEmpty = rows.numbers.length === 0 && data.endsWith('/>');
  const pieces: string[] = [];
  let at = 0;
  if (isEmpty) {
    pieces.push(openingTag(data));
    at = data.length;
  }
  const bodyEnd = isEmpty ? data.length : data.lastIndexOf('</');
  for (const number of rowNumbers) {
    const cells = [...(edits.get(number) ?? [])].toSorted(([a], [b]) => a - b);
    const written = cells.map(
      ([column, edit]) => [column, cellXml(number, column, edit, prefix, counted)] as const,
    );
    const place = rowPlace(rows, number);
    if (rows.numbers[place] === number) {
      const row = patchRow(sheet, place, written);
      sharedReferences -= row.sharedReplaced;
      pieces.push(data.slice(at, rows.starts[place]), row.text);
      at = rows.ends[place] as number;
      continue;
    }
    const content = written.map(([, xml]) => xml).join('');
    if (content === '') continue;
    const position = rows.starts[place] ?? bodyEnd;
    pieces.push(data.slice(at, position), `<${prefix}row r="${number}">${content}</${prefix}row>`);
    at = position;
  }
  pieces.push(isEmpty ? `</${prefix}sheetData>` : data.slice(at));
  return { text: withDimension(sheet, edits) + pieces.join('') + sheet.tail, sharedReferences };
}

function patchRow(
  sheet: SheetText,
  place: number,
  written: readonly (readonly [number, string])[],
): { text: string; sharedReplaced: number } {
  const row = readRow(sheet, place);
  const { data, prefix } = sheet;
  let sharedReplaced = 0;
  let content = '';
  let at = row.tagEnd;
  let next = 0;
  const putUpTo = (column: number): void => {
    for (; next < written.length && (written[next] as readonly [number, string])[0] < column; next++) {
      content += (written[next] as readonly [number, string])[1];
    }
  };
  for (const cell of row.cells) {
    if (next >= written.length) break;
    content += data.slice(at, cell.start);
    at = cell.start;
    putUpTo(cell.column);
    if (written[next]?.[0] !== cell.column) continue;
    if (cell.type === 's' && cell.hasValue) sharedReplaced++;
    // A cell made blank stays as an empty one: cells without a reference behind it count from it.
    content += (written[next] as readonly [number, string])[1] || emptyCell(sheet, place, cell.column);
    next++;
    at = cell.end;
  }
  if (next < written.length) {
    const lastEnd = row.cells.at(-1)?.end ?? row.tagEnd;
    content += data.slice(at, lastEnd);
    at = lastEnd;
    putUpTo(Number.POSITIVE_INFINITY);
  }
  content += data.slice(at, row.contentEnd);
  const tag = withSpan(openingTag(row.tag), written);
  return { text: `${tag}${content}</${prefix}row>`, sharedReplaced };
}

function emptyCell({ prefix, rows }: SheetText, place: number, column: number): string {
  return `<${prefix}c r="${cellName(rows.numbers[place] as number, column)}"/>`;
}

/** Widens the row's hint of which columns it uses. */
function withSpan(tag: string, written: readonly (readonly [number, string])[]): string {
  const spans = /^(\d+):(\d+)$/.exec(attributeOf(tag, 'spans') ?? '');
  if (!spans) return tag;
  const columns = written.map(([column]) => column);
  const first = Math.min(Number(spans[1]), ...columns);
  const last = Math.max(Number(spans[2]), ...columns);
  const wider = `${first}:${last}`;
  return wider === spans[0] ? tag : withAttribute(tag, 'spans', wider);
}

/** The head of the sheet, its dimension reaching to the cells written. */
function withDimension({ head, part }: SheetText, edits: SheetEdits): string {
  const range = areaOfEdits(edits);
  if (!range) return head;
  const cursor = new XmlCursor(head, part, [0, head.length]);
  while (cursor.next()) {
    if (!cursor.begins('dimension')) continue;
    const area = parseArea(cursor.attribute('ref') ?? '');
    if (!area) return head;
    const wider: CellArea = {
      firstRow: Math.min(area.firstRow, range.firstRow),
      lastRow: Math.max(area.lastRow, range.lastRow),
      firstColumn: Math.min(area.firstColumn, range.firstColumn),
      lastColumn: Math.max(area.lastColumn, range.lastColumn),
    };
    if (areaName(wider) === areaName(area)) return head;
    return (
      head.slice(0, cursor.start) + withAttribute(cursor.tag, 'ref', areaName(wider)) + head.slice(cursor.end)
    );
  }
  return head;
}

function areaOfEdits(edits: SheetEdits): CellArea | null {
  let firstRow = Number.POSITIVE_INFINITY;
  let lastRow = 0;
  let firstColumn = Number.POSITIVE_INFINITY;
  let lastColumn = 0;
  for (const [row, cells] of edits) {
    for (const [column, edit] of cells) {
      if (edit.content.kind === 'blank' && edit.style === undefined) continue;
      firstRow = Math.min(firstRow, row);
      lastRow = Math.max(lastRow, row);
      firstColumn = Math.min(firstColumn, column);
      lastColumn = Math.max(lastColumn, column);
    }
  }
  return lastRow === 0 ? null : { firstRow, lastRow, firstColumn, lastColumn };
}
