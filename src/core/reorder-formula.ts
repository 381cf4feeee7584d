import quantile from '@stdlib/stats-base-dists-normal-quantile';

/** Mean and standard deviation of the quantity used on a day, in one unit. */
export interface DailyStatistics {
  readonly mean: number;
  readonly deviation: number;
}

/** What a reorder point is made of: quantities in one unit, times in days. */
export interface ReorderFigures {
  /** The stock below which she never wants to fall; 0 where none is named. */
  readonly keepAtLeast: number;
  /** d */
  readonly meanDaily: number;
  /** σd */
  readonly deviationDaily: number;
  /** L: the supplier's lead time and the review days together. */
  readonly leadDays: number;
  /** σL: the standard deviation of the lead time. */
  readonly leadSpreadDays: number;
  /** z, see serviceFactor */
  readonly factor: number;
}

/** A service level for which there is no factor. */
export class ServiceLevelError extends RangeError {
  override readonly name = 'ServiceLevelError';

  constructor(percent: number) {
    super(`a service level of ${percent} % can't be kept: it must be above 0 and below 100, such as 95`);
  }
}

/**
 * Mean and population standard deviation: divided by n, as the days are the whole window, not a sample.
 * @param daily the quantity used on each day, days without use included as 0
 * @returns both 0 where there are no days
 */
export function dailyStatistics(daily: readonly number[]): DailyStatistics {
  if (daily.length === 0) return { mean: 0, deviation: 0 };
  const mean = daily.reduce((total, quantity) => total + quantity, 0) / daily.length;
  const squares = daily.reduce((total, quantity) => total + (quantity - mean) ** 2, 0);
  return { mean, deviation: Math.sqrt(squares / daily.length) };
}

/**
 * The factor z of the safety stock: the standard normal quantile of a cycle service level, that is of the
 * share of replenishments during which nothing runs out.
 * Source: Chopra & Meindl, Supply Chain Management, on safety inventory.
 * @param percent the service level in %, or null for none, which takes no safety stock: z = 0
 * @returns -Infinity for levels so near to 0 that no number holds 1 less their share
 * @throws ServiceLevelError where it is not above 0 and below 100
 */
export function serviceFactor(percent: number | null): number {
  if (percent === null) return 0;
  if (!(percent > 0 && percent < 100)) throw new ServiceLevelError(percent);
  return quantile(percent / 100, 0, 1);
}

/**
 * The standard deviation of what is used during a lead time that is itself uncertain: √(L·σd² + d²·σL²), for
 * daily quantities independent of each other and of the lead time.
 * Source: Chopra & Meindl, Supply Chain Management, on safety inventory.
 * @param leadDays L
 * @param deviationDaily σd, in the quantity's unit
 * @param meanDaily d, in the quantity's unit
 * @param leadSpreadDays σL
 */
export function leadTimeDeviation(
  leadDays: number,
  deviationDaily: number,
  meanDaily: number,
  leadSpreadDays: number,
): number {
  return Math.sqrt(leadDays * deviationDaily ** 2 + meanDaily ** 2 * leadSpreadDays ** 2);
}

/**
 * The stock at which to order again: the larger of Keep at least and d·L + z·√(L·σd² + d²·σL²), which is the
 * mean use during the lead time plus a safety stock.
 * Source: Chopra & Meindl, Supply Chain Management, on safety inventory.
 */
export function reorderPoint(figures: ReorderFigures): number {
  const { keepAtLeast, meanDaily, deviationDaily, leadDays, leadSpreadDays, factor } = figures;
  const deviation = leadTimeDeviation(leadDays, deviationDaily, meanDaily, leadSpreadDays);
  // A level near to 0 has a factor of -Infinity, and -Infinity × 0 would be no number.
  const safetyStock = deviation === 0 ? 0 : factor * deviation;
  return Math.max(keepAtLeast, meanDaily * leadDays + safetyStock);
}
