/**
 * Daily use without negative days: what came back on a day was not used, and is taken off the latest use before it.
 * What came back of a use before the first day is left out.
 * @param daily one figure a day, the earliest first
 */
export function netUse(daily: readonly number[]): number[] {
  const net: number[] = [];
  for (const quantity of daily) {
    net.push(Math.max(quantity, 0));
    let back = Math.max(-quantity, 0);
    for (let day = net.length - 1; day >= 0 && back > 0; day -= 1) {
      const used = net[day] ?? 0;
      net[day] = Math.max(used - back, 0);
      back -= used;
    }
  }
  return net;
}
