import { addDays, type Day, spokenDay } from './day.ts';
import { isReversedBy, type LotAccount, leftOn, stateOn } from './lot-account.ts';
import type { RecipeRecord } from './records.ts';
import type { Lot } from './studio.ts';
import { counted } from './wording.ts';

/** One thing that limits how long a lot is good. */
export interface LifeLimit {
  /** The last day on which it may be used by this limit. */
  readonly day: Day;
  /** Which limit it is, in words: “printed date”, “opened 4 Aug 2026, keeps 90 days”. */
  readonly reason: string;
}

/** A limit with the day from which it runs, by which a later test can outdate it. */
interface DatedLimit extends LifeLimit {
  readonly since: Day;
}

/** The day since which a lot is open, as far as it is known on a day; null while it is sealed. */
export function openedOn(account: LotAccount, day: Day): Day | null {
  const { opened } = account.lot.record;
  if (opened !== null) return opened <= day ? opened : null;
  const first = account.postings.find(
    (posting) =>
      posting.movement.day <= day &&
      posting.movement.reverses === null &&
      (posting.movement.kind === 'Use' || posting.movement.kind === 'Make') &&
      !isReversedBy(posting, day),
  );
  return first?.movement.day ?? null;
}

/** A test of whether a lot is still good, with both of its dates filled, made on or before a day. */
export function retestOn(lot: Lot, day: Day): { readonly on: Day; readonly until: Day } | null {
  const { retested, retestedUntil } = lot.record;
  return retested === null || retestedUntil === null || retested > day
    ? null
    : { on: retested, until: retestedUntil };
}

/**
 * All that limits how long a lot is good, as far as it is known on a day, the earliest first: its printed date, its
 * lives sealed and opened, its life as made by where it is kept, and the earliest of the parts it was made from. A
 * test replaces what limited it before; what begins later, such as opening it afterwards, still counts.
 * @returns none where it keeps, and where a date, life or recipe that bears on it can't be told (see Lot.doubtful)
 */
export function lifeLimitsOn(account: LotAccount, day: Day): LifeLimit[] {
  return limitsOn(account, day, openedLimit(account, day));
}

/** The limit that ends a lot's life first as long as it is sealed; null where it keeps, or that can't be told. */
export function sealedLimitOn(account: LotAccount, day: Day): LifeLimit | null {
  return limitsOn(account, day, null)[0] ?? null;
}

function limitsOn({ lot }: LotAccount, day: Day, opened: DatedLimit | null): LifeLimit[] {
  if (lot.doubtful) return [];
  const limits = [printedLimit(lot), sealedLimit(lot), opened, madeLimit(lot)].filter(
    (limit) => limit !== null,
  );
  const retest = retestOn(lot, day);
  if (retest === null) return inOrder(limits);
  const by = lot.record.retestedBy === null ? '' : ` by ${lot.record.retestedBy}`;
  const tested: DatedLimit = {
    since: retest.on,
    day: retest.until,
    reason: `retested ${spokenDay(retest.on)}${by}`,
  };
  return inOrder([tested, ...limits.filter(({ since }) => since > retest.on)]);
}

function inOrder(limits: readonly DatedLimit[]): LifeLimit[] {
  return limits.toSorted((a, b) => a.day - b.day).map(({ day, reason }) => ({ day, reason }));
}

function printedLimit({ record, recipe }: Lot): DatedLimit | null {
  const { useBy, received } = record;
  if (useBy === null) return null;
  if (recipe === null) return { since: received, day: useBy, reason: 'printed date' };
  const reason = recipe.record.limitedByParts === true ? 'the earliest of its parts' : 'its Use by date';
  return { since: received, day: useBy, reason };
}

function sealedLimit({ record, material }: Lot): DatedLimit | null {
  const { received } = record;
  const { lifeSealedDays } = material.record;
  if (lifeSealedDays === null) return null;
  return {
    since: received,
    day: addDays(received, lifeSealedDays),
    reason: `sealed, keeps ${counted(lifeSealedDays, 'day')} from receipt`,
  };
}

function openedLimit(account: LotAccount, day: Day): DatedLimit | null {
  const { lifeOpenedDays } = account.lot.material.record;
  const opened = openedOn(account, day);
  if (opened === null || lifeOpenedDays === null) return null;
  return {
    since: opened,
    day: addDays(opened, lifeOpenedDays),
    reason: `opened ${spokenDay(opened)}, keeps ${counted(lifeOpenedDays, 'day')}`,
  };
}

function madeLimit(lot: Lot): DatedLimit | null {
  const life = lot.recipe === null ? null : madeLife(lot.recipe.record, lot);
  if (life === null) return null;
  const { received } = lot.record;
  const where = life.where === '' ? '' : ` (${life.where})`;
  return {
    since: received,
    day: addDays(received, life.days),
    reason: `made ${spokenDay(received)}, keeps ${counted(life.days, 'day')}${where}`,
  };
}

/**
 * How long what a recipe makes keeps at a place: the life given for the cold or for the dark, where it stands so and
 * that is given, the longer of the two where both apply; else its Life days.
 */
export function madeLife(
  { lifeDays, lifeColdDays, lifeDarkDays }: Pick<RecipeRecord, 'lifeDays' | 'lifeColdDays' | 'lifeDarkDays'>,
  { cold, dark }: Pick<Lot, 'cold' | 'dark'>,
): { readonly days: number; readonly where: '' | 'cold' | 'dark' } | null {
  const kept = [
    cold && lifeColdDays !== null ? { days: lifeColdDays, where: 'cold' as const } : null,
    dark && lifeDarkDays !== null ? { days: lifeDarkDays, where: 'dark' as const } : null,
  ].filter((life) => life !== null);
  const longest = kept.toSorted((a, b) => b.days - a.days)[0];
  return longest ?? (lifeDays === null ? null : { days: lifeDays, where: '' });
}

/**
 * The last day on which a lot may be used, as far as it is known on a day: the earliest of its limits.
 * @returns null where it keeps, and where a date, life or recipe that bears on it can't be told (see Lot.doubtful)
 */
export function goodUntilOn(account: LotAccount, day: Day): Day | null {
  return lifeLimitsOn(account, day)[0]?.day ?? null;
}

/** Which limit it is that ends a lot's life first; null where none does. */
export function goodUntilReason(account: LotAccount, day: Day): string | null {
  return lifeLimitsOn(account, day)[0]?.reason ?? null;
}

/** Whether a lot's last day is over. */
export function isExpiredOn(account: LotAccount, day: Day): boolean {
  const goodUntil = goodUntilOn(account, day);
  return goodUntil !== null && goodUntil < day;
}

/** Whether a lot may be drawn on by rule: usable, received, not expired, nothing about it doubtful, something left. */
export function isUsableOn(account: LotAccount, day: Day): boolean {
  return (
    !account.lot.doubtful &&
    account.lot.record.received <= day &&
    stateOn(account, day) === 'Usable' &&
    leftOn(account, day).compare(0) > 0 &&
    !isExpiredOn(account, day)
  );
}
