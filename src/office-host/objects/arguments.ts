import { type Area, parseArea, splitAddress } from '../cell-area.ts';
import type { RangeSubject } from '../client-state.ts';
import { invalidArgument, invalidReference, itemNotFound } from '../host-error.ts';
import { findSheet, type MemoryWorkbook, type Sheet } from '../memory-workbook.ts';
import { type Argument, LiveObject } from './object-kind.ts';

/** A whole number; the default where none is given. Throws `InvalidArgument`. */
export function wholeNumber(given: Argument | undefined, otherwise?: number): number {
  if ((given === null || given === undefined) && otherwise !== undefined) return otherwise;
  if (typeof given !== 'number' || !Number.isInteger(given)) throw invalidArgument();
  return given;
}

export function text(given: Argument | undefined): string {
  if (typeof given !== 'string') throw invalidArgument();
  return given;
}

export function truth(given: Argument | undefined): boolean {
  if (typeof given !== 'boolean') throw invalidArgument();
  return given;
}

export function oneOf<Choice extends string>(
  given: Argument | undefined,
  choices: readonly Choice[],
): Choice {
  const found = choices.find((choice) => choice === given);
  if (found === undefined) throw invalidArgument();
  return found;
}

/** A plain value, not an object of the workbook. */
export function plain(given: Argument | undefined): Exclude<Argument, LiveObject> {
  if (given instanceof LiveObject) throw invalidArgument();
  return given ?? null;
}

/** The cells of a range. Throws `InvalidReference` where they have been taken out. */
export function areaOf(range: RangeSubject): Area {
  if (range.area === null) throw invalidReference();
  return range.area;
}

/** A range given as such, or by its address; one without a sheet is on the sheet that is given. */
export function rangeFrom(
  given: Argument | undefined,
  workbook: MemoryWorkbook,
  otherwise: Sheet,
): { readonly sheet: Sheet; readonly area: Area } {
  if (given instanceof LiveObject && given.kind === 'Range') {
    const range = given.subject as RangeSubject;
    return { sheet: range.sheet, area: areaOf(range) };
  }
  const { sheet: name, rest } = splitAddress(text(given));
  const sheet = name === null ? otherwise : findSheet(workbook, name);
  if (!sheet) throw itemNotFound();
  return { sheet, area: parseArea(rest) };
}
