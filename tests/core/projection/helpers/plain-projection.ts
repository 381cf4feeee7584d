import type { ProjectionSources } from '../../../../src/core/projection/projection.ts';

/** A small thing to be drawn from: all its quantities are whole numbers of sevenths of a unit. */
interface PlainHeap {
  readonly name: string | null;
  readonly comes: number;
  readonly printed: number | null;
  readonly life: number | null;
  readonly kind: 'here' | 'arrived' | 'made';
  readonly worth: number | null;
  rest: number;
  opened: number | null;
}

export interface PlainDay {
  readonly day: number;
  readonly usable: number;
  readonly planned: number;
  readonly forecast: number;
  readonly arrived: number;
  readonly made: number;
  readonly wentOff: number;
  readonly short: number;
}

export interface PlainCourse {
  readonly days: readonly PlainDay[];
  /** In the order in which it is missed: day, job, what, quantity. */
  readonly missed: readonly (readonly [number, string | null, string | null, number])[];
  /** By the last day, then the place among the sources: name, last day, quantity, worth. */
  readonly goesOff: readonly (readonly [string | null, number, number, number | null])[];
  /** How many heaps ended earlier because they were opened. */
  readonly shortened: number;
}

/**
 * The same course worked out by drawing one seventh after the other, each time looking through all heaps for the one
 * whose turn it is. Nothing is kept in order and nothing is struck off: whether a heap may be used follows every time
 * from the days on which it came, was opened and ends.
 */
export function plainProjection(sources: ProjectionSources): PlainCourse {
  const { today, until } = sources;
  const heaps = heapsOf(sources);
  const days: PlainDay[] = [];
  const missed: [number, string | null, string | null, number][] = [];
  const goesOff: [string | null, number, number, number | null][] = [];
  for (let day: number = today; day <= until; day += 1) {
    const newly = heaps.filter(({ comes }) => comes === day);
    const ended = heaps.filter(
      (heap) => day === Math.max(lastDay(heap) + 1, heap.comes) && lastDay(heap) < day,
    );
    const row = { day, usable: 0, planned: 0, forecast: 0, arrived: 0, made: 0, wentOff: 0, short: 0 };
    for (const { kind, rest } of newly) {
      if (kind === 'arrived') row.arrived += rest;
      if (kind === 'made') row.made += rest;
    }
    for (const heap of ended) {
      row.wentOff += heap.rest;
      const worth = heap.worth === null ? null : Math.round((heap.rest / 7) * heap.worth);
      if (heap.rest > 0) goesOff.push([heap.name, lastDay(heap), heap.rest, worth]);
    }
    const serve = (sevenths: number, job: string | null, what: string | null): number => {
      for (let got = 0; got < sevenths; got += 1) {
        const heap = nextHeap(heaps, day);
        if (heap === null) {
          missed.push([day, job, what, sevenths - got]);
          row.short += sevenths - got;
          return got;
        }
        heap.rest -= 1;
        heap.opened ??= day;
      }
      return sevenths;
    };
    for (const kind of ['not drawn', 'planned']) {
      for (const demand of sources.demands) {
        if (demand.kind !== kind || Math.max(demand.day, today) !== day) continue;
        row.planned += serve(demand.quantity * 7, demand.job, demand.what);
      }
    }
    row.forecast = serve(seventhsForecast(sources, day), null, null);
    for (const heap of heaps) if (heap.comes <= day && lastDay(heap) >= day) row.usable += heap.rest;
    days.push(row);
  }
  goesOff.sort((a, b) => a[1] - b[1]);
  const shortened = heaps.filter((heap) => lastDay(heap) < (heap.printed ?? Number.POSITIVE_INFINITY)).length;
  return { days, missed, goesOff, shortened };
}

function heapsOf(sources: ProjectionSources): PlainHeap[] {
  const { today } = sources;
  const heaps: PlainHeap[] = [];
  for (const { lot, from, goodUntil, lifeOpenedDays, unitWorth, quantity } of sources.lots) {
    const kind = from > today ? 'arrived' : 'here';
    const facts = { name: lot, comes: from, printed: goodUntil, life: lifeOpenedDays, kind } as const;
    heaps.push({ ...facts, worth: unitWorth, rest: quantity * 7, opened: null });
  }
  for (const { day, quantity } of sources.arrivals) {
    if (day === null) continue;
    const comes = day >= today ? day : today + 1;
    const printed = sources.lifeSealedDays === null ? null : comes + sources.lifeSealedDays;
    const facts = { name: null, comes, printed, life: sources.lifeOpenedDays, kind: 'arrived' } as const;
    heaps.push({ ...facts, worth: sources.unitCost, rest: quantity * 7, opened: null });
  }
  for (const { readyOn, goodUntil, unitWorth, quantity } of sources.batches) {
    const facts = { name: null, comes: readyOn, printed: goodUntil, kind: 'made' } as const;
    heaps.push({
      ...facts,
      life: sources.lifeOpenedDays,
      worth: unitWorth,
      rest: quantity * 7,
      opened: null,
    });
  }
  return heaps;
}

function lastDay({ printed, opened, life }: PlainHeap): number {
  const fromOpening = opened === null || life === null ? Number.POSITIVE_INFINITY : opened + life;
  return Math.min(printed ?? Number.POSITIVE_INFINITY, fromOpening);
}

/** The heap that is drawn next by rule; null where none may be used. */
function nextHeap(heaps: readonly PlainHeap[], day: number): PlainHeap | null {
  let best: PlainHeap | null = null;
  for (const heap of heaps) {
    if (heap.rest === 0 || heap.comes > day || lastDay(heap) < day) continue;
    if (best === null || goesBefore(heap, best)) best = heap;
  }
  return best;
}

function goesBefore(heap: PlainHeap, other: PlainHeap): boolean {
  if (lastDay(heap) !== lastDay(other)) return lastDay(heap) < lastDay(other);
  const [sealed, otherSealed] = [isSealed(heap), isSealed(other)];
  if (sealed !== otherSealed) return otherSealed;
  return heap.comes < other.comes;
}

function isSealed({ life, opened }: PlainHeap): boolean {
  return life !== null && opened === null;
}

/** The day's share of what its week's forecast has beyond its plan, in sevenths of a unit. */
function seventhsForecast({ today, demands, forecastPerWeek }: ProjectionSources, day: number): number {
  const monday = day - ((day - today) % 7);
  let planned = 0;
  for (const { kind, day: on, quantity } of demands) {
    const served = Math.max(on, today);
    if (kind === 'planned' && served >= monday && served < monday + 7) planned += quantity;
  }
  return Math.max(forecastPerWeek - planned, 0);
}
