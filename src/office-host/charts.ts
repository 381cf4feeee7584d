import type { Area } from './cell-area.ts';
import type { AreaShift } from './editing.ts';
import type { Chart, ChartSeries, MemoryWorkbook, Sheet, SheetArea } from './memory-workbook.ts';

/** Puts another chart in the place of one; charts are never changed, so that an older state may keep the old one. */
export function replaceChart(sheet: Sheet, chart: Chart): void {
  sheet.charts = sheet.charts.map((each) => (each.id === chart.id ? chart : each));
}

/** Lets what charts are drawn from follow cells of a sheet that have moved; what is gone is drawn no more. */
export function followMovedCharts(workbook: MemoryWorkbook, moved: Sheet, shift: AreaShift): void {
  const follow = (of: SheetArea | null): SheetArea | null => {
    if (of === null || of.sheet !== moved) return of;
    const area = shift(of.area);
    return area === null ? null : { sheet: moved, area };
  };
  const followSeries = (series: ChartSeries): ChartSeries => ({
    ...series,
    values: follow(series.values),
    categories: follow(series.categories),
  });
  for (const sheet of workbook.sheets) {
    sheet.charts = sheet.charts.map((chart) => {
      const place: Area | null = sheet === moved && chart.place !== null ? shift(chart.place) : chart.place;
      return { ...chart, place: place ?? chart.place, series: chart.series.map(followSeries) };
    });
  }
}
