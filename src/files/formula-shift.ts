import { areaName, type CellArea, parseArea } from './cell-reference.ts';
import { FileRefused } from './file-refused.ts';
import { type FormulaReference, mapReferences } from './formula-references.ts';
import { MAX_COLUMNS, MAX_ROWS } from './limits.ts';
import { isTaken, type RowsTaken, takenAbove } from './rows-taken.ts';

/**
 * The formula as it reads when it is copied `rows` down and `columns` to the right: what has no $ goes along.
 */
export function translateFormula(formula: string, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return formula;
  return mapReferences(formula, (reference) => {
    const column =
      reference.column === null || reference.columnFixed ? reference.column : reference.column + columns;
    const row = reference.row === null || reference.rowFixed ? reference.row : reference.row + rows;
    return fits(column, MAX_COLUMNS) && fits(row, MAX_ROWS) ? { ...reference, column, row } : null;
  });
}

function fits(value: number | null, most: number): boolean {
  return value === null || (value >= 1 && value <= most);
}

/** Rows put into a tab: `count` of them before row `at`. */
export interface RowShift {
  readonly tab: string;
  readonly at: number;
  readonly count: number;
  readonly taken?: never;
}

/**
 * The formula after rows were put in: what it says of cells at or below them goes down.
 * @param ownTab the tab that the formula stands on, which references without a tab mean
 * @param onlyFixed whether rows without a $ stay: the formula of a rule is meant relative to the rule's first
 *   cell, and where that one stays, they count on from it
 */
export function shiftFormula(
  formula: string,
  ownTab: string | null,
  shift: RowShift | RowsTaken,
  onlyFixed = false,
): string {
  const shifted = shift.tab.toLowerCase();
  return mapReferences(formula, (reference) => {
    const tab = reference.tab ?? ownTab;
    if (reference.row === null || reference.row < shift.at || tab?.toLowerCase() !== shifted) {
      return reference;
    }
    if (onlyFixed && !reference.rowFixed) return reference;
    if (shift.taken !== undefined) return afterTaking(reference, shift, formula);
    return { ...reference, row: Math.min(MAX_ROWS, reference.row + shift.count) };
  });
}

function afterTaking(reference: FormulaReference, taken: RowsTaken, formula: string): FormulaReference {
  const { column, row, otherRow } = reference;
  const { firstColumn, lastColumn, lastRow } = taken;
  if (column === null || row === null || column < firstColumn || column > lastColumn || row > lastRow) {
    return reference;
  }
  const moved = movedUp(taken, row);
  if (!isTaken(taken, row)) return { ...reference, row: moved };
  // One end of an area: the area ends at the next row that stays, if there is one in it.
  if (otherRow !== null && otherRow < row && lastStaying(taken, row) >= movedUp(taken, otherRow)) {
    return { ...reference, row: lastStaying(taken, row) };
  }
  if (otherRow !== null && otherRow > row && lastStaying(taken, otherRow) >= moved) {
    return { ...reference, row: moved };
  }
  throw new FileRefused(
    `Row ${row} of the tab ${taken.tab} can't be deleted: the formula =${formula} refers to it. Change that first.`,
  );
}

/** Where a row comes to stand; for one that goes, where the next below it does. */
function movedUp(taken: RowsTaken, row: number): number {
  return row > taken.lastRow ? row : row - takenAbove(taken, row);
}

/** Where the row comes to stand that is the last to stay up to a row. */
function lastStaying(taken: RowsTaken, row: number): number {
  return isTaken(taken, row) ? movedUp(taken, row) - 1 : movedUp(taken, row);
}

/** An area after rows were put in on its tab, or taken out: one that they fall into grows, or shrinks. */
export function shiftArea(area: CellArea, shift: RowShift | RowsTaken): CellArea {
  if (shift.taken !== undefined) return areaAfterTaking(area, shift);
  const { at, count } = shift;
  const moved = (row: number): number => (row >= at ? Math.min(MAX_ROWS, row + count) : row);
  return { ...area, firstRow: moved(area.firstRow), lastRow: moved(area.lastRow) };
}

function areaAfterTaking(area: CellArea, taken: RowsTaken): CellArea {
  const { at, firstColumn, lastColumn, lastRow } = taken;
  const isInside = area.firstColumn >= firstColumn && area.lastColumn <= lastColumn;
  if (!isInside || area.lastRow < at || area.lastRow > lastRow) return area;
  return { ...area, firstRow: movedUp(taken, area.firstRow), lastRow: lastStaying(taken, area.lastRow) };
}

/** A list of areas or cells ("A1 B2:C9") after rows were put in or taken out; what is no area stays. */
export function shiftAreaList(list: string, shift: RowShift | RowsTaken): string {
  return list.replace(/[^\s]+/g, (name) => {
    const area = parseArea(name);
    if (!area) return name;
    const shifted = areaName(shiftArea(area, shift));
    return areaName(area) === shifted ? name : shifted;
  });
}
