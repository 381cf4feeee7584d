import { type Area, lastColumn, lastRow } from './cell-area.ts';
import type { AreaShift } from './editing.ts';

const covers = (at: Area, of: Area): boolean => of.column >= at.column && lastColumn(of) <= lastColumn(at);

/** Where ranges go when cells are put in at an area and those below move down. */
export const movedDown =
  (at: Area): AreaShift =>
  (of) => {
    if (!covers(at, of) || lastRow(of) < at.row) return of;
    return of.row >= at.row ? { ...of, row: of.row + at.rows } : { ...of, rows: of.rows + at.rows };
  };

/** Where ranges go when the cells of an area are taken out and those below move up. */
export const movedUp =
  (at: Area): AreaShift =>
  (of) => {
    if (!covers(at, of) || lastRow(of) < at.row) return of;
    const gone = Math.max(0, Math.min(lastRow(of), lastRow(at)) - Math.max(of.row, at.row) + 1);
    if (gone === of.rows) return null;
    const above = Math.max(0, Math.min(at.rows, of.row - at.row));
    return { ...of, row: of.row - above, rows: of.rows - gone };
  };
