import type { LotRecord, MovementRecord, Records } from '../../../src/core/records.ts';

/**
 * A second, plain account of stock, worked out apart from the program: one day after the other, with fractions of
 * its own. It knows the units g, kg, mg and oz, and for tissue sheet, cm2, dm2, sq in and g; nothing is rounded.
 */

/** Numerator and denominator, the latter above 0. */
export type Plain = readonly [bigint, bigint];

const plus = (a: Plain, b: Plain): Plain => [a[0] * b[1] + b[0] * a[1], a[1] * b[1]];
const times = (a: Plain, b: Plain): Plain => [a[0] * b[0], a[1] * b[1]];
const over = (a: Plain, b: Plain): Plain =>
  b[0] < 0n ? [-a[0] * b[1], -a[1] * b[0]] : [a[0] * b[1], a[1] * b[0]];
const size = (a: Plain): Plain => [a[0] < 0n ? -a[0] : a[0], a[1]];
export const isLess = (a: Plain, b: Plain): boolean => a[0] * b[1] < b[0] * a[1];
export const isSame = (a: Plain, b: Plain): boolean => a[0] * b[1] === b[0] * a[1];

/** Reads the parts of a library's fraction without using it. */
export function plainOf(value: { readonly s: bigint; readonly n: bigint; readonly d: bigint }): Plain {
  return [value.s * value.n, value.d];
}

/** Grams in a gram, a kilogram, … (one avoirdupois ounce is 28.349523125 g). */
const GRAMS: Readonly<Record<string, Plain>> = {
  g: [1n, 1n],
  kg: [1000n, 1n],
  mg: [1n, 1000n],
  oz: [28_349_523_125n, 1_000_000_000n],
};
/** Square centimetres (a square inch is 6.4516 of them). */
const SQUARES: Readonly<Record<string, Plain>> = {
  cm2: [1n, 1n],
  dm2: [100n, 1n],
  'sq in': [64_516n, 10_000n],
};

function inOneMeasure(unit: string, of: LotRecord): Plain {
  if (of.material === 'Paste') return GRAMS[unit] ?? [0n, 1n];
  const square = SQUARES[unit];
  if (square !== undefined) return square;
  if (unit === 'sheet') {
    return [of.sheetWidth === null ? 1200n : plainOf(of.sheetWidth)[0] * 50n, 1n];
  }
  // Tissue of 10 g/m2: a gram of it is 1000 cm2.
  return [1000n, 1n];
}

/** A lot at the end of a day. */
export interface PlainLot {
  readonly lot: string;
  readonly left: Plain;
  readonly overdrawn: boolean;
  readonly goodUntil: number | null;
  readonly usable: boolean;
}

const RAISES = new Set(['Put back', 'Count']);
const OPENS = new Set(['Use', 'Make']);

function changeOf(row: MovementRecord, of: LotRecord): Plain {
  const factor = over(inOneMeasure(row.unit.name, of), inOneMeasure(of.unit.name, of));
  const amount = times(plainOf(row.quantity), factor);
  return RAISES.has(row.kind) ? amount : [-amount[0], amount[1]];
}

/** All lots at the end of a day, as a person would tell from the rows alone. */
export function plainStock(records: Records, today: number): PlainLot[] {
  return records.lots.map((of) => {
    const own = records.movements.filter(({ lot }) => lot === of.lot);
    let left: Plain = [0n, 1n];
    let opened: number | null = null;
    for (let day = of.received as number; day <= today; day += 1) {
      if (day === of.received) left = plainOf(of.quantity);
      for (const row of own) {
        if (Math.max(row.date, of.received) === day) left = plus(left, changeOf(row, of));
      }
    }
    for (let day = today; day >= of.received; day -= 1) {
      const uses = own.filter(
        (row) =>
          OPENS.has(row.kind) &&
          row.reverses === null &&
          Math.max(row.date, of.received) === day &&
          !own.some((other) => other.reverses === row.movement && Math.max(other.date, of.received) <= today),
      );
      if (uses.length > 0) opened = day;
    }
    if (of.opened !== null) opened = of.opened <= today ? of.opened : null;
    if (isLess(size(left), times(plainOf(of.quantity), [1n, 1_000_000n]))) left = [0n, 1n];
    const goodUntil = plainGoodUntil(records, of, opened);
    const unsure = of.unreadable.size > 0 || of.recipe === 'none';
    const barred =
      of.state !== null && of.state !== 'Usable' && (of.stateSince === null || of.stateSince <= today);
    return {
      lot: of.lot ?? '',
      left,
      overdrawn: isLess(left, [0n, 1n]),
      goodUntil: unsure ? null : goodUntil,
      usable:
        !unsure &&
        !barred &&
        of.received <= today &&
        isLess([0n, 1n], left) &&
        (goodUntil === null || today <= goodUntil),
    };
  });
}

function plainGoodUntil(records: Records, of: LotRecord, opened: number | null): number | null {
  let earliest = Number.POSITIVE_INFINITY;
  const kept = records.materials.find(({ material }) => material === of.material);
  if (of.useBy !== null) earliest = of.useBy;
  const sealed = kept?.lifeSealedDays ?? null;
  if (sealed !== null) earliest = Math.min(earliest, of.received + sealed);
  const open = kept?.lifeOpenedDays ?? null;
  if (open !== null && opened !== null) earliest = Math.min(earliest, opened + open);
  if (of.recipe === 'R3') earliest = Math.min(earliest, of.received + 3);
  if (of.recipe === 'R0') earliest = Math.min(earliest, of.received);
  return earliest === Number.POSITIVE_INFINITY ? null : earliest;
}
