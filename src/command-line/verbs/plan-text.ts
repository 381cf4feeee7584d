import { spokenDay } from '../../core/day.ts';
import { exactWords, plannedFigure, plannedWords } from '../../core/forecast/planned-words.ts';
import type { Currency } from '../../core/money.ts';
import type { MaterialPlan, PlanAnswer } from '../../core/planning/plan-answer.ts';
import type { MaterialYear, YearAhead } from '../../core/planning/year-ahead.ts';
import {
  bestAtATimeWords,
  dearestOf,
  togetherWords,
  yearlyUseWords,
} from '../../core/planning/year-words.ts';
import type { JobAnswer, JobWant } from '../../core/projection/job-readiness.ts';
import type { ProjectedDay, Projection } from '../../core/projection/projection.ts';
import { unitNamed } from '../../core/unit.ts';
import { unitFor } from '../../core/wording.ts';
import { inCurrency } from '../check-text.ts';
import { plannedMoney } from '../plan-words.ts';
import { heading, listed, type Terminal, wrapped } from '../terminal.ts';
import { type TextColumn, textTable } from '../text-table.ts';
import { makePlanText } from './make-plan-text.ts';

const OUTLOOK_COLUMNS: readonly TextColumn[] = [
  { header: 'material', align: 'left' },
  { header: 'usable', align: 'right' },
  { header: 'on order', align: 'right' },
  { header: 'order at', align: 'right' },
  { header: 'runs out', align: 'left' },
];

const DAY_COLUMNS: readonly TextColumn[] = [
  { header: 'day', align: 'left' },
  { header: 'planned', align: 'right' },
  { header: 'arrives', align: 'right' },
  { header: 'made', align: 'right' },
  { header: 'goes off', align: 'right' },
  { header: 'missing', align: 'right' },
  { header: 'usable', align: 'right' },
];

const YEAR_COLUMNS: readonly TextColumn[] = [
  { header: 'most of the money', align: 'left' },
  { header: 'a year', align: 'right' },
  { header: 'costs', align: 'right' },
  { header: 'of all', align: 'right' },
  { header: 'best at a time', align: 'right' },
];

/** What will run out and what will go off, what to make, and whether the jobs can be done on their days. */
export function planText(answer: PlanAnswer, currency: Currency, terminal: Terminal): string[] {
  const shown = answer.materials.filter(isWorthTelling);
  const made = answer.materials.filter(({ make }) => make !== null);
  return [
    heading(`Outlook from ${spokenDay(answer.today)} to ${spokenDay(answer.until)}`, terminal),
    ...(shown.length === 0
      ? ['Nothing runs out, and nothing is down to where it should be ordered.']
      : textTable(OUTLOOK_COLUMNS, shown.map(outlookRow), terminal.width)),
    ...goingOffText(answer, currency, terminal),
    ...jobsText(answer.jobs, terminal),
    ...yearText(answer.year, currency, terminal),
    ...made.flatMap(({ make, unit }) =>
      make === null ? [] : ['', ...makePlanText(make, unit, currency, terminal)],
    ),
  ];
}

/** The materials that take most of the money, and how often to order where several come from one supplier. */
function yearText(year: YearAhead, currency: Currency, terminal: Terminal): string[] {
  const dearest = dearestOf(year);
  if (dearest.length === 0) return [];
  return [
    '',
    heading(`Over a year at this pace${inCurrency(currency)}`, terminal),
    ...textTable(
      YEAR_COLUMNS,
      dearest.map((each) => yearRow(each, currency)),
      terminal.width,
    ),
    ...year.suppliers.flatMap((each) => wrapped(togetherWords(each, currency), terminal.width, 0)),
  ];
}

function yearRow(year: MaterialYear, currency: Currency): string[] {
  return [
    year.material,
    yearlyUseWords(year),
    plannedMoney(year.value, currency),
    `${Math.round(year.percent)} %`,
    bestAtATimeWords(year),
  ];
}

/** One material day by day, with how its figures came about. */
export function materialPlanText(
  plan: MaterialPlan,
  answer: PlanAnswer,
  currency: Currency,
  terminal: Terminal,
): string[] {
  const { forecast, level, projection, make, unit } = plan;
  const happens = projection.days.filter((day, place) => place === 0 || isEventful(day));
  return [
    heading(
      `${plan.material} from ${spokenDay(answer.today)} to ${spokenDay(answer.until)}, in ${unitFor('2', unitNamed(unit))}`,
      terminal,
    ),
    ...wrapped(forecast.sentence, terminal.width, 0),
    ...wrapped(level.sentence, terminal.width, 0),
    '',
    ...textTable(DAY_COLUMNS, happens.map(dayRow), terminal.width),
    ...shortText(projection, unit, terminal),
    ...goesOffText([plan], currency, terminal),
    ...(make === null ? [] : ['', ...makePlanText(make, unit, currency, terminal)]),
  ];
}

/** Whether jobs can be done on their days, and what each lacks. */
export function jobsText(jobs: readonly JobAnswer[], terminal: Terminal): string[] {
  if (jobs.length === 0) return [];
  return ['', heading('Jobs on their days', terminal), ...jobs.flatMap((job) => jobLines(job, terminal))];
}

function jobLines(
  { job, due, readyOn, canBeDone, wants, obstacles }: JobAnswer,
  terminal: Terminal,
): string[] {
  const ready = readyOn === null ? '' : `, ready on ${spokenDay(readyOn)}`;
  const by = due === null ? '' : `, due on ${spokenDay(due)}`;
  const can = !canBeDone
    ? 'materials or days do not fit yet'
    : wants.length === 0
      ? 'the materials are there'
      : 'what is missing can still be got in time';
  return [
    ...wrapped(`${job}: ${can}${ready}${by}.`, terminal.width, 2),
    ...[...wants.map(wantWords), ...obstacles].flatMap((line) => listed(line, terminal)),
  ];
}

function wantWords(want: JobWant): string {
  const { material, unit, day, missing, how, latestBy, supplier, tooLate, onItsWay } = want;
  const lacks = `${material}: ${exactWords(missing, unit)} missing on ${spokenDay(day)}`;
  if (how === 'nowhere' || latestBy === null) return `${lacks}; nobody sells it and no recipe makes it.`;
  if (how === 'make' && latestBy === day) return `${lacks}; make it on that day.`;
  const verb = how === 'make' ? 'make it' : `order it${supplier === null ? '' : ` from ${supplier}`}`;
  const coming = onItsWay === null ? '' : ` What is on order should be here on ${spokenDay(onItsWay)}.`;
  return tooLate
    ? `${lacks}; to have it then, it was to be ${how === 'make' ? 'made' : 'ordered'} by ${spokenDay(latestBy)}.${coming}`
    : `${lacks}; ${verb} by ${spokenDay(latestBy)}.${coming}`;
}

function isWorthTelling({ level, projection, usable, onOrder }: MaterialPlan): boolean {
  return projection.firstShort !== null || (level.level > 0 && usable + onOrder <= level.level);
}

function outlookRow({ material, unit, usable, onOrder, level, projection }: MaterialPlan): string[] {
  const { firstShort } = projection;
  return [
    material,
    plannedWords(usable, unit),
    onOrder === 0 ? '' : plannedWords(onOrder, unit),
    plannedWords(level.level, unit),
    firstShort === null ? '' : `${spokenDay(firstShort.day)}, ${firstShort.job ?? 'unplanned use'}`,
  ];
}

function isEventful(day: ProjectedDay): boolean {
  return day.planned + day.arrived + day.made + day.wentOff > 0 || day.short > 0;
}

function dayRow(day: ProjectedDay): string[] {
  const blank = (quantity: number): string => (quantity === 0 ? '' : plannedFigure(quantity));
  return [
    spokenDay(day.day),
    blank(day.planned),
    blank(day.arrived),
    blank(day.made),
    blank(day.wentOff),
    blank(day.short),
    plannedFigure(day.usable),
  ];
}

function shortText({ firstShort }: Projection, unit: string, terminal: Terminal): string[] {
  if (firstShort === null) return [];
  const whom = firstShort.job === null ? 'for use that is not planned' : `for ${firstShort.job}`;
  return wrapped(
    `The first day on which some is missing: ${spokenDay(firstShort.day)}, ${exactWords(firstShort.missing, unit)} ${whom}.`,
    terminal.width,
    0,
  );
}

function goingOffText({ materials }: PlanAnswer, currency: Currency, terminal: Terminal): string[] {
  const lines = goesOffText(materials, currency, terminal);
  return lines.length === 0
    ? []
    : ['', heading(`Will go off unused${inCurrency(currency)}`, terminal), ...lines];
}

function goesOffText(materials: readonly MaterialPlan[], currency: Currency, terminal: Terminal): string[] {
  return materials.flatMap(({ material, unit, projection }) =>
    projection.goesOff.flatMap(({ lot, goodUntil, quantity, worth }) =>
      listed(
        `${lot === null ? `${material}, still to come` : `${material}, lot ${lot}`}: ${exactWords(quantity, unit)} ` +
          `after ${spokenDay(goodUntil)}${worth === null ? '' : `, worth ${plannedMoney(worth, currency)}`}.`,
        terminal,
      ),
    ),
  );
}
