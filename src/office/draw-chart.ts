import { CHART_COLUMNS, CHART_ROWS, type SeriesLook, seriesLook } from '../workbook/chart-layout.ts';
import { CALL_BYTES, type TabJob } from './fill-tab.ts';
import { headerRowOf, rowCountOf, type TabPlan } from './plan-tabs.ts';

const DASHES = {
  none: 'Continuous',
  long: 'Dash',
  dots: 'RoundDot',
  both: 'DashDot',
} as const satisfies Record<SeriesLook['dashes'], string>;

/** The work that draws a tab's chart, once the cells are there from which it is drawn. */
export function chartJobs({ name, tab, table, chart: places }: TabPlan): TabJob[] {
  if (table?.chart === undefined || places === null) return [];
  const { title } = table.chart;
  const header = headerRowOf(tab);
  const queue = (context: Excel.RequestContext): void => {
    const sheet = context.workbook.worksheets.getItem(name);
    const cell = (row: number, column: number) => sheet.getRangeByIndexes(row, column, 1, 1);
    const body = (column: number) => sheet.getRangeByIndexes(header + 1, column, rowCountOf(table), 1);
    const [first = 0] = places.series;
    // One column with its header leaves nothing to guess of what the series is and what it is called.
    const source = sheet.getRangeByIndexes(header, first, rowCountOf(table) + 1, 1);
    const chart = sheet.charts.add('Line', source, 'Columns');
    chart.title.text = title;
    const beside = table.columns.length + 1;
    chart.setPosition(cell(header + 1, beside), cell(header + CHART_ROWS, beside + CHART_COLUMNS - 1));
    places.series.forEach((column, place) => {
      const series =
        place === 0 ? chart.series.getItemAt(0) : chart.series.add(table.columns[column]?.header);
      if (place > 0) series.setValues(body(column));
      series.setXAxisValues(body(places.categories));
      const { colour, dashes, weight } = seriesLook(place);
      const { line } = series.format;
      line.color = `#${colour}`;
      line.lineStyle = DASHES[dashes];
      line.weight = weight;
    });
  };
  return [{ bytes: CALL_BYTES * (1 + places.series.length), queue }];
}
