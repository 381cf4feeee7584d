import { FileRefused } from '../../files/file-refused.ts';
import type { TabShape } from '../../files/tab-shape.ts';
import type { Chart, SheetArea } from '../../office-host/memory-workbook.ts';
import type { ChartBlueprint, TabBlueprint } from '../../workbook/blueprint.ts';
import type { GridSource } from '../model/grid-source.ts';

/** What the grid shows of the host, and the charts that have come to a tab there. */
export interface HostSource extends GridSource {
  charts(tab: string): readonly Chart[];
}

/** Refuses charts that have come to a tab of the file. */
export function refuseCharts(tab: string, [chart]: readonly Chart[]): void {
  if (chart === undefined) return;
  throw new FileRefused(
    `The chart ${spoken(chart)} on the tab ${tab} is new, which can't be saved from here.`,
  );
}

/** The blueprint of a tab that has come to the host, with the chart that stands there; refused where it holds others. */
export function withChart(blueprint: TabBlueprint, tab: TabShape, charts: readonly Chart[]): TabBlueprint {
  const [chart, ...others] = charts;
  if (chart === undefined) return blueprint;
  const drawn = chartOf(blueprint, tab, chart);
  if (blueprint.table === undefined || drawn === null || others.length > 0) {
    throw new FileRefused(
      `The chart ${spoken(chart)} on the tab ${tab.name} is drawn from more than its table, ` +
        "which can't be saved from here.",
    );
  }
  return { ...blueprint, table: { ...blueprint.table, chart: drawn } };
}

function chartOf({ table }: TabBlueprint, shape: TabShape, chart: Chart): ChartBlueprint | null {
  const headerOf = (of: SheetArea | null): string | null => {
    const [host] = shape.tables;
    if (of === null || host === undefined || of.sheet.name !== shape.name) return null;
    const { row, column, rows, columns } = of.area;
    const firstRow = host.area.firstRow + host.headerRows;
    const lastRow = host.area.lastRow - host.totalsRows;
    // The host counts from 0.
    const isBody = columns === 1 && row + 1 === firstRow && row + rows === lastRow;
    return isBody ? (table?.columns[column + 1 - host.area.firstColumn]?.header ?? null) : null;
  };
  const categories = headerOf(chart.series[0]?.categories ?? null);
  const series = chart.series.map(({ values }) => headerOf(values));
  const isAlike = chart.series.every((each) => headerOf(each.categories) === categories);
  if (categories === null || chart.title === null || !isAlike) return null;
  if (series.some((header, place) => header === null || header !== chart.series[place]?.name)) return null;
  const headers = series.filter((header) => header !== null);
  return { title: chart.title, kind: 'line', categories, series: headers };
}

const spoken = ({ title, name }: Chart): string => title ?? name;
