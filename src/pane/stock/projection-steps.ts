import type { ProjectedDay } from '../../core/projection/projection.ts';

/** Where things stand in the chart of a projection, in % of its width and height; 0 of the height is at its top. */
export interface ProjectionChart {
  /** What is usable: from where to where it stays on a height. */
  readonly steps: readonly Step[];
  /** The lines behind them with what they stand for, the lowest first; nothing stands at 0. */
  readonly scale: readonly { readonly at: number; readonly quantity: number }[];
  /** Where the order level lies; null where there is none. */
  readonly level: number | null;
  /** What happens on single days, a row for each kind that occurs. */
  readonly rows: readonly MarkRow[];
}

export interface Step {
  readonly from: number;
  readonly to: number;
  readonly at: number;
}

export const MARKS = ['arrives', 'made', 'goes off', 'missing'] as const;
export type Mark = (typeof MARKS)[number];

export interface MarkRow {
  readonly mark: Mark;
  /** The middles of the days, in %. */
  readonly at: readonly number[];
}

const ALL = 100;
/** Heights that differ by less than this can't be told apart on a screen. */
const SAME = 0.25;
/** Of a quantity: what is less is nothing. */
const LEAST = 1e-6;
/** Above the highest step there stays some room. */
const HEADROOM = 1.08;

/**
 * Lays out what is usable from day to day, with what happens on single days.
 * @param level the stock at which to order again; 0 for none
 */
export function projectionChart(days: readonly ProjectedDay[], level: number): ProjectionChart {
  const highest = Math.max(level, ...days.map(({ usable }) => usable));
  const top = highest <= LEAST ? 1 : highest * HEADROOM;
  const height = (quantity: number): number => ALL - (Math.max(quantity, 0) / top) * ALL;
  const across = (place: number): number => (place / days.length) * ALL;
  return {
    steps: stepsOf(days, height, across),
    scale: scaleOf(top).map((quantity) => ({ at: height(quantity), quantity })),
    level: level > LEAST ? height(level) : null,
    rows: MARKS.flatMap((mark) => {
      const at = days.flatMap((day, place) => (happens(mark, day) ? [across(place + 0.5)] : []));
      return at.length === 0 ? [] : [{ mark, at }];
    }),
  };
}

/** Days on which the height stays are one step. */
function stepsOf(
  days: readonly ProjectedDay[],
  height: (quantity: number) => number,
  across: (place: number) => number,
): Step[] {
  const steps: Step[] = [];
  for (const [place, { usable }] of days.entries()) {
    const at = height(usable);
    const last = steps.at(-1);
    if (last !== undefined && Math.abs(last.at - at) < SAME) {
      steps[steps.length - 1] = { ...last, to: across(place + 1) };
    } else {
      steps.push({ from: across(place), to: across(place + 1), at });
    }
  }
  return steps;
}

/** Two to four round quantities up to the top. */
function scaleOf(top: number): number[] {
  const power = 10 ** Math.floor(Math.log10(top));
  const step = [power / 5, power / 2, power, power * 2, power * 5].find((each) => top / each < 5) ?? power;
  return Array.from({ length: Math.floor(top / step) }, (_, place) => (place + 1) * step);
}

function happens(mark: Mark, day: ProjectedDay): boolean {
  switch (mark) {
    case 'arrives':
      return day.arrived > LEAST;
    case 'made':
      return day.made > LEAST;
    case 'goes off':
      return day.wentOff > LEAST;
    case 'missing':
      return day.short > LEAST;
  }
}
