import type { Day } from './day.ts';
import type { Exact } from './exact-number.ts';
import { type Movement, movementOf } from './movement.ts';
import type { MovementKind } from './records.ts';
import type { Lot } from './studio.ts';
import type { Unit } from './unit.ts';

/** A movement of a lot that a person named, for nobody's job. */
export interface LotMovement {
  readonly name: string;
  readonly date: Day;
  readonly kind: MovementKind;
  readonly quantity: Exact;
  /** One that leads to the lot's; without it the lot's own. */
  readonly unit?: Unit;
  /** The lot that it went into. */
  readonly into?: string;
  readonly note: string;
}

/** Works out a movement of a lot that a person named, for nobody's job. */
export function lotMovement(lot: Lot, { unit = lot.record.unit, into, ...fields }: LotMovement): Movement {
  const nobodys = { job: null, item: null, entry: null, reverses: null, record: null };
  const movement = movementOf({
    ...fields,
    ...nobodys,
    lot,
    unit,
    into: into ?? null,
    lotIs: 'confirmed',
  });
  if (movement === null) throw new Error(`${unit.name} leads to no unit of lot ${lot.name}`);
  return movement;
}
