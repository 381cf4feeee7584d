import { areaName, type CellArea, parseArea } from './cell-reference.ts';
import { mapReferences } from './formula-references.ts';
import { MAX_COLUMNS, MAX_ROWS } from './limits.ts';

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
  shift: RowShift,
  onlyFixed = false,
): string {
  const shifted = shift.tab.toLowerCase();
  return mapReferences(formula, (reference) => {
    const tab = reference.tab ?? ownTab;
    if (reference.row === null || reference.row < shift.at || tab?.toLowerCase() !== shifted)
      return reference;
    if (onlyFixed && !reference.rowFixed) return reference;
    return { ...reference, row: Math.min(MAX_ROWS, reference.row + shift.count) };
  });
}

/** An area after rows were put in on its tab; one that they fall into grows. */
export function shiftArea(area: CellArea, { at, count }: RowShift): CellArea {
  const moved = (row: number): number => (row >= at ? Math.min(MAX_ROWS, row + count) : row);
  return { ...area, firstRow: moved(area.firstRow), lastRow: moved(area.lastRow) };
}

/** A list of areas or cells ("A1 B2:C9") after rows were put in; what is no area stays. */
export function shiftAreaList(list: string, shift: RowShift): string {
  return list.replace(/[^\s]+/g, (name) => {
    const area = parseArea(name);
    if (!area) return name;
    const shifted = areaName(shiftArea(area, shift));
    return areaName(area) === shifted ? name : shifted;
  });
}
