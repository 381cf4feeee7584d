import { dailyStatistics } from '../reorder-formula.ts';

/** How the use of a material runs: see demandPattern. */
export type DemandClass =
  | 'none'
  | 'too little'
  | 'smooth'
  | 'erratic'
  | 'intermittent'
  | 'lumpy'
  | 'died away';

/** What a series of weeks shows. */
export interface DemandPattern {
  readonly demandClass: DemandClass;
  /** In how many weeks something was used. */
  readonly uses: number;
  /** p: weeks between uses on average, the first counted from the start; null without use. */
  readonly meanInterval: number | null;
  /** v: the squared coefficient of variation of the amounts used; null with fewer than two. */
  readonly sizeVariation: number | null;
  /** Weeks without use since the last one; null without use. */
  readonly sinceLast: number | null;
}

/**
 * The cut-offs of Syntetos, Boylan & Croston, Journal of the Operational Research Society 56 (2005) 495-503; the
 * numbers from memory. Sources disagree on what lies on a cut-off: here it still belongs to the regular side.
 */
const LONGEST_REGULAR_INTERVAL = 1.32;
const LARGEST_REGULAR_VARIATION = 0.49;

/** With fewer uses neither their rhythm nor their amounts can be told. Common practice, no source. */
const FEWEST_USES = 4;

/**
 * Use has died away once nothing was used for more than four usual intervals and for at least eight weeks. Were uses
 * scattered evenly, so long a gap would come by chance less than twice in a hundred (e⁻⁴); eight weeks leave room for
 * a holiday and a large job of another kind. Common practice, no source.
 */
const INTERVALS_TO_DIE_AWAY = 4;
const WEEKS_TO_DIE_AWAY = 8;

/**
 * How the use of a material runs, by the mean interval p between the weeks with use and the squared coefficient of
 * variation v of what these used (population: divided by n): *smooth* (often, alike), *erratic* (often, in different
 * amounts), *intermittent* (now and then, alike), *lumpy* (now and then, in different amounts). Besides, *none* is
 * used, *too little* to tell, or it has *died away*, for which at least two uses show a usual interval.
 * @param weekly what was used in each week, the earliest first; none below 0
 */
export function demandPattern(weekly: readonly number[]): DemandPattern {
  const sizes = weekly.filter((quantity) => quantity > 0);
  const uses = sizes.length;
  if (uses === 0) {
    return { demandClass: 'none', uses, meanInterval: null, sizeVariation: null, sinceLast: null };
  }
  const last = weekly.findLastIndex((quantity) => quantity > 0);
  const meanInterval = (last + 1) / uses;
  const sinceLast = weekly.length - 1 - last;
  const { mean, deviation } = dailyStatistics(sizes);
  const variation = (deviation / mean) ** 2;
  return {
    demandClass: classOf(uses, meanInterval, variation, sinceLast),
    uses,
    meanInterval,
    sizeVariation: uses < 2 ? null : variation,
    sinceLast,
  };
}

/** Whether the amounts used are alike rather than very different. */
export function hasEvenAmounts({ sizeVariation }: DemandPattern): boolean {
  return sizeVariation === null || sizeVariation <= LARGEST_REGULAR_VARIATION;
}

function classOf(uses: number, interval: number, variation: number, sinceLast: number): DemandClass {
  const isLongSince = sinceLast >= WEEKS_TO_DIE_AWAY && sinceLast > INTERVALS_TO_DIE_AWAY * interval;
  if (uses >= 2 && isLongSince) return 'died away';
  if (uses < FEWEST_USES) return 'too little';
  const isRegular = interval <= LONGEST_REGULAR_INTERVAL;
  if (variation <= LARGEST_REGULAR_VARIATION) return isRegular ? 'smooth' : 'intermittent';
  return isRegular ? 'erratic' : 'lumpy';
}
