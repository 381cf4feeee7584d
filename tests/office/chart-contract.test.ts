import { cellName } from '../../src/files/cell-reference.ts';
import type { OfficeHost } from '../../src/office-host/office-host.ts';
import type { WorkbookDescription } from '../../src/office-host/workbook-description.ts';
import { type ChartWorkbook, chartContract, type ShownChart } from '../contract/chart-contract.ts';
import type { ContractTable } from '../contract/workbook-contract.ts';
import { type AddIn, hostOver, readSnapshot, writtenSnapshot } from './office-bench.ts';

type Area = { row: number; column: number; rows: number; columns: number };

const first = ({ row, column }: Area): string => cellName(row + 1, column + 1);
const last = ({ row, column, rows, columns }: Area): string => cellName(row + rows, column + columns);

/** The charts as they stand in the host; titles and names as the client library reads them. */
async function chartsOf({ excel }: AddIn, host: OfficeHost): Promise<ShownChart[]> {
  const address = (of: { readonly sheet: { readonly name: string }; readonly area: Area } | null): string => {
    if (of === null) throw new Error('A series is drawn from nothing');
    return `${of.sheet.name}!${first(of.area)}:${last(of.area)}`;
  };
  const read = await excel.run(async (context) => {
    const sheets = context.workbook.worksheets.load('items/name');
    await context.sync();
    const charts = sheets.items.map(({ charts: each }) => each.load('items/title/text'));
    await context.sync();
    const drawn = charts.flatMap(({ items }) => items);
    const series = drawn.map((chart) => chart.series.load('items/name,items/format/line/weight'));
    await context.sync();
    return drawn.map(({ title }, index) => ({
      title: title.text,
      series: (series[index]?.items ?? []).map(({ name, format }) => [name, format.line.weight] as const),
    }));
  });
  return host.workbook.sheets
    .flatMap((sheet) => sheet.charts.map((chart) => ({ tab: sheet.name, chart })))
    .map(({ tab, chart: { place, series } }, index) => {
      if (place === null) throw new Error(`A chart on ${tab} has no place`);
      return {
        tab,
        title: read[index]?.title,
        covers: [first(place), last(place)],
        series: series.map(({ values, categories }, number) => ({
          name: read[index]?.series[number]?.[0],
          values: address(values),
          categories: address(categories),
          weight: read[index]?.series[number]?.[1],
        })),
      };
    });
}

function description(tables: readonly ContractTable[], dateSystem: 1900 | 1904): WorkbookDescription {
  const sheets = tables.map(({ name, headers, rows }) => ({
    name,
    tables: [
      {
        name,
        at: 'A1',
        columns: headers,
        rows: rows.map((row) => row.map((cell) => (cell.kind === 'text' ? cell.text : null))),
      },
    ],
  }));
  return { dateSystem, sheets };
}

/** A workbook through the real client; opened again, by another client that knows nothing yet. */
function chartWorkbook({ host, open }: ReturnType<typeof hostOver>): ChartWorkbook {
  const addIn = open();
  return {
    snapshot: () => readSnapshot(addIn.live),
    addTabs: async (tabs) => void writtenSnapshot(await addIn.live.addTabs(tabs)),
    charts: () => chartsOf(addIn, host),
    reopen: () => chartWorkbook({ host, open }),
  };
}

for (const dateSystem of [1900, 1904] as const) {
  chartContract(`Office.js, on our host, counting from ${dateSystem}`, (tables) =>
    chartWorkbook(hostOver(description(tables, dateSystem))),
  );
}
