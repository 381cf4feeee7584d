import distribution from '@stdlib/stats-base-dists-normal-cdf';

/**
 * The standard normal loss function L(z) = φ(z) − z·(1 − Φ(z)): by how much a standard normal need exceeds z on
 * average, where what is below z counts as nothing.
 */
function standardNormalLoss(z: number): number {
  const density = Math.exp(-(z ** 2) / 2) / Math.sqrt(2 * Math.PI);
  return density - z * distribution(-z, 0, 1);
}

/**
 * How much is short on average until a delivery arrives, where the need until then is normal.
 * Source: Chopra & Meindl, Supply Chain Management, on safety inventory.
 * @param level the stock at which it was ordered
 * @param mean of the need
 * @param deviation of the need, its standard deviation; 0 where the need is certain
 */
export function expectedShortage(level: number, mean: number, deviation: number): number {
  if (deviation <= 0) return Math.max(mean - level, 0);
  return deviation * standardNormalLoss((level - mean) / deviation);
}

/**
 * The share of what is needed that is there: 1 less what is short on average for each order, by the order's quantity.
 * It is another thing than the chance that nothing is short, and mostly much higher.
 * Source: Chopra & Meindl, Supply Chain Management, on the fill rate.
 * @param orderQuantity above 0
 * @returns from 0, where at least a whole order is short each time, to 1
 */
export function fillRate(level: number, mean: number, deviation: number, orderQuantity: number): number {
  return Math.max(1 - expectedShortage(level, mean, deviation) / orderQuantity, 0);
}
