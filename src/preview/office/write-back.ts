import { cellName } from '../../files/cell-reference.ts';
import { FileRefused } from '../../files/file-refused.ts';
import type { ShownCell } from '../../files/tab-cells.ts';
import type { TableShape, TabShape } from '../../files/tab-shape.ts';
import type { TypedCellAt } from '../../files/typed-cell.ts';
import { openXlsx, type XlsxWorkbook } from '../../files/xlsx-workbook.ts';
import type { CellWrite } from '../../workbook/port.ts';
import type { GridSource, SaveOutcome } from '../model/grid-source.ts';
import { type HostSource, refuseCharts, withChart } from './added-chart.ts';
import { addedTab, columnIn } from './added-tab.ts';
import { holdsSame, typedOf } from './host-cells.ts';

/**
 * Brings what the host holds back into the file that it was filled from, so that the file keeps everything else. In
 * the end both are compared, cell by cell: where they differ, nothing is saved.
 */
export function writeBack(original: Uint8Array, host: HostSource): SaveOutcome {
  const workbook = openXlsx(original);
  try {
    const known = new Set(workbook.tabs().map(({ name }) => name));
    const added = host.tabs().filter(({ name }) => !known.has(name));
    workbook.addTabs(added.map((tab) => withChart(addedTab(host, tab), tab, host.charts(tab.name))));
    for (const { name } of workbook.tabs()) {
      const tab = host.tabs().find((each) => each.name === name);
      if (!tab)
        throw new FileRefused(`The tab ${name} was deleted or renamed, which can't be saved from here.`);
      if (known.has(name)) refuseCharts(name, host.charts(name));
      for (const table of tab.tables) {
        writeColumns(workbook, host, tab, table);
        writeTable(workbook, host, name, table);
      }
      writeTab(workbook, host, tab);
      refuseDifference(workbook, host, tab);
    }
  } catch (error) {
    if (error instanceof FileRefused) return { kind: 'refused', message: error.message };
    throw error;
  }
  return { kind: 'saved', bytes: workbook.save() };
}

function tableIn(workbook: XlsxWorkbook, tab: string, name: string): TableShape {
  const tables = workbook.tabs().find((each) => each.name === tab)?.tables ?? [];
  const table = tables.find((each) => each.name === name);
  if (table) return table;
  throw new FileRefused(
    `The table ${name} on the tab ${tab} is new or was renamed, which can't be saved from here.`,
  );
}

function bodyRows({ area, headerRows, totalsRows }: TableShape): number {
  return area.lastRow - area.firstRow + 1 - headerRows - totalsRows;
}

/** The cells of a body row, in the order of the table's columns. */
function bodyRow(
  source: Pick<GridSource, 'row'>,
  tab: string,
  { area, headerRows }: TableShape,
  row: number,
): (ShownCell | undefined)[] {
  const cells = new Map(source.row(tab, area.firstRow + headerRows + row).map((cell) => [cell.column, cell]));
  return Array.from({ length: area.lastColumn - area.firstColumn + 1 }, (_, index) => {
    return cells.get(area.firstColumn + index);
  });
}

function isSameRow(a: readonly (ShownCell | undefined)[], b: readonly (ShownCell | undefined)[]): boolean {
  return a.every((cell, index) => holdsSame(cell, b[index]));
}

/** Gives the file's table the columns that came behind its last one. */
function writeColumns(workbook: XlsxWorkbook, host: GridSource, tab: TabShape, wanted: TableShape): void {
  const { area } = tableIn(workbook, tab.name, wanted.name);
  for (let column = area.lastColumn + 1; column <= wanted.area.lastColumn; column++) {
    workbook.apply([{ kind: 'add column', table: wanted.name, column: columnIn(host, tab, wanted, column) }]);
  }
}

function writeTable(workbook: XlsxWorkbook, host: GridSource, tab: string, wanted: TableShape): void {
  const shape = (): TableShape => tableIn(workbook, tab, wanted.name);
  const ofFile = (row: number) => bodyRow(workbook, tab, shape(), row);
  const ofHost = (row: number) => bodyRow(host, tab, wanted, row);
  const count = bodyRows(wanted);
  const surplus = bodyRows(shape()) - count;
  if (surplus > 0) {
    // Rows were deleted: those after which the rest goes on as before.
    let first = 0;
    while (first < count && isSameRow(ofFile(first), ofHost(first))) first++;
    workbook.removeRows(wanted.name, first, surplus);
  }
  const known = Math.min(bodyRows(shape()), count);
  const table = shape();
  const edits: TypedCellAt[] = [];
  for (let row = 0; row < known; row++) {
    const file = ofFile(row);
    ofHost(row).forEach((cell, index) => {
      if (holdsSame(cell, file[index])) return;
      const place = {
        row: table.area.firstRow + table.headerRows + row,
        column: table.area.firstColumn + index,
      };
      edits.push({ ...place, cell: typedOf(cell, host.dateSystem) });
    });
  }
  workbook.type(tab, edits);
  if (known === count) return;
  const headers = workbook.snapshot().tables.find(({ name }) => name === wanted.name)?.columns ?? [];
  const rows = Array.from({ length: count - known }, (_, index) => {
    const row: Record<string, CellWrite> = {};
    ofHost(known + index).forEach((cell, place) => {
      const typed = typedOf(cell, host.dateSystem);
      const header = headers[place]?.header;
      if (header === undefined) return;
      if (typed.kind === 'text' || typed.kind === 'number' || typed.kind === 'day') row[header] = typed;
    });
    return row;
  });
  workbook.apply([{ kind: 'append', table: wanted.name, rows }]);
}

/** What the file is still to take of a tab: cells beside tables, and what an appended row can't be given. */
function writeTab(workbook: XlsxWorkbook, host: GridSource, tab: TabShape): void {
  const cells = differences(workbook, host, tab).map(({ row, column, cell }) => {
    return { row, column, cell: typedOf(cell, host.dateSystem) };
  });
  workbook.type(tab.name, cells);
}

function refuseDifference(workbook: XlsxWorkbook, host: GridSource, tab: TabShape): void {
  const [first] = differences(workbook, host, tab);
  if (!first) return;
  throw new FileRefused(
    `${cellName(first.row, first.column)} on the tab ${tab.name} could not be brought into the file as it stands here, ` +
      'so nothing was saved. Undo the last change there, or make it without the option --office.',
  );
}

interface Difference {
  readonly row: number;
  readonly column: number;
  /** As the host has it. */
  readonly cell: ShownCell | undefined;
}

function differences(workbook: XlsxWorkbook, host: GridSource, tab: TabShape): Difference[] {
  const found: Difference[] = [];
  const ofFile = workbook.tabs().find(({ name }) => name === tab.name);
  const lastRow = Math.max(tab.lastRow, ofFile?.lastRow ?? 0);
  for (let row = 1; row <= lastRow; row++) {
    const here = new Map(host.row(tab.name, row).map((cell) => [cell.column, cell]));
    const there = new Map(workbook.row(tab.name, row).map((cell) => [cell.column, cell]));
    for (const column of new Set([...here.keys(), ...there.keys()])) {
      const cell = here.get(column);
      if (!holdsSame(cell, there.get(column))) found.push({ row, column, cell });
    }
  }
  return found;
}
