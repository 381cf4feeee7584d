import { waitingSince } from './carry-entries.ts';
import { addDays, type Day } from './day.ts';
import { groupBy } from './group-by.ts';
import { type IdentifierMaker, keyOf } from './identifier.ts';
import type { Ledger } from './ledger.ts';
import type { Movement } from './movement.ts';
import type { MovementRecord, Row } from './records.ts';
import type { Lot } from './studio.ts';

/** What carrying over must know besides the ledger. */
export interface CarryOverFacts {
  /** The name of the workbook that keeps what is folded. */
  readonly file: string;
  readonly newIdentifier: IdentifierMaker;
  /** Whether something about a row is still to be mended. */
  readonly isInDoubt: (row: Row) => boolean;
  /** Every row of Movements, those too that the ledger leaves out. */
  readonly movements: readonly MovementRecord[];
  /** Whether Opened of a lot can be written. */
  readonly canWriteOpened: (lot: Lot) => boolean;
}

/** For each lot the day from which every figure must stay as it is, for what is still to be drawn or counted. */
export function limitsOf(ledger: Ledger, day: Day, windowStart: Day): (lot: Lot) => Day {
  const waiting = waitingSince(ledger, day);
  const counted = new Map<Lot | undefined, Day>();
  for (const { lot: name, countedOn, posting } of ledger.studio.counts) {
    if (posting !== null) continue;
    const lot = ledger.studio.lotsByKey.get(keyOf(name));
    const dayBefore = addDays(countedOn, -1);
    const known = counted.get(lot);
    if (known === undefined || dayBefore < known) counted.set(lot, dayBefore);
  }
  return (lot) =>
    Math.min(windowStart, waiting.get(lot.material) ?? windowStart, counted.get(lot) ?? windowStart) as Day;
}

/** Tells the movements about which something is still to be mended: by their own row, or one that names them. */
export function doubts(
  ledger: Ledger,
  { isInDoubt, movements }: CarryOverFacts,
): (movement: Movement) => boolean {
  const { entries } = ledger.studio;
  const entryKeys = new Set(entries.map(({ key }) => key));
  const times = groupBy(movements, ({ movement }) => keyOf(movement ?? ''));
  const named = new Set(
    movements.filter(isInDoubt).flatMap(({ reverses }) => (reverses === null ? [] : [keyOf(reverses)])),
  );
  return ({ name, entry, record }) =>
    record === null ||
    isInDoubt(record) ||
    record.unreadable.size > 0 ||
    (name !== null && (named.has(keyOf(name)) || (times.get(keyOf(name))?.length ?? 0) > 1)) ||
    (entry !== null && !entryKeys.has(keyOf(entry)));
}
