import type { Day } from './day.ts';
import { type Exact, roundQuantity, smaller, ZERO } from './exact-number.ts';
import { keyOf } from './identifier.ts';
import { accountIn, accountsOf, type Ledger } from './ledger.ts';
import { goodUntilOn, isUsableOn, openedOn } from './life.ts';
import { type LotAccount, smallestLeftFrom } from './lot-account.ts';
import { compareText } from './notice.ts';
import type { LotCertainty } from './records.ts';
import type { Lot, Material } from './studio.ts';
import type { Unit } from './unit.ts';

/** What is to be taken of a material. */
export interface Need {
  readonly material: Material;
  /** In `unit`, with at most 6 decimals. */
  readonly quantity: Exact;
  readonly unit: Unit;
  /** Only whole units are taken from each lot. */
  readonly whole: boolean;
  /** The lot that a person named; null where the draw order picks. */
  readonly lot: Lot | null;
}

/** A part of a need, from one lot. */
export interface Take {
  readonly lot: Lot;
  /** In the need's unit, with at most 6 decimals. */
  readonly quantity: Exact;
  readonly lotIs: LotCertainty;
}

/** What a need gets: the lots in the order in which they are drawn, and what none of them covers. */
export interface Cover {
  readonly takes: readonly Take[];
  /** In the need's unit; 0 where the need is covered. */
  readonly missing: Exact;
}

/**
 * The lots of a material that may be drawn on a day by rule, in draw order: the earliest good-until first (those
 * that keep last), then opened before sealed, then the earliest received, then by identifier.
 */
export function drawOrder(ledger: Ledger, material: Material, day: Day): LotAccount[] {
  return accountsOf(ledger, material)
    .filter((account) => isUsableOn(account, day) && isTheLotOfItsName(ledger, account.lot))
    .map((account) => ({
      account,
      goodUntil: goodUntilOn(account, day) ?? Number.POSITIVE_INFINITY,
      sealed: openedOn(account, day) === null,
    }))
    .sort(
      (a, b) =>
        (a.goodUntil === b.goodUntil ? 0 : a.goodUntil - b.goodUntil) ||
        Number(a.sealed) - Number(b.sealed) ||
        a.account.lot.record.received - b.account.lot.record.received ||
        compareText(a.account.lot.name, b.account.lot.name),
    )
    .map(({ account }) => account);
}

/** Not a second row with an identifier that another lot bears: what is drawn from it would fall on the other. */
export function isTheLotOfItsName({ studio }: Ledger, lot: Lot): boolean {
  const { lot: name } = lot.record;
  return name === null || studio.lotsByKey.get(keyOf(name)) === lot;
}

/**
 * Covers a need from the lots in draw order, or from the one that a person named. From each lot it takes at most
 * the smallest amount that is left on that day or any later one. What can't be covered is missing, not overdrawn.
 */
export function cover(ledger: Ledger, need: Need, day: Day): Cover {
  const accounts = need.lot === null ? drawOrder(ledger, need.material, day) : [accountIn(ledger, need.lot)];
  const takes: Take[] = [];
  let missing = need.quantity;
  for (const account of accounts) {
    if (missing.compare(0) <= 0) break;
    const quantity = takeFrom(account, need, missing, day);
    if (quantity.compare(0) <= 0) continue;
    takes.push({ lot: account.lot, quantity, lotIs: need.lot === null ? 'assumed' : 'confirmed' });
    missing = missing.sub(quantity);
  }
  return { takes, missing: missing.compare(0) > 0 ? missing : ZERO };
}

/** How much of what is still missing one lot gives, in the need's unit. */
function takeFrom(account: LotAccount, need: Need, missing: Exact, day: Day): Exact {
  const { lot } = account;
  const factor = lot.converter.factor(lot.record.unit, need.unit);
  if (factor === null) return ZERO;
  const available = smallestLeftFrom(account, day).mul(factor);
  if (need.whole) return smaller(missing, available.floor(0));
  // A lot that is emptied is written rounded; its account takes what the rounding leaves for nothing.
  return available.compare(missing) > 0 ? missing : roundQuantity(available);
}
