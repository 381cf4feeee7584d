import { type Exact, parsePlainNumber } from './exact-number.ts';
import type { Lot, Material } from './studio.ts';
import { findUnit, type Unit } from './unit.ts';

/** What a person says she used of a material for a log entry, instead of what the rates say. */
export interface AsUsed {
  readonly material: Material;
  /** In `unit`; 0 where none of it was used. */
  readonly quantity: Exact;
  readonly unit: Unit;
  /** The lot that she named; null where the draw order picks. */
  readonly lot: Lot | null;
}

/** The same as it is written, by names. */
export interface AmountUsed {
  readonly material: string;
  readonly quantity: Exact;
  readonly unit: Unit;
  readonly lot: string | null;
}

const AMOUNT =
  /^(?<material>.+)=\s*(?<quantity>[^\s@]*\d)\s*(?<unit>[^@\d][^@]*?)\s*(?:@\s*(?<lot>.+?)\s*)?$/;

/**
 * Takes an amount apart that is written MATERIAL=QUANTITY UNIT or MATERIAL=QUANTITY UNIT@LOT.
 * @returns null where it is written otherwise, or the quantity is no plain number of 0 or more; the unit may be unknown
 */
export function splitAmountUsed(
  typed: string,
): (Omit<AmountUsed, 'unit'> & { readonly unitName: string; readonly unit: Unit | null }) | null {
  const { material = '', quantity = '', unit = '', lot } = AMOUNT.exec(typed.trim())?.groups ?? {};
  const amount = parsePlainNumber(quantity);
  if (material.trim() === '' || amount === null || amount.compare(0) < 0) return null;
  return {
    material: material.trim(),
    quantity: amount,
    unitName: unit,
    unit: findUnit(unit),
    lot: lot ?? null,
  };
}

const USED = /(?:^|\s)Used:\s*(?<amounts>\S.*)$/is;

/**
 * The amounts that the Notes of a log entry give behind “Used:”, with semicolons between them.
 * @returns none where any of them is written otherwise: then it is a remark like others
 */
export function readAmountsUsed(notes: string | null): AmountUsed[] {
  const amounts = USED.exec(notes ?? '')?.groups?.['amounts'];
  if (amounts === undefined) return [];
  const read = amounts.split(';').map(splitAmountUsed);
  return read.every((each) => each !== null && each.unit !== null)
    ? read.flatMap((each) => (each === null || each.unit === null ? [] : [{ ...each, unit: each.unit }]))
    : [];
}

/** The Notes of a log entry with the amounts that were really used behind a person's own words. */
export function notesWithAmounts(notes: string | null, amounts: readonly AmountUsed[]): string | null {
  if (amounts.length === 0) return notes;
  const parts = amounts.map(({ material, quantity, unit, lot }) => {
    const named = lot === null ? '' : `@${lot}`;
    return `${material}=${quantity.toString()} ${unit.name}${named}`;
  });
  return [...(notes === null ? [] : [notes]), `Used: ${parts.join('; ')}`].join(' ');
}
