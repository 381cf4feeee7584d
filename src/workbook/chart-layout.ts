import type { TableBlueprint } from './blueprint.ts';

/** How many cells of the usual size a chart takes up, from the first body row and a free column beside its table. */
export const CHART_ROWS = 20;
export const CHART_COLUMNS = 10;

/** How the line of a series is drawn. Told apart by its dashes too, not by its colour alone. */
export interface SeriesLook {
  /** Six hexadecimal digits, red first. */
  readonly colour: string;
  readonly dashes: 'none' | 'long' | 'dots' | 'both';
  /** In points. */
  readonly weight: number;
}

const LOOKS = [
  { colour: '3F5B57', dashes: 'none', weight: 2 },
  { colour: 'B26A00', dashes: 'long', weight: 1.5 },
  { colour: '8C2F39', dashes: 'dots', weight: 1.5 },
  { colour: '4B4F8C', dashes: 'both', weight: 1.5 },
] as const satisfies readonly SeriesLook[];

/** The look of a chart's series, counted from 0. */
export function seriesLook(place: number): SeriesLook {
  return LOOKS[place % LOOKS.length] ?? LOOKS[0];
}

/** Where the columns of a chart stand in its table, counted from 0. */
export interface ChartColumns {
  readonly categories: number;
  readonly series: readonly number[];
}

/**
 * The columns that a table's chart is drawn from; null where it has no chart.
 * @throws Error where the chart names a column that the table hasn't got, or none: a mistake of the caller
 */
export function chartColumns({ name, chart, columns }: TableBlueprint): ChartColumns | null {
  if (chart === undefined) return null;
  const place = (header: string): number => {
    const found = columns.findIndex((column) => column.header === header);
    if (found < 0) throw new Error(`The chart of ${name} is drawn from ${header}, which isn't there`);
    return found;
  };
  if (chart.series.length === 0) throw new Error(`The chart of ${name} is drawn from no column`);
  return { categories: place(chart.categories), series: chart.series.map(place) };
}
