import { areaName, type CellArea, parseArea } from './cell-reference.ts';
import { unescapeCellText } from './cell-text.ts';
import { damaged } from './file-refused.ts';
import { MAX_TABLE_CELLS } from './limits.ts';
import { XmlCursor } from './xml-cursor.ts';
import { withAttribute, withoutAttribute } from './xml-tag.ts';

/** A column of a table as its part declares it. */
export interface TableColumn {
  readonly header: string;
  /** The formula that new rows get; null where the column isn't a calculated one. */
  readonly formula: string | null;
  /** Whether that formula is entered as an array formula. */
  readonly isArray: boolean;
}

/** A table as its part declares it (ISO/IEC 29500-1, 18.5.1.2). */
export interface TablePart {
  readonly part: string;
  readonly name: string;
  /** Everything: header row, body and totals row. */
  readonly area: CellArea;
  readonly headerRows: number;
  readonly totalsRows: number;
  readonly columns: readonly TableColumn[];
}

export function readTablePart(text: string, part: string): TablePart {
  const cursor = new XmlCursor(text, part);
  cursor.next();
  const name = cursor.attribute('displayName') ?? cursor.attribute('name') ?? '';
  const area = parseArea(cursor.attribute('ref') ?? '');
  const headerRows = count(cursor.attribute('headerRowCount'), 1);
  const totalsRows = count(cursor.attribute('totalsRowCount'), 0);
  const columns: TableColumn[] = [];
  while (cursor.next()) {
    if (!cursor.begins('tableColumn')) continue;
    const header = unescapeCellText(cursor.attribute('name') ?? '');
    const depth = cursor.depth;
    let formula: string | null = null;
    let isArray = false;
    if (cursor.isOpening) {
      while (cursor.next() && cursor.depth >= depth) {
        if (!cursor.begins('calculatedColumnFormula')) continue;
        isArray = /^(?:1|true)$/.test(cursor.attribute('array') ?? '');
        formula = cursor.isOpening ? unescapeCellText(cursor.readText()) : null;
      }
    }
    columns.push({ header, formula: formula === '' ? null : formula, isArray });
  }
  if (!area || name === '') throw damaged(`${part} describes no table`);
  const rows = area.lastRow - area.firstRow + 1;
  if (columns.length !== area.lastColumn - area.firstColumn + 1 || rows < headerRows + totalsRows) {
    throw damaged(`the table ${name} is declared as ${areaName(area)}, which doesn't fit its columns`);
  }
  if (rows * columns.length > MAX_TABLE_CELLS) {
    throw damaged(`the table ${name} is declared as ${areaName(area)}, far more than it can hold`);
  }
  return { part, name, area, headerRows, totalsRows, columns };
}

/** The first row of the body. */
export function firstBodyRow(table: TablePart): number {
  return table.area.firstRow + table.headerRows;
}

/** The last row of the body; one less than the first where the body has no row. */
export function lastBodyRow(table: TablePart): number {
  return table.area.lastRow - table.totalsRows;
}

/** Carries every cell area that the table's part names (its own, its filter, its sorting) to a new one. */
export function withTableAreas(text: string, part: string, move: (area: CellArea) => CellArea): string {
  const cursor = new XmlCursor(text, part);
  let written = '';
  let at = 0;
  while (cursor.next()) {
    if (cursor.isClosing) continue;
    const reference = cursor.attribute('ref');
    const area = reference === undefined ? null : parseArea(reference);
    if (!area) continue;
    let tag = cursor.tag;
    const moved = move(area);
    if (areaName(moved) !== areaName(area)) tag = withAttribute(tag, 'ref', fullName(moved, reference ?? ''));
    written += text.slice(at, cursor.start) + tag;
    at = cursor.end;
  }
  return written + text.slice(at);
}

/** The table's part without the mark of a table whose only row is still to be filled. */
export function withoutInsertRow(text: string, part: string): string {
  const cursor = new XmlCursor(text, part);
  cursor.next();
  const tag = withoutAttribute(withoutAttribute(cursor.tag, 'insertRow'), 'insertRowShift');
  return text.slice(0, cursor.start) + tag + text.slice(cursor.end);
}

/** Single cells keep the form in which they were written, "A1" or "A1:A1". */
function fullName(area: CellArea, old: string): string {
  const name = areaName(area);
  return old.includes(':') && !name.includes(':') ? `${name}:${name}` : name;
}

function count(attribute: string | undefined, otherwise: number): number {
  const number = Number(attribute ?? otherwise);
  return Number.isInteger(number) && number >= 0 ? number : otherwise;
}
