import type { Day } from './day.ts';
import { type Exact, smaller, ZERO } from './exact-number.ts';
import { type Ledger, standingFor } from './ledger.ts';
import type { Movement } from './movement.ts';
import type { Entry, Lot, Material } from './studio.ts';
import type { Unit } from './unit.ts';

/** A quantity of a material that an entry takes, in `unit`. */
export interface NeededQuantity {
  readonly material: Material;
  readonly quantity: Exact;
  readonly unit: Unit;
  readonly whole: boolean;
  /** The lot that a person named; null where the draw order picks. */
  readonly lot: Lot | null;
}

/** A need of an entry with what is not drawn of it yet. */
export interface StillNeeded<N extends NeededQuantity> {
  readonly need: N;
  /** In the need's unit, never below 0. */
  readonly missing: Exact;
}

/** What of an entry's Use row no need has used up yet, in the unit of the row. */
interface Piece {
  readonly movement: Movement;
  rest: Exact;
}

/**
 * Sets what stands drawn for an entry against what it needs. Two needs may be of one material (a fixed amount of it
 * and one by extent, say): what is drawn counts once, first for a need of its own lot, then for
 * one in its own unit; a need for whole units has
 * taken whole ones.
 */
export function stillNeeded<N extends NeededQuantity>(
  ledger: Ledger,
  entry: Entry,
  needs: readonly N[],
  today: Day,
): StillNeeded<N>[] {
  const pieces: Piece[] = (entry.key === null ? [] : standingFor(ledger, entry.key, today))
    .filter(({ movement }) => movement.kind === 'Use')
    .map(({ movement }) => ({ movement, rest: movement.quantity }))
    .toSorted((a, b) => Number(isWhole(a)) - Number(isWhole(b)));
  const missing = new Map<N, Exact>(needs.map((need) => [need, need.quantity]));
  const settle = (isFor: (piece: Piece, need: N) => boolean): void => {
    for (const [need, quantity] of missing) {
      const own = pieces.filter(
        (piece) => piece.movement.lot.material === need.material && isFor(piece, need),
      );
      missing.set(
        need,
        own.reduce((left, piece) => left.sub(takeOf(piece, left, need.unit)), quantity),
      );
    }
  };
  settle((piece, need) => piece.movement.lot === need.lot);
  settle((piece, need) => piece.movement.unit.name === need.unit.name && (!need.whole || isWhole(piece)));
  settle(() => true);
  return [...missing].map(([need, left]) => ({ need, missing: left }));
}

function isWhole({ movement }: Piece): boolean {
  return movement.quantity.d === 1n;
}

/** Uses up as much of a piece as is wanted, and says how much that is, in the given unit. */
function takeOf(piece: Piece, wanted: Exact, unit: Unit): Exact {
  const factor = piece.movement.lot.converter.factor(piece.movement.unit, unit);
  if (factor === null) return ZERO;
  const got = smaller(wanted, piece.rest.mul(factor));
  piece.rest = piece.rest.sub(got.div(factor));
  return got;
}
