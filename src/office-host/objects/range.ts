import {
  type Area,
  area,
  areaOfCell,
  boundingArea,
  fullAddress,
  intersection,
  isUnbounded,
  lastColumn,
  lastRow,
  MAX_COLUMNS,
  MAX_ROWS,
} from '../cell-area.ts';
import type { RangeSubject } from '../client-state.ts';
import { formulaDown } from '../formula-rows.ts';
import { HostError, itemNotFound, notImplemented, wrongArraySize } from '../host-error.ts';
import { deleteUp, insertDown } from '../insert-delete.ts';
import { cellAt, isBlank, type Sheet } from '../memory-workbook.ts';
import type { Json } from '../request.ts';
import { usedArea } from '../sheet-cells.ts';
import { clearCells, writeCells, writeNumberFormats } from '../write-cells.ts';
import { areaOf, oneOf, rangeFrom, truth, wholeNumber } from './arguments.ts';
import { type Argument, LiveObject, type ObjectKind, type RequestSession } from './object-kind.ts';
import { valueType } from './value-type.ts';

/** What each cell of a range gives, as rows; null for whole rows and columns ("Read or write to an unbounded range"). */
function grid(
  range: RangeSubject,
  session: RequestSession,
  each: (sheet: Sheet, row: number, column: number) => Json,
): Json {
  const of = areaOf(range);
  if (isUnbounded(of)) return null;
  if (of.rows * of.columns > session.maxCells) {
    throw new HostError(
      'RangeExceedsLimit',
      'The cell count in the range has exceeded the maximum supported number.',
    );
  }
  return Array.from({ length: of.rows }, (_, down) =>
    Array.from({ length: of.columns }, (__, across) => each(range.sheet, of.row + down, of.column + across)),
  );
}

type Method = (range: RangeSubject, args: readonly Argument[], session: RequestSession) => LiveObject | null;

/** A method that gives a range on the same sheet. */
const derived =
  (of: (from: Area, args: readonly Argument[]) => Area | null): Method =>
  (range, args, session) => {
    const found = of(areaOf(range), args);
    return found === null ? null : session.range({ sheet: range.sheet, area: found });
  };

/** A method about this range and another one, which stands on the same sheet. */
const withOther =
  (of: (a: Area, b: Area) => Area | null): Method =>
  (range, [other], session) => {
    const { sheet, area: second } = rangeFrom(other, session.editing.workbook, range.sheet);
    if (sheet !== range.sheet) throw new HostError('InvalidArgument', 'The ranges are on different sheets.');
    const found = of(areaOf(range), second);
    return found === null ? null : session.range({ sheet, area: found });
  };

const required =
  (method: Method): Method =>
  (range, args, session) => {
    const found = method(range, args, session);
    if (found === null) throw itemNotFound();
    return found;
  };

/** Rows next to a range: positive counts lie away from it, negative ones within it. */
function rowsBeside(of: Area, count: number, side: 'above' | 'below'): Area {
  const size = Math.abs(count);
  if (side === 'below')
    return area(count > 0 ? lastRow(of) + 1 : lastRow(of) + 1 - size, of.column, size, of.columns);
  return area(count > 0 ? of.row - size : of.row, of.column, size, of.columns);
}

const isOneCell = ({ rows, columns }: Area): boolean => rows === 1 && columns === 1;

const resized = (of: Area, [rows, columns]: readonly Argument[]): Area =>
  area(of.row, of.column, of.rows + wholeNumber(rows), of.columns + wholeNumber(columns));

const used: Method = (range, [valuesOnly], session) => {
  const counts =
    valuesOnly !== null && valuesOnly !== undefined && truth(valuesOnly)
      ? (cell: ReturnType<typeof cellAt>) => !isBlank(cell)
      : (cell: ReturnType<typeof cellAt>) =>
          !isBlank(cell) || cell.format !== undefined || cell.numberFormat !== 'General';
  const found = usedArea(range.sheet, areaOf(range), counts);
  return found === null ? null : session.range({ sheet: range.sheet, area: found });
};

export const rangeKind: ObjectKind<RangeSubject> = {
  scalars: {
    Address: (range) => fullAddress(range.sheet.name, areaOf(range)),
    CellCount: (range) => {
      const { rows, columns } = areaOf(range);
      // Documented: -1 where there are more than 2^31-1.
      return rows * columns > 2_147_483_647 ? -1 : rows * columns;
    },
    ColumnCount: (range) => areaOf(range).columns,
    ColumnIndex: (range) => areaOf(range).column,
    RowCount: (range) => areaOf(range).rows,
    RowIndex: (range) => areaOf(range).row,
    IsEntireColumn: (range) => areaOf(range).rows === MAX_ROWS,
    IsEntireRow: (range) => areaOf(range).columns === MAX_COLUMNS,
    Formulas: (range, session) =>
      grid(range, session, (sheet, row, column) => {
        const { formula, value } = cellAt(sheet, row, column);
        return formula ?? value;
      }),
    NumberFormat: (range, session) =>
      grid(range, session, (sheet, row, column) => cellAt(sheet, row, column).numberFormat),
    Text: (range, session) => grid(range, session, session.textAt),
    Values: (range, session) => grid(range, session, session.valueAt),
    ValueTypes: (range, session) =>
      grid(range, session, (sheet, row, column) => valueType(session.valueAt(sheet, row, column))),
  },
  setters: {
    Values: (range, value, { editing }) => {
      writeCells(editing, range.sheet, areaOf(range), value);
    },
    Formulas: (range, value, { editing }) => {
      writeCells(editing, range.sheet, areaOf(range), value);
    },
    NumberFormat: (range, value) => {
      writeNumberFormats(range.sheet, areaOf(range), value);
    },
  },
  navigations: {
    DataValidation: (range) => new LiveObject('DataValidation', range),
    Format: (range) => new LiveObject('RangeFormat', range),
    Worksheet: (range) => new LiveObject('Worksheet', range.sheet),
  },
  methods: {
    _ValidateArraySize: (range, [rows, columns]) => {
      const of = areaOf(range);
      if (rows !== of.rows || columns !== of.columns) throw wrongArraySize();
      return null;
    },
    GetAbsoluteResizedRange: derived((of, [rows, columns]) =>
      area(of.row, of.column, wholeNumber(rows), wholeNumber(columns)),
    ),
    GetBoundingRect: withOther(boundingArea),
    GetCell: derived((of, [row, column]) =>
      area(of.row + wholeNumber(row), of.column + wholeNumber(column), 1, 1),
    ),
    GetColumn: derived((of, [column]) => {
      const index = wholeNumber(column);
      return area(of.row, of.column + index, of.rows, 1);
    }),
    GetColumnsAfter: derived((of, [count]) =>
      area(of.row, lastColumn(of) + 1, of.rows, wholeNumber(count, 1)),
    ),
    GetColumnsBefore: derived((of, [count]) =>
      area(of.row, of.column - wholeNumber(count, 1), of.rows, wholeNumber(count, 1)),
    ),
    GetEntireColumn: derived((of) => ({ ...of, row: 0, rows: MAX_ROWS })),
    GetEntireRow: derived((of) => ({ ...of, column: 0, columns: MAX_COLUMNS })),
    GetIntersection: required(withOther(intersection)),
    GetIntersectionOrNullObject: withOther(intersection),
    GetLastCell: derived((of) => areaOfCell(lastRow(of), lastColumn(of))),
    GetLastColumn: derived((of) => ({ ...of, column: lastColumn(of), columns: 1 })),
    GetLastRow: derived((of) => ({ ...of, row: lastRow(of), rows: 1 })),
    GetOffsetRange: derived((of, [rows, columns]) =>
      area(of.row + wholeNumber(rows), of.column + wholeNumber(columns), of.rows, of.columns),
    ),
    GetResizedRange: derived(resized),
    GetRow: derived((of, [row]) => area(of.row + wholeNumber(row), of.column, 1, of.columns)),
    GetRowsAbove: derived((of, [count]) => rowsBeside(of, wholeNumber(count, 1), 'above')),
    GetRowsBelow: derived((of, [count]) => rowsBeside(of, wholeNumber(count, 1), 'below')),
    // Nothing in the range: documented is its first cell for getUsedRange, and the null object for the other.
    GetUsedRange: (range, args, session) =>
      used(range, args, session) ??
      session.range({ sheet: range.sheet, area: { ...areaOf(range), rows: 1, columns: 1 } }),
    GetUsedRangeOrNullObject: used,
    Select: (range, _args, session) => {
      session.select({ sheet: range.sheet, area: areaOf(range) });
      return null;
    },
    Calculate: () => null,
  },
  edits: {
    Clear: (range, [applyTo], { editing }) => {
      const what = oneOf(applyTo ?? 'All', ['All', 'Contents', 'Formats']);
      clearCells(editing, range.sheet, areaOf(range), what);
      return null;
    },
    // Only what a formula filled down needs: one cell, its formula alone.
    CopyFrom: (range, [source, type], { editing }) => {
      const from = rangeFrom(source, editing.workbook, range.sheet);
      const to = areaOf(range);
      if (oneOf(type, ['Formulas', 'All', 'Values', 'Formats']) !== 'Formulas' || !isOneCell(from.area)) {
        throw notImplemented('Range.copyFrom of more than the formula of one cell');
      }
      const { formula, value } = cellAt(from.sheet, from.area.row, from.area.column);
      const rows = Array.from({ length: to.rows }, (_, down) =>
        Array.from({ length: to.columns }, () =>
          formula === undefined ? value : formulaDown(formula, to.row + down - from.area.row),
        ),
      );
      writeCells(editing, range.sheet, to, rows, false);
      return null;
    },
    Delete: (range, [shift], { editing }) => {
      if (oneOf(shift, ['Up', 'Left']) === 'Left') throw notImplemented('Range.delete(Left)');
      deleteUp(editing, range.sheet, areaOf(range));
      return null;
    },
    Insert: (range, [shift], session) => {
      if (oneOf(shift, ['Down', 'Right']) === 'Right') throw notImplemented('Range.insert(Right)');
      const at = areaOf(range);
      insertDown(session.editing, range.sheet, at);
      // What is given back is the new, blank space.
      return session.range({ sheet: range.sheet, area: at });
    },
  },
};
