import { type CellEdit, valueOfContent } from './cell-edit.ts';
import { areaName, cellName } from './cell-reference.ts';
import { FileRefused } from './file-refused.ts';
import { type RowShift, shiftArea, shiftFormula } from './formula-shift.ts';
import { MAX_ROWS } from './limits.ts';
import { refuseWhatCantMove, shiftPartsOfTab, shiftSharedParts, shiftTableFormulas } from './parts-shift.ts';
import type { RowsTaken } from './rows-taken.ts';
import { blankGrid, markOf } from './sheet-grid.ts';
import { type BodyToRead, readSheet, readSheetText } from './sheet-read.ts';
import { shiftReferences, shiftSheet } from './sheet-shift.ts';
import { firstBodyRow, lastBodyRow, readTablePart, withTableAreas } from './table-part.ts';
import type { SheetState, WorkbookState } from './workbook-state.ts';

/**
 * Puts rows into a tab below the body of a table that is about to grow. Everything at or below moves down, and
 * whatever refers to it follows; the table itself is left for the caller to enlarge.
 * @throws FileRefused where something is in the way that can't be moved without damage
 */
export function insertRows(
  state: WorkbookState,
  sheet: string,
  growing: string,
  rows: { readonly at: number; readonly count: number },
): void {
  const { text } = state.sheet(sheet);
  const shift: RowShift = { tab: text.tab, ...rows };
  refuseTornTables(state, sheet, growing, shift);
  refuseFullTab(state.sheet(sheet), shift);
  refuseWhatCantMove(state.parts, state.names.workbook, sheet, shift);
  moveTables(state, sheet, growing, shift);
  const edits = new Map(
    [...state.sheet(sheet).edits].map(([row, cells]) => {
      return [row >= shift.at ? row + shift.count : row, shiftEdits(cells, text.tab, shift)];
    }),
  );
  reread(state, sheet, shiftSheet(text, shift), edits);
  shiftPartsOfTab(state.parts, sheet, shift);
  shiftOtherSheets(state, sheet, shift);
  shiftSharedParts(state.parts, state.names.workbook, shift);
  state.formulasChanged = true;
  state.noteChange();
}

function refuseTornTables(state: WorkbookState, sheet: string, growing: string, shift: RowShift): void {
  for (const { part, sheet: place } of state.tables) {
    if (place !== sheet || part.name === growing) continue;
    if (part.area.firstRow >= shift.at || part.area.lastRow < shift.at) continue;
    throw new FileRefused(
      `${growing} can't grow: rows have to be put in at row ${shift.at} of the tab ${shift.tab}, which would tear ` +
        `apart the table ${part.name} beside it (${areaName(part.area)}). Move ${part.name} to a tab of its own.`,
    );
  }
}

function refuseFullTab({ text, edits }: SheetState, shift: RowShift): void {
  const last = Math.max(text.rows.numbers.at(-1) ?? 0, ...edits.keys());
  if (last + shift.count <= MAX_ROWS) return;
  throw new FileRefused(
    `What stands at ${cellName(last, 1)} on the tab ${shift.tab} would be pushed off its end. Move it further up.`,
  );
}

/** Moves the other tables of the tab, and lets the formulas in all tables' parts follow. */
function moveTables(state: WorkbookState, sheet: string, growing: string, shift: RowShift): void {
  for (const table of state.tables) {
    const { part } = table.part;
    shiftTableFormulas(state.parts, part, state.sheet(table.sheet).text.tab, shift);
    if (table.sheet === sheet && table.part.name !== growing) {
      const text = state.parts.text(part);
      const moved = withTableAreas(text, part, (area) => shiftArea(area, shift));
      if (moved !== text) state.parts.replace(part, moved);
    }
    state.putTable({ ...table, part: readTablePart(state.parts.text(part), part) });
  }
}

/** Lets the formulas of all other tabs follow the cells that moved on one. */
export function shiftOtherSheets(state: WorkbookState, sheet: string, shift: RowShift | RowsTaken): void {
  const { parts } = state;
  const known = new Map(state.sheets.map((each) => [each.text.part, each]));
  for (const tab of state.tabs) {
    if (tab.part === sheet) continue;
    const own = known.get(tab.part);
    if (!own && !mayMention(parts.text(tab.part), shift.tab)) continue;
    const text = own?.text ?? readSheetText(parts.text(tab.part), tab.part, tab.name);
    const shifted = shiftReferences(text, shift);
    const isSame = shifted === text.head + text.data + text.tail;
    const edits =
      own && new Map([...own.edits].map(([row, cells]) => [row, shiftEdits(cells, tab.name, shift)]));
    if (own && edits) {
      if (!isSame || edits.size > 0) reread(state, tab.part, shifted, edits, !isSame || own.rewritten);
    } else if (!isSame) parts.replace(tab.part, shifted);
  }
}

/** Whether formulas in a part may name a tab: a quick look that spares reading large sheets. */
function mayMention(text: string, tab: string): boolean {
  if (!/^[\p{L}\p{N} _.-]+$/u.test(tab)) return true;
  return new RegExp(tab.replaceAll('.', '\\.'), 'iu').test(text);
}

function shiftEdits(
  cells: ReadonlyMap<number, CellEdit>,
  tab: string,
  shift: RowShift | RowsTaken,
): Map<number, CellEdit> {
  return new Map(
    [...cells].map(([column, edit]) => {
      if (edit.content.kind !== 'formula') return [column, edit];
      const formula = shiftFormula(edit.content.formula, tab, shift);
      return [column, { ...edit, content: { ...edit.content, formula } }];
    }),
  );
}

/** Takes a sheet's new text: finds its rows and reads the bodies of its tables, edits lying over it. */
export function reread(
  state: WorkbookState,
  sheet: string,
  text: string,
  edits: Map<number, Map<number, CellEdit>>,
  rewritten = true,
): void {
  const tables = state.tables.filter((each) => each.sheet === sheet);
  const bodies = tables.map(({ part }): BodyToRead => {
    const body = { ...part.area, firstRow: firstBodyRow(part), lastRow: lastBodyRow(part) };
    return { body, grid: blankGrid(part.columns.length, body.lastRow - body.firstRow + 1) };
  });
  const { styles, strings } = state;
  const read = readSheet(text, sheet, state.sheet(sheet).text.tab, bodies, {
    strings,
    look: (style) => styles.look(style),
  });
  state.takeSheet({ text: read, edits, rewritten });
  tables.forEach((table, index) => {
    const { body, grid } = bodies[index] as BodyToRead;
    layOver(grid, body, edits, state);
    state.takeGrid({ ...table, grid });
  });
}

function layOver(
  grid: BodyToRead['grid'],
  body: BodyToRead['body'],
  edits: ReadonlyMap<number, ReadonlyMap<number, CellEdit>>,
  state: WorkbookState,
): void {
  for (const [row, cells] of edits) {
    if (row < body.firstRow || row > body.lastRow) continue;
    for (const [column, { style, content }] of cells) {
      const values = grid.values[column - body.firstColumn];
      const marks = grid.marks[column - body.firstColumn];
      if (!values || !marks) continue;
      values[row - body.firstRow] = valueOfContent(content);
      marks[row - body.firstRow] = markOf(state.styles.look(style), content.kind === 'formula');
    }
  }
}
