import type { Day } from './day.ts';
import { type Exact, exact, larger, roundQuantity, ZERO } from './exact-number.ts';
import { accountOf, type LotAccount, MILLIONTH, type Posting } from './lot-account.ts';
import type { Currency } from './money.ts';
import { type Movement, type MovementFields, movementOf } from './movement.ts';
import type { Lot } from './studio.ts';
import type { Unit } from './unit.ts';

/** How the note of a carried movement begins; the names of the old files follow, the oldest first. */
const NOTE = 'carried over from ';
const BETWEEN_FILES = ', ';

/** A lot of which the first movements may be replaced by one: how many of them still may. */
export class Fold {
  readonly account: LotAccount;
  readonly #currency: Currency;
  /** What the first n movements change together, in the lot's unit. */
  readonly #sums: readonly Exact[];
  /** The coarsest rounding of the first n movements, in the lot's unit. */
  readonly #roundings: readonly Exact[];
  #count: number;

  /** @param most how many movements may be folded at most */
  constructor(account: LotAccount, currency: Currency, most: number) {
    const sums = [ZERO];
    const roundings = [ZERO];
    for (const { movement } of account.postings) {
      sums.push((sums.at(-1) ?? ZERO).add(movement.change));
      roundings.push(larger(roundings.at(-1) ?? ZERO, movement.rounding));
    }
    this.account = account;
    this.#currency = currency;
    this.#sums = sums;
    this.#roundings = roundings;
    this.#count = most;
    this.#settle();
  }

  /** How many movements are folded. */
  get count(): number {
    return this.#count;
  }

  get folded(): readonly Posting[] {
    return this.account.postings.slice(0, this.#count);
  }

  /** Keeps a movement, by its place in the lot's order, and with it all that come after. */
  keepFrom(place: number): void {
    if (place >= this.#count) return;
    this.#count = place;
    this.#settle();
  }

  /** Goes back to where one movement can stand for all before, so that nothing after it is any different. */
  #settle(): void {
    while (this.#count > 0 && this.#standIn() === null) this.#count -= 1;
  }

  /** The movement that would stand for those folded, without its name and note; null where none can. */
  #standIn(): MovementFields | null {
    const { lot, postings } = this.account;
    const last = postings[this.#count - 1];
    if (last === undefined) return null;
    // One of the same day might come to stand before it: movements of a day go by identifier.
    if (postings[this.#count]?.movement.day === last.movement.day) return null;
    // Nothing is gained by writing a movement that was carried over once more.
    if (this.#count === 1 && last.movement.kind === 'Carried') return null;
    return (
      this.#standInFor(last, lot.record.unit) ??
      [...new Set(this.folded.map(({ movement }) => movement.unit))]
        .map((unit) => this.#standInFor(last, unit))
        .find((each) => each !== null) ??
      null
    );
  }

  #standInFor(last: Posting, unit: Unit): MovementFields | null {
    const { lot } = this.account;
    const factor = lot.converter.factor(lot.record.unit, unit);
    const quantity = (this.#sums[this.#count] ?? ZERO).neg().mul(factor ?? ZERO);
    if (factor === null || !isWritable(quantity)) return null;
    const fields = standIn(lot, last.movement.day, quantity, unit);
    const movement = movementOf(fields);
    if (movement === null || !movement.change.equals(this.#sums[this.#count] ?? ZERO)) return null;
    const [alone] = accountOf(lot, [movement], this.#currency).postings;
    const rounding = this.#roundings[this.#count] ?? ZERO;
    const isTheSame =
      alone?.left.equals(last.left) === true &&
      alone.charged === last.charged &&
      settlesAlike(rounding, movement.rounding, lot.record.quantity);
    return isTheSame ? fields : null;
  }

  /**
   * The movement that stands for those that are folded; null where none is.
   * @param file the name of the workbook that keeps them
   */
  carried(name: string, file: string): Movement | null {
    const fields = this.#standIn();
    if (fields === null) return null;
    const note = NOTE + [...new Set([...this.#files(), file])].join(BETWEEN_FILES);
    return movementOf({ ...fields, name, note });
  }

  #files(): string[] {
    return this.folded.flatMap(({ movement: { kind, note } }) =>
      kind === 'Carried' && note?.startsWith(NOTE) === true
        ? note.slice(NOTE.length).split(BETWEEN_FILES)
        : [],
    );
  }

  /** The day since which the lot is open by what is folded; null where it is written in the lot, or that doesn't say. */
  get openedByFolded(): Day | null {
    if (this.account.lot.record.opened !== null) return null;
    return this.folded.find(opens)?.movement.day ?? null;
  }
}

/** Whether a lot is open by a movement, as far as no row takes it back. */
export function opens({ movement, reversedOn }: Posting): boolean {
  return (
    reversedOn === null && movement.reverses === null && (movement.kind === 'Use' || movement.kind === 'Make')
  );
}

function standIn(lot: Lot, date: Day, quantity: Exact, unit: Unit): MovementFields {
  const nobodys = { job: null, item: null, entry: null, lotIs: null, into: null, reverses: null } as const;
  return { name: null, date, kind: 'Carried', lot, quantity, unit, ...nobodys, note: null, record: null };
}

/** Whether a cell holds a quantity exactly: at most 6 decimals, and what a spreadsheet keeps of digits. */
function isWritable(quantity: Exact): boolean {
  return roundQuantity(quantity).equals(quantity) && exact(quantity.valueOf()).equals(quantity);
}

/** Whether what is left later counts as nothing by the one rounding exactly where it does by the other. */
function settlesAlike(one: Exact, other: Exact, quantity: Exact): boolean {
  const least = quantity.mul(MILLIONTH);
  return one.equals(other) || (one.compare(least) < 0 && other.compare(least) < 0);
}
