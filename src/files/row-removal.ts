import { arrayAreas } from './array-formulas.ts';
import { areasOverlap, type CellArea, cellName, parseArea } from './cell-reference.ts';
import { writeCell } from './cell-writing.ts';
import { FileRefused } from './file-refused.ts';
import { shiftSharedParts, shiftTableFormulas } from './parts-shift.ts';
import { reread, shiftOtherSheets } from './row-insert.ts';
import type { RowsTaken } from './rows-taken.ts';
import { withoutSharedFormulas } from './shared-formulas-expand.ts';
import { markHasFormula } from './sheet-grid.ts';
import { patchSheet } from './sheet-patch.ts';
import { readSheetText } from './sheet-read.ts';
import { shiftReferences } from './sheet-shift.ts';
import { firstBodyRow, lastBodyRow, readTablePart, type TablePart, withTableAreas } from './table-part.ts';
import { withRowsTaken } from './table-rows-taken.ts';
import type { WorkbookState } from './workbook-state.ts';
import { XmlCursor } from './xml-cursor.ts';

/**
 * Takes rows out of a table: the rows below move up within its columns, and what refers to them follows. The last
 * row of a table is made blank instead, since a table has at least one.
 * @param rows body rows, counted from 0, in their order and none twice
 * @throws FileRefused where something is bound to the rows and can't follow, or a formula names one that goes
 */
export function removeTableRows(state: WorkbookState, name: string, rows: readonly number[]): void {
  const { part, sheet } = state.table(name);
  const bodyRows = lastBodyRow(part) - firstBodyRow(part) + 1;
  if (rows.some((row, place) => !(row > (rows[place - 1] ?? -1) && row < bodyRows))) {
    throw new Error(
      `${name} has ${bodyRows} rows; those to be taken out aren't all among them, in their order`,
    );
  }
  if (rows.length === bodyRows) blankRow(state, name, 0);
  const going = rows.length === bodyRows ? rows.slice(1) : rows;
  const [first] = going;
  if (first === undefined) return;
  const { tab } = state.sheet(sheet).text;
  const { firstColumn, lastColumn, lastRow } = part.area;
  const taken: RowsTaken = {
    tab,
    rows: going.map((row) => firstBodyRow(part) + row),
    at: firstBodyRow(part) + first,
    taken: going.length,
    firstColumn,
    lastColumn,
    lastRow,
  };
  refuseWhatCantFollow(state, sheet, part, taken);
  const flushed = flush(state, sheet);
  const moved = readSheetText(withRowsTaken(withoutSharedFormulas(flushed), taken), sheet, tab);
  const text = shiftReferences(moved, taken);
  state.sharedReferences += sharedCells(text) - sharedCells(flushed.data);
  for (const table of state.tables) {
    shiftTableFormulas(state.parts, table.part.part, state.sheet(table.sheet).text.tab, taken);
    state.putTable({ ...table, part: readTablePart(state.parts.text(table.part.part), table.part.part) });
  }
  shrink(state, name, taken.taken);
  reread(state, sheet, text, new Map());
  shiftOtherSheets(state, sheet, taken);
  shiftSharedParts(state.parts, state.names.workbook, taken);
  state.formulasChanged = true;
  state.noteChange();
}

function blankRow(state: WorkbookState, name: string, row: number): void {
  const { part, grid } = state.table(name);
  part.columns.forEach((_, column) => {
    if (markHasFormula(grid.marks[column]?.[row])) return;
    writeCell(state, name, { row, column }, { kind: 'blank' });
  });
}

/** The text of a sheet with its edits in it. */
function flush(state: WorkbookState, part: string) {
  const { text, edits } = state.sheet(part);
  if (edits.size === 0) return text;
  const patched = patchSheet(text, edits, () => null);
  state.sharedReferences += patched.sharedReferences;
  return readSheetText(patched.text, part, text.tab);
}

function sharedCells(text: string): number {
  return text.match(/<(?:[^\s:<>/]+:)?c\s[^>]*?\bt\s*=\s*["']s["']/g)?.length ?? 0;
}

function shrink(state: WorkbookState, name: string, count: number): void {
  const table = state.table(name);
  const { part } = table;
  const last = lastBodyRow(part);
  const smaller = (area: CellArea): CellArea =>
    area.lastRow === last || area.lastRow === part.area.lastRow
      ? { ...area, lastRow: area.lastRow - count }
      : area;
  state.parts.replace(part.part, withTableAreas(state.parts.text(part.part), part.part, smaller));
  state.putTable({ ...table, part: { ...part, area: smaller(part.area) } });
}

/** What stays in place in the file while cells move would come to stand beside another row. */
function refuseWhatCantFollow(state: WorkbookState, sheet: string, part: TablePart, taken: RowsTaken): void {
  const { text } = state.sheet(sheet);
  const area = { ...part.area, firstRow: taken.at };
  const refuse = (what: string, { firstRow, firstColumn }: CellArea): never => {
    throw new FileRefused(
      `Rows of ${part.name} can't be deleted here: ${what} at ${cellName(firstRow, firstColumn)} would no longer ` +
        'stand at its row. Delete them in a spreadsheet program.',
    );
  };
  for (const each of arrayAreas(text))
    if (areasOverlap(each, area)) refuse('the formula over several cells', each);
  const cursor = new XmlCursor(text.tail, text.part, [0, text.tail.lastIndexOf('</')]);
  while (cursor.next()) {
    if (cursor.isClosing) continue;
    const { name } = cursor;
    const list = cursor.is('sqref') && cursor.isOpening ? cursor.readText() : listOf(cursor);
    for (const each of list.split(/\s+/).map(parseArea)) {
      if (!each || !areasOverlap(each, area)) continue;
      if (name === 'mergeCell') refuse('the joined cells', each);
      if (name === 'hyperlink') refuse('the link', each);
      // A rule for the whole column goes on to hold; one for single rows would hold for others.
      if (each.firstRow > firstBodyRow(part) && each.lastRow <= part.area.lastRow) refuse('a rule', each);
    }
  }
  for (const { kind, target } of state.parts.relationships(sheet)) {
    if (kind !== 'comments' && kind !== 'threadedComment') continue;
    for (const [, reference = ''] of state.parts.text(target).matchAll(/omment\b[^>]*?\sref="([^"]*)"/g)) {
      const each = parseArea(reference);
      if (each && areasOverlap(each, area)) refuse('the comment', each);
    }
  }
}

const WITH_AREAS = new Set(['mergeCell', 'hyperlink', 'dataValidation', 'conditionalFormatting']);

function listOf(cursor: XmlCursor): string {
  if (!WITH_AREAS.has(cursor.name)) return '';
  return cursor.attribute('sqref') ?? cursor.attribute('ref') ?? '';
}
