import { areaName, type CellArea, parseArea } from './cell-reference.ts';
import { MAX_COLUMNS } from './limits.ts';
import type { PackageParts } from './package-parts.ts';
import { relationshipsPartOf } from './relationships.ts';
import { readRow, type SheetText } from './sheet-rows.ts';
import type { WorkbookState } from './workbook-state.ts';
import { XmlCursor } from './xml-cursor.ts';

/** A tab: how far it is filled, and the tables on it. */
export interface TabShape {
  readonly name: string;
  /** Whether spreadsheet programs keep it from view. */
  readonly hidden: boolean;
  /** The last row and column that hold anything; 0 where nothing does. */
  readonly lastRow: number;
  readonly lastColumn: number;
  readonly tables: readonly TableShape[];
  /** The columns that are told of, ascending; all others have the usual width. */
  readonly columns: readonly ColumnShape[];
  /** Whether a chart stands on it. */
  readonly hasChart: boolean;
}

export interface TableShape {
  readonly name: string;
  /** Headers, body and totals. */
  readonly area: CellArea;
  readonly headerRows: number;
  readonly totalsRows: number;
}

/** Neighbouring columns of one width. */
export interface ColumnShape {
  readonly first: number;
  readonly last: number;
  /** In characters of the standard font; null where the file doesn't say. */
  readonly width: number | null;
  readonly hidden: boolean;
}

/** The tabs of a workbook in their order. */
export function tabShapes(state: WorkbookState): TabShape[] {
  return state.tabs.map(({ name, part, hidden }) => {
    const { text, edits } = state.sheet(part);
    const tables = state.tables.filter((table) => table.sheet === part);
    const areas = tables.map((table) => table.part.area);
    const edited = [...edits].flatMap(([, cells]) => [...cells.keys()]);
    return {
      name,
      hidden,
      lastRow: largest([text.rows.numbers.at(-1) ?? 0, ...areas.map((each) => each.lastRow)], edits.keys()),
      lastColumn: largest([storedColumns(text), ...areas.map((each) => each.lastColumn)], edited),
      tables: tables.map(({ part: { name: table, area, headerRows, totalsRows } }) => ({
        name: table,
        area,
        headerRows,
        totalsRows,
      })),
      columns: columnShapes(text),
      hasChart: holdsChart(state.parts, part),
    };
  });
}

const CHART_LINK = /<(?:[^\s:<>/]+:)?Relationship\b[^>]*?\sType="[^"]*\/chart(?:Ex)?"/;

/** Whether the drawing of a sheet, if it has one, leads to a chart. */
function holdsChart(parts: PackageParts, sheet: string): boolean {
  return parts.relationships(sheet).some(({ kind, target, external }) => {
    if (kind !== 'drawing' || external) return false;
    return CHART_LINK.test(parts.find(relationshipsPartOf(target)) ?? '');
  });
}

function largest(some: readonly number[], more: Iterable<number>): number {
  let most = Math.max(...some);
  for (const each of more) most = Math.max(most, each);
  return most;
}

/** Rows that are looked at where the sheet doesn't tell its size. */
const ROWS_LOOKED_AT = 1000;

/** The last column that the sheet's stored cells reach. */
function storedColumns(sheet: SheetText): number {
  const written = /<(?:[^\s:/>]+:)?dimension\b[^>]*?\sref="([^"]*)"/.exec(sheet.head)?.[1];
  const area = written === undefined ? null : parseArea(written);
  // Some programs write A1 as the dimension of whatever sheet.
  if (area && areaName(area) !== 'A1') return area.lastColumn;
  let last = 0;
  const rows = Math.min(sheet.rows.numbers.length, ROWS_LOOKED_AT);
  for (let place = 0; place < rows; place++) {
    last = Math.max(last, readRow(sheet, place).cells.at(-1)?.column ?? 0);
  }
  return last;
}

function columnShapes({ head, part }: SheetText): ColumnShape[] {
  const start = head.search(/<(?:[^\s:/>]+:)?cols[\s>]/);
  if (start < 0) return [];
  const shapes: ColumnShape[] = [];
  const cursor = new XmlCursor(head, part, [start, head.length]);
  while (cursor.next() && !cursor.closes('cols')) {
    if (!cursor.begins('col')) continue;
    const width = Number(cursor.attribute('width') ?? 'none');
    shapes.push({
      first: Number(cursor.attribute('min')),
      last: Math.min(MAX_COLUMNS, Number(cursor.attribute('max'))),
      width: Number.isFinite(width) ? width : null,
      hidden: /^(?:1|true)$/.test(cursor.attribute('hidden') ?? ''),
    });
  }
  return shapes;
}
