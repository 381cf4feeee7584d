import { type Day, spokenDay } from './day.ts';
import { type Exact, QUANTITY_DECIMALS, ratio, ZERO } from './exact-number.ts';
import { keyOf } from './identifier.ts';
import { indexBy } from './identities.ts';
import { noPath } from './missing-conversions.ts';
import { compareText, type Notice, notice } from './notice.ts';
import type { LotCertainty, MovementKind, MovementRecord, Records } from './records.ts';
import type { Lot } from './studio.ts';
import type { Unit } from './unit.ts';

/** One change to one lot, worked out: in the ledger already, or about to be written. */
export interface Movement {
  readonly name: string | null;
  readonly date: Day;
  /** The day from which it counts: its date, or the day on which the lot was received if that is later. */
  readonly day: Day;
  readonly kind: MovementKind;
  readonly lot: Lot;
  /** As written, in `unit`. */
  readonly quantity: Exact;
  readonly unit: Unit;
  /** By how much the lot changes, in the lot's unit: negative where it is lowered. */
  readonly change: Exact;
  /** By how much the change may miss the truth, for having been written rounded to 6 decimals; in the lot's unit. */
  readonly rounding: Exact;
  readonly job: string | null;
  readonly item: string | null;
  readonly entry: string | null;
  readonly lotIs: LotCertainty | null;
  /** The lot that it went into: a batch, or a container that was opened. */
  readonly into: string | null;
  readonly note: string | null;
  readonly reverses: Movement | null;
  /** The row that it was read from; null before it is written. */
  readonly record: MovementRecord | null;
}

const RAISING: ReadonlySet<MovementKind> = new Set(['Put back', 'Count']);
/** Kinds that go either way: a count, and a year carried over in which more was put back or counted than drawn. */
const SIGNED: ReadonlySet<MovementKind> = new Set(['Count', 'Carried']);
const HALF_A_STEP = ratio(1n, 2n * 10n ** BigInt(QUANTITY_DECIMALS));

export type MovementFields = Omit<Movement, 'day' | 'change' | 'rounding'>;

/**
 * Works out what a movement does to its lot.
 * @returns null where its unit doesn't lead to the lot's
 */
export function movementOf(fields: MovementFields): Movement | null {
  const { lot, unit, quantity, kind, date } = fields;
  const factor = lot.converter.factor(unit, lot.record.unit);
  if (factor === null) return null;
  const amount = quantity.mul(factor);
  return {
    ...fields,
    day: date < lot.record.received ? lot.record.received : date,
    change: RAISING.has(kind) ? amount : amount.neg(),
    // Its digits don't tell: where a lot is emptied, 4.5199996 that was left is written as 4.52.
    rounding: quantity.d === 1n ? ZERO : HALF_A_STEP.mul(factor),
  };
}

/** The order of a lot's movements: by day, reversals last in their day, then by identifier. */
export function compareMovements(a: Movement, b: Movement): number {
  return (
    a.day - b.day ||
    Number(a.reverses !== null) - Number(b.reverses !== null) ||
    compareText(a.name ?? '', b.name ?? '') ||
    a.change.compare(b.change)
  );
}

/**
 * Works out all movement rows. What can't be is left out and noticed: names that lead nowhere elsewhere
 * (see references.ts); a unit that doesn't lead to the lot's and a reversal that doesn't fit here.
 */
export function workOutMovements(
  records: Records,
  lots: ReadonlyMap<string, Lot>,
): { readonly movements: readonly Movement[]; readonly notices: readonly Notice[] } {
  const notices: Notice[] = [];
  const byName = indexBy(records.movements, (record) => record.movement);
  const originals = new Map<MovementRecord, Movement>();
  const reversals: MovementRecord[] = [];
  for (const record of records.movements) {
    const lot = lots.get(keyOf(record.lot));
    if (lot === undefined) continue;
    const reversed = record.reverses === null ? undefined : byName.get(keyOf(record.reverses));
    if (reversed !== undefined) {
      reversals.push(record);
      continue;
    }
    if (!SIGNED.has(record.kind) && record.quantity.compare(0) < 0) {
      if (record.reverses === null) notices.push(negativeNotice(record));
      continue;
    }
    const movement = movementOf({ ...fieldsOf(record), lot, reverses: null });
    if (movement === null) notices.push(conversionNotice(record, lot));
    else originals.set(record, movement);
  }
  const movements = [...originals.values()];
  const taken = new Set<MovementRecord>();
  reversals.sort((a, b) => a.date - b.date || compareText(a.movement ?? '', b.movement ?? ''));
  for (const record of reversals) {
    const original = byName.get(keyOf(record.reverses ?? ''));
    const lot = lots.get(keyOf(record.lot));
    if (original === undefined || lot === undefined) continue;
    const misfit = misfitOf(record, original, taken);
    if (misfit !== null) {
      notices.push(notice('unreadable', record.movement, record, misfit.column, misfit.message));
      continue;
    }
    const worked = originals.get(original);
    if (worked === undefined) continue;
    taken.add(original);
    const movement = movementOf({ ...fieldsOf(record), lot, reverses: worked });
    if (movement !== null) movements.push(movement);
  }
  return { movements, notices };
}

function fieldsOf(record: MovementRecord): Omit<MovementFields, 'lot' | 'reverses'> {
  const { movement, date, kind, quantity, unit, job, item, entry, lotIs, into, note } = record;
  return { name: movement, date, kind, quantity, unit, job, item, entry, lotIs, into, note, record };
}

function negativeNotice(record: MovementRecord): Notice {
  const message =
    `Quantity holds ${record.quantity.toString()} for a ${record.kind} that reverses nothing: a quantity above 0 is right ` +
    `(the kind says whether it leaves the lot), or name in Reverses the movement that this row takes back.`;
  return notice('unreadable', record.movement, record, 'Quantity', message);
}

function conversionNotice(record: MovementRecord, lot: Lot): Notice {
  const message = noPath(
    lot.material,
    record.unit,
    lot.record.unit,
    `it is not taken into account for lot ${lot.name}`,
  );
  return notice('no-conversion', record.movement, record, 'Unit', message);
}

interface Misfit {
  readonly column: string;
  readonly message: string;
}

/** What is wrong with a reversing row, if anything: it must repeat the row that it takes back, once, and not before it. */
function misfitOf(
  record: MovementRecord,
  original: MovementRecord,
  taken: ReadonlySet<MovementRecord>,
): Misfit | null {
  const name = original.movement ?? '';
  if (original === record || original.reverses !== null) {
    return {
      column: 'Reverses',
      message: `Reverses names ${name}, which is a reversal itself: a reversal is never reversed; write the movement anew.`,
    };
  }
  if (taken.has(original)) {
    return {
      column: 'Reverses',
      message: `Reverses names ${name}, which another row has reversed already: a movement is reversed once.`,
    };
  }
  const differing = REPEATED.find(({ of }) => !sameText(of(record), of(original)));
  if (differing !== undefined) {
    const { column, of } = differing;
    return {
      column,
      message: `${column} holds ${of(record) ?? 'nothing'}: a row that reverses ${name} repeats its ${column}, ${of(original) ?? 'nothing'}.`,
    };
  }
  if (!record.quantity.equals(original.quantity.neg())) {
    return {
      column: 'Quantity',
      message: `Quantity holds ${record.quantity.toString()}: a row that reverses ${name} has its quantity negated, ${original.quantity.neg().toString()}.`,
    };
  }
  if (record.date < original.date) {
    return {
      column: 'Date',
      message:
        `Date holds ${spokenDay(record.date)}, before the ${spokenDay(original.date)} of ${name}, which this row reverses: ` +
        `the same day or a later one is right.`,
    };
  }
  return null;
}

const REPEATED: readonly {
  readonly column: string;
  readonly of: (record: MovementRecord) => string | null;
}[] = [
  { column: 'Kind', of: (record) => record.kind },
  { column: 'Lot', of: (record) => record.lot },
  { column: 'Unit', of: (record) => record.unit.name },
  { column: 'Job', of: (record) => record.job },
  { column: 'Item', of: (record) => record.item },
  { column: 'Entry', of: (record) => record.entry },
];

function sameText(a: string | null, b: string | null): boolean {
  return a === b || (a !== null && b !== null && keyOf(a) === keyOf(b));
}
