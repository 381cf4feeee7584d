import { replaceChart } from '../charts.ts';
import { invalidArgument, itemNotFound, notImplemented } from '../host-error.ts';
import { type Chart, cellAt, newId, type Sheet } from '../memory-workbook.ts';
import { areaOf, rangeFrom, text, wholeNumber } from './arguments.ts';
import { type Argument, type ChartSubject, LiveObject, type ObjectKind } from './object-kind.ts';

/** The chart of a subject as it is now. Throws `ItemNotFound` where it has gone. */
export function chartOf({ sheet, id }: ChartSubject): Chart {
  const chart = sheet.charts.find((each) => each.id === id);
  if (!chart) throw itemNotFound();
  return chart;
}

const wrapped = (sheet: Sheet, { id }: Chart): LiveObject => new LiveObject('Chart', { sheet, id });

const findChart = (sheet: Sheet, key: string): Chart | undefined =>
  sheet.charts.find(({ id, name }) => id === key || name.toLowerCase() === key.toLowerCase());

function itemOf(sheet: Sheet, key: Argument | undefined): LiveObject {
  const chart = findChart(sheet, text(key));
  if (!chart) throw itemNotFound();
  return wrapped(sheet, chart);
}

/**
 * The one series that a column makes: its first cell names it, the others are its values. How the program takes more
 * than one column apart into categories and series is a guess of its own, which is not modelled.
 */
function seriesFrom(source: Argument | undefined) {
  if (!(source instanceof LiveObject) || source.kind !== 'Range') throw invalidArgument();
  const { sheet } = source.subject as { sheet: Sheet };
  const area = areaOf(source.subject as Parameters<typeof areaOf>[0]);
  const [header, first] = [0, 1].map((down) => cellAt(sheet, area.row + down, area.column).value);
  const isNamed = typeof header === 'string' && header !== '' && typeof first === 'number';
  if (area.columns !== 1 || area.rows < 2 || !isNamed) {
    throw notImplemented('ChartCollection.add() from anything but one column of numbers below its header');
  }
  return { name: header, values: { sheet, area: { ...area, row: area.row + 1, rows: area.rows - 1 } } };
}

export const chartsKind: ObjectKind<Sheet> = {
  scalars: { Count: ({ charts }) => charts.length },
  items: (sheet) => sheet.charts.map((chart) => wrapped(sheet, chart)),
  index: itemOf,
  methods: {
    GetCount: ({ charts }) => charts.length,
    GetItem: (sheet, [key]) => itemOf(sheet, key),
    GetItemOrNullObject: (sheet, [key]) => {
      const chart = findChart(sheet, text(key));
      return chart ? wrapped(sheet, chart) : null;
    },
    GetItemAt: (sheet, [index]) => {
      const chart = sheet.charts[wholeNumber(index)];
      if (!chart) throw itemNotFound();
      return wrapped(sheet, chart);
    },
  },
  edits: {
    Add: (sheet, [type, source, seriesBy], { editing }) => {
      if (type !== 'Line') throw notImplemented(`ChartCollection.add() of the type ${text(type)}`);
      if (seriesBy !== 'Columns') throw notImplemented('ChartCollection.add() by anything but columns');
      const { name, values } = seriesFrom(source);
      const chart: Chart = {
        id: newId(editing.workbook),
        type,
        name: `Chart ${sheet.charts.length + 1}`,
        title: null,
        place: null,
        series: [{ id: 1, name, values, categories: null, line: {} }],
      };
      sheet.charts = [...sheet.charts, chart];
      return wrapped(sheet, chart);
    },
  },
};

export const chartKind: ObjectKind<ChartSubject> = {
  id: ({ id }) => ({ Id: id }),
  scalars: {
    ChartType: (subject) => chartOf(subject).type,
    Id: ({ id }) => id,
    Name: (subject) => chartOf(subject).name,
  },
  setters: {
    Name: (subject, value) => {
      replaceChart(subject.sheet, { ...chartOf(subject), name: text(value) });
    },
  },
  navigations: {
    Series: (subject) => new LiveObject('ChartSeriesCollection', subject),
    Title: (subject) => new LiveObject('ChartTitle', subject),
  },
  edits: {
    Delete: ({ sheet, id }) => {
      sheet.charts = sheet.charts.filter((chart) => chart.id !== id);
      return null;
    },
    SetPosition: (subject, [start, end], { editing }) => {
      const from = rangeFrom(start, editing.workbook, subject.sheet);
      if (end === null || end === undefined) throw notImplemented('Chart.setPosition() without an end');
      const to = rangeFrom(end, editing.workbook, subject.sheet);
      if (from.sheet !== subject.sheet || to.sheet !== subject.sheet) throw invalidArgument();
      const { row, column } = from.area;
      const rows = to.area.row + to.area.rows - row;
      const columns = to.area.column + to.area.columns - column;
      if (rows < 1 || columns < 1) throw invalidArgument();
      replaceChart(subject.sheet, { ...chartOf(subject), place: { row, column, rows, columns } });
      return null;
    },
  },
};

export const chartTitleKind: ObjectKind<ChartSubject> = {
  scalars: {
    // What the program calls a chart by itself isn't documented.
    Text: (subject) => {
      const { title } = chartOf(subject);
      if (title === null) throw notImplemented('ChartTitle.text of a chart that was given none');
      return title;
    },
  },
  setters: {
    Text: (subject, value) => {
      replaceChart(subject.sheet, { ...chartOf(subject), title: text(value) });
    },
  },
};
