import { addDays, type Day, spokenDay } from './day.ts';
import { type Exact, ONE, roundQuantity } from './exact-number.ts';
import { keyOf } from './identifier.ts';
import { accountIn, costIn, type Ledger, post } from './ledger.ts';
import { leftOn } from './lot-account.ts';
import { noPath } from './missing-conversions.ts';
import type { Coins } from './money.ts';
import { type Movement, movementOf } from './movement.ts';
import type { CountRecord } from './records.ts';
import type { Lot } from './studio.ts';

/** What stands in Posting of a counted row that agreed with the ledger. */
export const NO_DIFFERENCE = 'no difference';

/** What a counted row comes to. */
export interface CountDifference {
  readonly record: CountRecord;
  readonly lot: Lot;
  /** What was counted, in the lot's unit. */
  readonly counted: Exact;
  /** What the ledger would have had at the time of counting, with what was entered later for days before it. */
  readonly expected: Exact;
  /** Counted less expected, in the lot's unit. */
  readonly difference: Exact;
  /** What the Count costs: above 0 is a loss; null where the lot has no cost. 0 where nothing differs. */
  readonly cost: Coins | null;
}

/** The name under which a Count is tried out: it sorts behind all others of its day, as the real one does. */
export const LAST_NAME = '\uffff';

/** A counted row that can't be posted as it stands; the message says why, and what to do. */
export interface CountObstacle {
  readonly record: CountRecord;
  readonly message: string;
}

/** What posting a stocktake comes to: its rows that wait, and those among them that can't be posted. */
export interface StocktakeDifferences {
  readonly differences: readonly CountDifference[];
  readonly obstacles: readonly CountObstacle[];
}

/** The rows of a stocktake, by its name. */
export function rowsOf(ledger: Ledger, stocktake: string): readonly CountRecord[] {
  return ledger.studio.counts.filter((record) => keyOf(record.stocktake) === keyOf(stocktake));
}

/** Whether a counted row is still to be posted. */
export function isWaiting({ posting }: CountRecord): boolean {
  return posting === null;
}

/**
 * What the rows of a stocktake that wait to be posted come to. A row keeps what the ledger gave when it was counted,
 * at the end of that day and of the day before: what was entered since for days before the count is taken to have
 * been in the jar already when it was counted, what was entered for that day or later to have come after it.
 */
export function differencesOf(ledger: Ledger, today: Day, stocktake: string): StocktakeDifferences {
  const waiting = rowsOf(ledger, stocktake).filter(isWaiting);
  const differences: CountDifference[] = [];
  const obstacles: CountObstacle[] = [];
  for (const record of waiting) {
    const lot = ledger.studio.lotsByKey.get(keyOf(record.lot));
    const again = waiting.filter((each) => keyOf(each.lot) === keyOf(record.lot)).length > 1;
    const message = again
      ? `Lot ${record.lot} is counted in two rows of stocktake ${record.stocktake}: leave the one that holds.`
      : lot === undefined
        ? `There is no lot ${record.lot}: correct Lot in row ${record.place.sheetRow} of ${record.place.table}.`
        : (countObstacle(ledger, lot, record, today) ?? null);
    if (message !== null || lot === undefined) obstacles.push({ record, message: message ?? '' });
    else differences.push(differenceOf(ledger, record, lot));
  }
  return { differences, obstacles };
}

/** Why a count of a lot can't be posted; null where it can. */
export function countObstacle(
  ledger: Ledger,
  lot: Lot,
  { countedOn, unit }: Pick<CountRecord, 'countedOn' | 'unit'>,
  today: Day,
): string | null {
  if (ledger.studio.lots.filter(({ name }) => keyOf(name) === keyOf(lot.name)).length > 1) {
    return (
      `Lot ${lot.name} stands in two rows, and a Count would fall on the first of them: ` +
      'give the other row an identifier of its own, then count it.'
    );
  }
  if (countedOn > today)
    return `Lot ${lot.name} is counted on ${spokenDay(countedOn)}, which is still to come.`;
  if (lot.record.received > countedOn) {
    return (
      `Lot ${lot.name} is received only on ${spokenDay(lot.record.received)}, after it was counted: ` +
      'correct Received of the lot, or the day of the count.'
    );
  }
  return lot.converter.factor(unit, lot.record.unit) === null
    ? noPath(lot.material, unit, lot.record.unit, `the count of lot ${lot.name} is not posted`)
    : null;
}

function differenceOf(ledger: Ledger, record: CountRecord, lot: Lot): CountDifference {
  const account = accountIn(ledger, lot);
  const { countedOn, leftThen, leftDayBefore } = record;
  const counted = roundQuantity(
    record.quantity.mul(lot.converter.factor(record.unit, lot.record.unit) ?? ONE),
  );
  const expected =
    leftThen === null || leftDayBefore === null
      ? roundQuantity(leftOn(account, countedOn))
      : leftThen.add(roundQuantity(leftOn(account, addDays(countedOn, -1)))).sub(leftDayBefore);
  const difference = roundQuantity(counted.sub(expected));
  const count = countMovement({ record, lot, difference }, LAST_NAME);
  const cost = count === null ? 0n : costIn(post(ledger, [count]), count);
  return { record, lot, counted, expected, difference, cost: account.cost === null ? null : cost };
}

/**
 * The Count that a difference is posted as; null where nothing differs.
 * @param name the identifier of the movement
 */
export function countMovement(
  {
    record,
    lot,
    difference,
  }: Pick<CountDifference, 'lot' | 'difference'> & {
    readonly record: Pick<CountRecord, 'countedOn' | 'stocktake'>;
  },
  name: string,
): Movement | null {
  if (difference.equals(0)) return null;
  return movementOf({
    name,
    date: record.countedOn,
    kind: 'Count',
    lot,
    quantity: difference,
    unit: lot.record.unit,
    job: null,
    item: null,
    entry: null,
    lotIs: 'confirmed',
    into: null,
    note: `stocktake ${record.stocktake}`,
    reverses: null,
    record: null,
  });
}
