import { addDays, type Day } from '../day.ts';
import { roundPlanned } from '../forecast/round-planned.ts';
import { groupBy } from '../group-by.ts';
import type { KnownDemand } from '../planning/plan-problem.ts';
import {
  drawFrom,
  partGone,
  type Supply,
  type SupplySources,
  sortInDrawOrder,
  suppliesOf,
} from './supplies.ts';
import { unplannedUse } from './unplanned-use.ts';

/** A material's stock from day to day, in its stock unit. */
export interface Projection {
  /** One for each day from today to the last day looked at. */
  readonly days: readonly ProjectedDay[];
  /** The first day on which something is missing; null where nothing is. */
  readonly firstShort: FirstShort | null;
  /** What is missing, by day and in the order in which it is served: what the log has not drawn, planned, forecast. */
  readonly missed: readonly MissedDemand[];
  /** What will go off unused, earliest first. */
  readonly goesOff: readonly GoesOff[];
  /** The sum of what goes off, where it has a worth; coins. */
  readonly worthGoingOff: number;
}

export interface ProjectedDay {
  readonly day: Day;
  /** Usable at the end of the day. */
  readonly usable: number;
  /** Drawn on that day for what is planned or not yet drawn in the log. */
  readonly planned: number;
  /** Drawn on that day for what is forecast beyond that. */
  readonly forecast: number;
  /** Arrived from suppliers, and lots that are in the books but received only on that day. */
  readonly arrived: number;
  /** Made here and ready. */
  readonly made: number;
  /** Went off: the day before was its last. */
  readonly wentOff: number;
  /** Missing on that day: planned and forecast together. */
  readonly short: number;
}

export interface FirstShort {
  readonly day: Day;
  /** What the job that is hit finds missing on that day; where it is unplanned use, what that does. */
  readonly missing: number;
  /** The job that is hit first; null where it is unplanned use. */
  readonly job: string | null;
}

export interface MissedDemand {
  readonly day: Day;
  readonly kind: 'not drawn' | 'planned' | 'forecast';
  /** The job that is hit; null where it is forecast. */
  readonly job: string | null;
  /** The treatment; null where it is forecast. */
  readonly what: string | null;
  readonly quantity: number;
}

export interface GoesOff {
  /** A lot's identifier; null for what is yet to arrive or to be made. */
  readonly lot: string | null;
  /** The last day on which it may be used. */
  readonly goodUntil: Day;
  readonly quantity: number;
  /** Coins; null where it has no cost. */
  readonly worth: number | null;
}

/** What a projection is made from; quantities in the material's stock unit, money in coins. */
export interface ProjectionSources extends SupplySources {
  /** The last day that is looked at, and still counts. */
  readonly until: Day;
  /** Those before today count as today; those after the last day still take the place of forecast use. */
  readonly demands: readonly KnownDemand[];
  /** What is used in a week, planned or not. */
  readonly forecastPerWeek: number;
}

/** The share of the largest quantity that is nothing: the rest of a sum of numbers that aren't exact. */
const NOISE = 1e-9;

type Demand = Omit<MissedDemand, 'day'>;

/**
 * A material's stock from day to day. At the start of a day arrivals and batches come in, and what is past its last
 * day goes off; then the day's demands are drawn in draw order: first what the log has not drawn, then what is planned,
 * as they stand in the list, then what is forecast beyond that. What is missing on a day is not made up for later. So
 * what is there at the start, arrives and is made is what is drawn, goes off and is left.
 */
export function projectionOf(sources: ProjectionSources): Projection {
  const { today } = sources;
  const noise = NOISE * largestOf(sources);
  const comingOn = groupBy(suppliesOf(sources), ({ from }) => (from < today ? today : from));
  const demandsOn = demandsByDay(sources);
  const days: ProjectedDay[] = [];
  const missed: MissedDemand[] = [];
  const wentOff: GoesOff[] = [];
  let here: Supply[] = [];
  for (const [place, forecast] of unplannedUse(sources).entries()) {
    const day = addDays(today, place);
    const came = comingOn.get(day) ?? [];
    const arrived = leftIn(
      came.filter(({ kind, from }) => kind === 'arrival' || (kind === 'lot' && from > today)),
    );
    const made = leftIn(came.filter(({ kind }) => kind === 'batch'));
    const { usable, gone } = partGone([...here, ...came], day);
    here = usable;
    if (came.length > 0) sortInDrawOrder(here);
    wentOff.push(...gone.flatMap(goesOff));
    const draw = (demand: Demand): number => {
      const missing = drawFrom(here, demand.quantity, day, noise);
      if (roundPlanned(missing) > 0) missed.push({ ...demand, day, quantity: roundPlanned(missing) });
      return missing;
    };
    const known = demandsOn.get(day) ?? [];
    const missingOfKnown = totalOf(known.map(draw));
    const missingOfForecast = draw({ kind: 'forecast', job: null, what: null, quantity: forecast });
    days.push({
      day,
      usable: roundPlanned(leftIn(here)),
      planned: roundPlanned(totalOf(known.map(({ quantity }) => quantity)) - missingOfKnown),
      forecast: roundPlanned(forecast - missingOfForecast),
      arrived: roundPlanned(arrived),
      made: roundPlanned(made),
      wentOff: roundPlanned(leftIn(gone)),
      short: roundPlanned(missingOfKnown + missingOfForecast),
    });
  }
  return {
    days,
    firstShort: firstShortOf(missed),
    missed,
    goesOff: wentOff.toSorted((a, b) => a.goodUntil - b.goodUntil),
    worthGoingOff: totalOf(wentOff.map(({ worth }) => worth ?? 0)),
  };
}

/** What the log has not drawn, then what is planned, by the day on which it is served. */
function demandsByDay({ today, demands }: ProjectionSources): Map<Day, Demand[]> {
  const inTurn = [
    ...demands.filter(({ kind }) => kind === 'not drawn'),
    ...demands.filter(({ kind }) => kind === 'planned'),
  ];
  return groupBy(inTurn, ({ day }) => (day < today ? today : day));
}

function firstShortOf(missed: readonly MissedDemand[]): FirstShort | null {
  const first = missed[0];
  if (first === undefined) return null;
  const { day, job } = first;
  const alike = missed.filter((each) => each.day === day && each.job === job);
  return { day, job, missing: roundPlanned(totalOf(alike.map(({ quantity }) => quantity))) };
}

function goesOff({ lot, goodUntil, left, unitWorth }: Supply): GoesOff[] {
  if (goodUntil === null || roundPlanned(left) === 0) return [];
  const worth = unitWorth === null ? null : Math.round(left * unitWorth);
  return [{ lot, goodUntil, quantity: roundPlanned(left), worth }];
}

function largestOf({ lots, arrivals, batches, demands, forecastPerWeek }: ProjectionSources): number {
  return [...lots, ...arrivals, ...batches, ...demands].reduce(
    (largest, { quantity }) => Math.max(largest, quantity),
    forecastPerWeek,
  );
}

function leftIn(supplies: readonly Supply[]): number {
  return totalOf(supplies.map(({ left }) => left));
}

function totalOf(quantities: readonly number[]): number {
  return quantities.reduce((total, quantity) => total + quantity, 0);
}
