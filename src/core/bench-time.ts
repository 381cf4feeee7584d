import type { Day } from './day.ts';
import { type Exact, ratio, ZERO } from './exact-number.ts';
import { keyOf } from './identifier.ts';
import { type Coins, type Currency, toCoins } from './money.ts';
import type { PlanRow } from './studio.ts';

const MINUTES_PER_HOUR = 60;

/**
 * The minutes at the bench that plan rows take: the set-up once per row, or once per day or job of a treatment
 * where it says so, and the minutes per extent × extent.
 */
export function benchMinutes(rows: readonly PlanRow[], today: Day): Exact {
  const setUp = new Set<string>();
  let minutes = ZERO;
  rows.forEach(({ record, treatment }, place) => {
    const { setupPer, setupMinutes, minutesPerExtent } = treatment.record;
    const scope =
      setupPer === 'job'
        ? keyOf(record.job)
        : setupPer === 'day'
          ? (record.plannedFor ?? today)
          : `row ${place}`;
    const key = `${keyOf(treatment.name)} ${scope}`;
    if (!setUp.has(key)) minutes = minutes.add(setupMinutes ?? ZERO);
    setUp.add(key);
    minutes = minutes.add((minutesPerExtent ?? ZERO).mul(record.extent));
  });
  return minutes;
}

/** What minutes at the bench cost at an hourly rate, to the coin; nothing where there is no rate. */
export function benchCost(minutes: Exact, ratePerHour: Exact | null, currency: Currency): Coins {
  return ratePerHour === null
    ? 0n
    : toCoins(minutes.mul(ratePerHour).mul(ratio(1, MINUTES_PER_HOUR)), currency);
}
