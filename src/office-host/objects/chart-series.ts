import { replaceChart } from '../charts.ts';
import { invalidArgument, itemNotFound, notImplemented } from '../host-error.ts';
import type { ChartSeries, SheetArea } from '../memory-workbook.ts';
import { oneOf, rangeFrom, text, wholeNumber } from './arguments.ts';
import { chartOf } from './charts.ts';
import {
  type Argument,
  type ChartSubject,
  LiveObject,
  type ObjectKind,
  type RequestSession,
  type SeriesSubject,
} from './object-kind.ts';
import { colour } from './range-format.ts';

function seriesOf(subject: SeriesSubject): ChartSeries {
  const series = chartOf(subject).series.find((each) => each.id === subject.series);
  if (!series) throw itemNotFound();
  return series;
}

function change(subject: SeriesSubject, fields: Partial<ChartSeries>): void {
  const chart = chartOf(subject);
  const series = chart.series.map((each) => (each.id === subject.series ? { ...each, ...fields } : each));
  replaceChart(subject.sheet, { ...chart, series });
}

const wrapped = (subject: ChartSubject, { id }: ChartSeries): LiveObject =>
  new LiveObject('ChartSeries', { ...subject, series: id });

export const chartSeriesCollectionKind: ObjectKind<ChartSubject> = {
  scalars: { Count: (subject) => chartOf(subject).series.length },
  items: (subject) => chartOf(subject).series.map((series) => wrapped(subject, series)),
  methods: {
    GetCount: (subject) => chartOf(subject).series.length,
    GetItemAt: (subject, [index]) => {
      const series = chartOf(subject).series[wholeNumber(index)];
      if (!series) throw itemNotFound();
      return wrapped(subject, series);
    },
  },
  edits: {
    // Documented: what is added is not to be seen until it has values.
    Add: (subject, [name, index]) => {
      if (index !== null && index !== undefined) {
        throw notImplemented('ChartSeriesCollection.add() at an index');
      }
      const chart = chartOf(subject);
      const id = Math.max(0, ...chart.series.map((each) => each.id)) + 1;
      const series: ChartSeries = { id, name: text(name), values: null, categories: null, line: {} };
      replaceChart(subject.sheet, { ...chart, series: [...chart.series, series] });
      return wrapped(subject, series);
    },
  },
};

function sourceOf(
  given: Argument | undefined,
  { sheet }: SeriesSubject,
  { editing }: RequestSession,
): SheetArea {
  return rangeFrom(given, editing.workbook, sheet);
}

export const chartSeriesKind: ObjectKind<SeriesSubject> = {
  scalars: { Name: (subject) => seriesOf(subject).name },
  navigations: { Format: (subject) => new LiveObject('ChartSeriesFormat', subject) },
  edits: {
    SetValues: (subject, [source], session) => {
      change(subject, { values: sourceOf(source, subject, session) });
      return null;
    },
    SetXAxisValues: (subject, [source], session) => {
      change(subject, { categories: sourceOf(source, subject, session) });
      return null;
    },
  },
};

export const chartSeriesFormatKind: ObjectKind<SeriesSubject> = {
  navigations: { Line: (subject) => new LiveObject('ChartLineFormat', subject) },
};

const LINE_STYLES = [
  'None',
  'Continuous',
  'Dash',
  'DashDot',
  'DashDotDot',
  'Dot',
  'Grey25',
  'Grey50',
  'Grey75',
  'Automatic',
  'RoundDot',
] as const;

function changeLine(subject: SeriesSubject, fields: ChartSeries['line']): void {
  change(subject, { line: { ...seriesOf(subject).line, ...fields } });
}

/** What a line was given; what the program takes by itself isn't documented. */
function givenLine<Field extends keyof ChartSeries['line']>(subject: SeriesSubject, field: Field) {
  const value = seriesOf(subject).line[field];
  if (value === undefined) throw notImplemented(`ChartLineFormat.${field} of a line that was given none`);
  return value;
}

export const chartLineFormatKind: ObjectKind<SeriesSubject> = {
  scalars: {
    Color: (subject) => givenLine(subject, 'color'),
    LineStyle: (subject) => givenLine(subject, 'lineStyle'),
    Weight: (subject) => givenLine(subject, 'weight'),
  },
  setters: {
    Color: (subject, value) => changeLine(subject, { color: colour(value) }),
    LineStyle: (subject, value) => changeLine(subject, { lineStyle: oneOf(value, LINE_STYLES) }),
    Weight: (subject, value) => {
      if (typeof value !== 'number' || value < 0) throw invalidArgument();
      changeLine(subject, { weight: value });
    },
  },
};
