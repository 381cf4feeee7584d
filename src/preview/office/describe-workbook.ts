import { cellName } from '../../files/cell-reference.ts';
import type { ShownCell } from '../../files/tab-cells.ts';
import type { TableShape, TabShape } from '../../files/tab-shape.ts';
import type { XlsxWorkbook } from '../../files/xlsx-workbook.ts';
import type {
  CellLiteral,
  SheetDescription,
  TableDescription,
  WorkbookDescription,
} from '../../office-host/workbook-description.ts';
import type { TableSnapshot } from '../../workbook/port.ts';
import { describedCell } from './host-cells.ts';

/** A workbook file as the host takes it: every cell of every tab, and the tables. */
export function describeWorkbook(workbook: XlsxWorkbook): WorkbookDescription {
  const { dateSystem, tables } = workbook.snapshot();
  return {
    dateSystem,
    sheets: workbook.tabs().map((tab) => describeTab(workbook, tab, tables)),
  };
}

function describeTab(
  workbook: XlsxWorkbook,
  tab: TabShape,
  snapshots: readonly TableSnapshot[],
): SheetDescription {
  const cells: Record<string, CellLiteral[][]> = {};
  const rowCells = (row: number): readonly ShownCell[] => workbook.row(tab.name, row);
  for (let row = 1; row <= tab.lastRow; row++) {
    const free = rowCells(row).filter(({ column }) => !tab.tables.some((table) => holds(table, row, column)));
    for (const cell of free) cells[cellName(row, cell.column)] = [[describedCell(cell)]];
  }
  return {
    name: tab.name,
    visibility: tab.hidden ? 'Hidden' : 'Visible',
    cells,
    tables: tab.tables.map((table) => {
      const snapshot = snapshots.find(({ name }) => name === table.name);
      if (!snapshot) throw new Error(`The table ${table.name} is on a tab, but not in the snapshot`);
      return describeTable(table, snapshot, rowCells);
    }),
  };
}

function holds({ area }: TableShape, row: number, column: number): boolean {
  return (
    row >= area.firstRow && row <= area.lastRow && column >= area.firstColumn && column <= area.lastColumn
  );
}

function describeTable(
  { name, area, headerRows, totalsRows }: TableShape,
  snapshot: TableSnapshot,
  rowCells: (row: number) => readonly ShownCell[],
): TableDescription {
  const literals = (row: number): CellLiteral[] => {
    const cells = rowCells(row);
    return snapshot.columns.map((_, index) => {
      const cell = cells.find(({ column }) => column === area.firstColumn + index);
      return cell ? describedCell(cell) : null;
    });
  };
  const firstBody = area.firstRow + headerRows;
  const lastBody = area.lastRow - totalsRows;
  const first = rowCells(firstBody);
  return {
    name,
    at: cellName(area.firstRow, area.firstColumn),
    columns: snapshot.columns.map(({ header, calculated }, index) => {
      const cell = first.find(({ column }) => column === area.firstColumn + index);
      const formula = calculated ? (cell?.formula ?? null) : null;
      return {
        name: header,
        ...(formula === null ? {} : { formula: `=${formula}` }),
        ...(cell === undefined ? {} : { numberFormat: cell.format }),
      };
    }),
    rows: Array.from({ length: lastBody - firstBody + 1 }, (_, index) => literals(firstBody + index)),
    ...(totalsRows > 0 ? { totals: literals(area.lastRow) } : {}),
  };
}
