import type { Day } from './day.ts';
import { type Exact, roundQuantity, smaller, sum, ZERO } from './exact-number.ts';
import { groupBy } from './group-by.ts';
import { type IdentifierMaker, keyOf } from './identifier.ts';
import type { LotAccount } from './lot-account.ts';
import { type Movement, movementOf } from './movement.ts';
import { nameForMovement } from './movement-name.ts';

/** A part of what is left of a bath, and the work that it falls on. */
export interface BathShare {
  /** Null where it falls on nobody's work: then it is the studio's loss. */
  readonly job: string | null;
  readonly item: string | null;
  /** In the lot's unit, with at most 6 decimals. */
  readonly quantity: Exact;
}

/**
 * Shares what is left of a bath among the jobs, and their items, that used it, in proportion to what stands as used
 * of it: each share to 6 decimals, the last takes the rest. What a job's own bath leaves is a normal part of the
 * work and its cost (IAS 2 sets only abnormal waste apart).
 * @param left above 0, in the lot's unit
 */
export function bathShares(account: LotAccount, left: Exact): BathShare[] {
  const uses = account.postings
    .filter(
      ({ movement, reversedOn }) =>
        movement.kind === 'Use' && movement.reverses === null && reversedOn === null,
    )
    .map(({ movement }) => movement);
  const owners = [
    ...groupBy(uses, ({ job, item }) => JSON.stringify([job, item].map(keyOrNull))).values(),
  ].map((own) => ({ job: own[0]?.job ?? null, item: own[0]?.item ?? null, used: sum(own.map(usedBy)) }));
  const used = sum(owners.map((owner) => owner.used));
  if (used.compare(ZERO) <= 0) return [{ job: null, item: null, quantity: roundQuantity(left) }];
  let rest = roundQuantity(left);
  return owners.flatMap(({ job, item, used: own }, place) => {
    const isLast = place === owners.length - 1;
    const quantity = isLast ? rest : smaller(rest, roundQuantity(left.mul(own).div(used)));
    rest = rest.sub(quantity);
    return quantity.compare(ZERO) > 0 ? [{ job, item, quantity }] : [];
  });
}

function keyOrNull(name: string | null): string | null {
  return name === null ? null : keyOf(name);
}

function usedBy({ change }: Movement): Exact {
  return change.neg();
}

/** The movements by which what is left of a bath is thrown away; still to be written. */
export function wasteOf(
  account: LotAccount,
  shares: readonly BathShare[],
  date: Day,
  note: string,
  newIdentifier: IdentifierMaker,
): Movement[] {
  const { lot } = account;
  return shares.map((share) => {
    const links = { entry: null, into: null, reverses: null, record: null } as const;
    const movement = movementOf({
      ...share,
      ...links,
      name: nameForMovement(account, date, newIdentifier),
      date,
      kind: 'Waste',
      lot,
      unit: lot.record.unit,
      lotIs: 'confirmed',
      note,
    });
    if (movement === null) throw new Error(`${lot.record.unit.name} is the unit of lot ${lot.name} itself`);
    return movement;
  });
}
