import type { Day } from '../core/day.ts';
import { drawEntry } from '../core/draw.ts';
import { cover } from '../core/draw-order.ts';
import { type Exact, roundQuantity, ZERO } from '../core/exact-number.ts';
import type { IdentifierMaker } from '../core/identifier.ts';
import { accountIn, type Ledger, post } from '../core/ledger.ts';
import { leftOn } from '../core/lot-account.ts';
import { type Movement, movementOf } from '../core/movement.ts';
import type { MovementKind } from '../core/records.ts';
import type { Entry, Lot } from '../core/studio.ts';
import { reverse } from '../core/undo.ts';
import type { Unit } from '../core/unit.ts';

/** A movement as the studio wrote it down. */
export interface Written {
  readonly movement: Movement;
  readonly posted: Day;
  /** Null for a row that was typed by hand. */
  readonly posting: string | null;
  readonly into: Lot | null;
}

/** How an entry was drawn. */
export interface Drawn {
  readonly drawn: 'yes' | 'part';
  readonly extent: Exact;
}

/** A change that a person makes to a lot: what, how much of which unit, and why. */
export interface ByHand {
  readonly kind: MovementKind;
  readonly quantity: Exact;
  readonly unit: Unit;
  readonly note: string;
  readonly job?: string;
}

/** The studio's bench, day after day: each act goes through the rules and into the ledger. */
export class DemoBench {
  ledger: Ledger;
  readonly written: Written[] = [];
  readonly drawn = new Map<string, Drawn>();
  readonly newIdentifier: IdentifierMaker;

  constructor(ledger: Ledger, newIdentifier: IdentifierMaker) {
    this.ledger = ledger;
    this.newIdentifier = newIdentifier;
  }

  /** What is left of a lot at the end of a day. */
  left(lot: Lot, day: Day): Exact {
    return leftOn(accountIn(this.ledger, lot), day);
  }

  draw(entry: Entry, day: Day): readonly Movement[] {
    const drawing = drawEntry(this.ledger, entry, day, this.newIdentifier);
    this.ledger = drawing.ledger;
    this.write(drawing.movements, day);
    const { drawn, extent } = drawing.entries[0] ?? {};
    if (drawn && extent) this.drawn.set(entry.name, { drawn, extent });
    return drawing.movements;
  }

  /** Takes back what was drawn, by reversing rows. */
  takeBack(movements: readonly Movement[], day: Day): void {
    const undoing = reverse(this.ledger, movements, day, this.newIdentifier);
    this.ledger = undoing.ledger;
    this.write(undoing.movements, day);
  }

  /** Takes the ingredients of a lot that was made, and gives what none of the stock covered. */
  make(lot: Lot, times: Exact, day: Day): readonly string[] {
    const missing: string[] = [];
    const movements = (lot.recipe?.parts ?? []).flatMap(({ material, record }) => {
      if (!material.counted) return [];
      const need = {
        material,
        quantity: roundQuantity(record.quantity.mul(times)),
        unit: record.unit,
        whole: false,
        lot: null,
      };
      const covered = cover(this.ledger, need, day);
      if (covered.missing.compare(0) > 0) missing.push(material.name);
      return covered.takes.map((take) =>
        this.movement(take.lot, day, {
          kind: 'Make',
          quantity: take.quantity,
          unit: record.unit,
          note: `for ${lot.name}`,
        }),
      );
    });
    this.ledger = post(this.ledger, movements);
    this.write(movements, day, lot);
    return missing;
  }

  /** A change by hand; typed into the sheet rather than posted by the pane, it has no posting. */
  change(lot: Lot, day: Day, change: ByHand, isTyped = false): void {
    const movement = this.movement(lot, day, change);
    this.ledger = post(this.ledger, [movement]);
    this.write([movement], day, null, isTyped);
  }

  /** Brings a lot to what was counted, in its own unit. */
  count(lot: Lot, day: Day, counted: Exact, note: string): void {
    const quantity = roundQuantity(counted.sub(this.left(lot, day)));
    if (quantity.equals(ZERO)) return;
    this.change(lot, day, { kind: 'Count', quantity, unit: lot.record.unit, note });
  }

  private movement(lot: Lot, date: Day, { kind, quantity, unit, note, job }: ByHand): Movement {
    const movement = movementOf({
      name: this.newIdentifier('M'),
      date,
      kind,
      lot,
      quantity,
      unit,
      note,
      into: null,
      job: job ?? null,
      item: null,
      entry: null,
      reverses: null,
      record: null,
      lotIs: kind === 'Make' ? 'assumed' : 'confirmed',
    });
    if (movement === null) throw new Error(`${unit.name} leads to no unit of lot ${lot.name}`);
    return movement;
  }

  private write(movements: readonly Movement[], posted: Day, into: Lot | null = null, isTyped = false): void {
    const posting = isTyped || movements.length === 0 ? null : this.newIdentifier('P');
    this.written.push(...movements.map((movement) => ({ movement, posted, posting, into })));
  }
}
