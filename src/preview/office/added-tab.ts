import type { ColumnShape, TableShape, TabShape } from '../../files/tab-shape.ts';
import type { ColumnBlueprint, TabBlueprint, TableBlueprint } from '../../workbook/blueprint.ts';
import type { CellWrite, NewColumn } from '../../workbook/port.ts';
import type { GridSource } from '../model/grid-source.ts';
import { typedOf } from './host-cells.ts';

const USUAL_WIDTH = 14;

/** A tab that has come to the host, as a blueprint for the file: the lines above its first table, and the table. */
export function addedTab(host: GridSource, tab: TabShape): TabBlueprint {
  const [table] = tab.tables;
  const lines: string[] = [];
  // The file puts one free row between the lines and the table.
  const lastLine = table ? table.area.firstRow - 2 : tab.lastRow;
  for (let row = 1; row <= lastLine; row++) {
    const [cell] = host.row(tab.name, row);
    lines.push(typeof cell?.value === 'string' ? cell.value : '');
  }
  return {
    name: tab.name,
    ...(lines.length === 0 ? {} : { lines }),
    ...(table ? { table: addedTable(host, tab, table) } : {}),
  };
}

function addedTable(host: GridSource, tab: TabShape, table: TableShape): TableBlueprint {
  const { name, area, headerRows, totalsRows } = table;
  const columns = Array.from(
    { length: area.lastColumn - area.firstColumn + 1 },
    (_, index) => area.firstColumn + index,
  );
  const cellsOf = (row: number) => {
    const cells = new Map(host.row(tab.name, row).map((cell) => [cell.column, cell]));
    return columns.map((column) => cells.get(column));
  };
  const bodyRows = area.lastRow - area.firstRow + 1 - headerRows - totalsRows;
  return {
    name,
    columns: columns.map((column): ColumnBlueprint => columnIn(host, tab, table, column)),
    rows: Array.from({ length: bodyRows }, (_, index) =>
      cellsOf(area.firstRow + headerRows + index).map((cell): CellWrite | null => {
        const typed = typedOf(cell, host.dateSystem);
        return typed.kind === 'text' || typed.kind === 'number' || typed.kind === 'day' ? typed : null;
      }),
    ),
  };
}

/** A column of a table of the host, by its place on the tab: its header, and how its first row is shown. */
export function columnIn(
  host: GridSource,
  tab: TabShape,
  { area, headerRows }: TableShape,
  column: number,
): NewColumn {
  const cellIn = (row: number) => host.row(tab.name, row).find((cell) => cell.column === column);
  const header = cellIn(area.firstRow)?.value;
  const first = cellIn(area.firstRow + headerRows);
  return {
    header: typeof header === 'string' ? header : `Column ${column - area.firstColumn + 1}`,
    width: widthOf(tab.columns, column),
    format: formatOf(first?.format ?? 'General', first?.look ?? 'plain'),
  };
}

function widthOf(columns: readonly ColumnShape[], column: number): number {
  return columns.find(({ first, last }) => column >= first && column <= last)?.width ?? USUAL_WIDTH;
}

function formatOf(format: string, look: string): ColumnBlueprint['format'] {
  if (look === 'date') return 'day';
  if (look === 'percent') return 'percent';
  if (format === '@') return 'text';
  return format === '#,##0.00' ? 'money' : 'number';
}
