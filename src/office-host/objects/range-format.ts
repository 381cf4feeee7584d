import { isUnbounded, lastColumn } from '../cell-area.ts';
import type { RangeSubject } from '../client-state.ts';
import { invalidArgument } from '../host-error.ts';
import { cellAt, DEFAULT_COLUMN_WIDTH, setCell } from '../memory-workbook.ts';
import type { Json } from '../request.ts';
import type { CellFormat } from '../workbook-description.ts';
import { areaOf, oneOf, text, truth } from './arguments.ts';
import { LiveObject, type ObjectKind } from './object-kind.ts';

type Field = keyof CellFormat;

/** One field of the format for all cells of a range; null where they differ, as documented. */
function shared(range: RangeSubject, field: Field, otherwise: Json): Json {
  const { row, column, rows, columns } = areaOf(range);
  const end = Math.min(row + rows, Math.max(range.sheet.rows.length, row + 1));
  const width = Math.min(columns, 256);
  let first: Json | undefined;
  for (let down = row; down < end; down++) {
    for (let across = column; across < column + width; across++) {
      const value = cellAt(range.sheet, down, across).format?.[field] ?? otherwise;
      if (first === undefined) first = value;
      else if (first !== value) return null;
    }
  }
  return first ?? otherwise;
}

/** Sets fields of the format of every cell of a range; of whole columns for the rows that the sheet uses. */
function setFormat(range: RangeSubject, fields: CellFormat): void {
  const of = areaOf(range);
  const { sheet } = range;
  const rows = isUnbounded(of) ? Math.min(of.rows, sheet.rows.length - of.row) : of.rows;
  const columns = isUnbounded(of)
    ? Math.min(
        of.columns,
        sheet.rows.reduce((most, each) => Math.max(most, each?.length ?? 0), 0) - of.column,
      )
    : of.columns;
  for (let row = of.row; row < of.row + rows; row++) {
    for (let column = of.column; column < of.column + columns; column++) {
      const cell = cellAt(sheet, row, column);
      setCell(sheet, row, column, { ...cell, format: { ...cell.format, ...fields } });
    }
  }
}

/** A colour as the program gives it back: #RRGGBB; a few names are taken as well. */
export function colour(given: Json): string {
  const named: Readonly<Record<string, string>> = { black: '#000000', white: '#FFFFFF', red: '#FF0000' };
  const plain = text(given);
  const code = named[plain.toLowerCase()] ?? plain;
  if (!/^#?[\da-f]{6}$/i.test(code)) throw invalidArgument();
  return `#${code.replace('#', '').toUpperCase()}`;
}

const HORIZONTAL = [
  'General',
  'Left',
  'Center',
  'Right',
  'Fill',
  'Justify',
  'CenterAcrossSelection',
  'Distributed',
] as const;
const VERTICAL = ['Top', 'Center', 'Bottom', 'Justify', 'Distributed'] as const;

export const rangeFormatKind: ObjectKind<RangeSubject> = {
  scalars: {
    ColumnWidth: (range) => {
      const of = areaOf(range);
      const widths = new Set<number>();
      for (let column = of.column; column <= Math.min(lastColumn(of), of.column + 255); column++) {
        widths.add(range.sheet.columnWidths.get(column) ?? DEFAULT_COLUMN_WIDTH);
      }
      return widths.size === 1 ? ([...widths][0] ?? null) : null;
    },
    HorizontalAlignment: (range) => shared(range, 'horizontalAlignment', 'General'),
    VerticalAlignment: (range) => shared(range, 'verticalAlignment', 'Bottom'),
    WrapText: (range) => shared(range, 'wrapText', false),
  },
  setters: {
    ColumnWidth: (range, value) => {
      if (typeof value !== 'number' || value < 0) throw invalidArgument();
      const of = areaOf(range);
      for (let column = of.column; column <= lastColumn(of); column++)
        range.sheet.columnWidths.set(column, value);
    },
    HorizontalAlignment: (range, value) => {
      setFormat(range, { horizontalAlignment: oneOf(value, HORIZONTAL) });
    },
    VerticalAlignment: (range, value) => {
      setFormat(range, { verticalAlignment: oneOf(value, VERTICAL) });
    },
    WrapText: (range, value) => {
      setFormat(range, { wrapText: truth(value) });
    },
  },
  navigations: {
    Fill: (range) => new LiveObject('RangeFill', range),
    Font: (range) => new LiveObject('RangeFont', range),
  },
  edits: {
    // A width that fits can't be known without measuring text: about six points a character, a gap included.
    AutofitColumns: (range, _args, session) => {
      const { column, columns } = areaOf(range);
      const { rows } = range.sheet;
      for (let across = column; across < column + Math.min(columns, 256); across++) {
        const longest = rows.reduce(
          (most, row, index) =>
            row?.[across] ? Math.max(most, session.textAt(range.sheet, index, across).length) : most,
          0,
        );
        if (longest > 0) range.sheet.columnWidths.set(across, Math.min(longest, 255) * 6 + 6);
      }
      return null;
    },
    AutofitRows: () => null,
  },
};

export const rangeFillKind: ObjectKind<RangeSubject> = {
  scalars: { Color: (range) => shared(range, 'fillColor', '#FFFFFF') },
  setters: {
    Color: (range, value) => {
      setFormat(range, { fillColor: colour(value) });
    },
  },
  edits: {
    Clear: (range) => {
      setFormat(range, { fillColor: '#FFFFFF' });
      return null;
    },
  },
};

export const rangeFontKind: ObjectKind<RangeSubject> = {
  scalars: {
    Bold: (range) => shared(range, 'bold', false),
    Color: (range) => shared(range, 'fontColor', '#000000'),
    Italic: (range) => shared(range, 'italic', false),
  },
  setters: {
    Bold: (range, value) => {
      setFormat(range, { bold: truth(value) });
    },
    Color: (range, value) => {
      setFormat(range, { fontColor: colour(value) });
    },
    Italic: (range, value) => {
      setFormat(range, { italic: truth(value) });
    },
  },
};
