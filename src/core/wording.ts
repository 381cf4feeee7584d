import { type Exact, roundQuantity } from './exact-number.ts';
import type { Unit } from './unit.ts';

const SHOWN_DECIMALS = 3;
const SMALLEST_SHOWN = 0.001;

/** Units that are words and take an s. */
const PLURALS: ReadonlySet<string> = new Set(['sheet', 'roll', 'use']);

/**
 * A quantity for people: at most 3 decimals, more only where it would otherwise read as nothing.
 * The unit stands beside it: 12.5 g, 1 sheet, 3 sheets.
 */
export function spokenQuantity(quantity: Exact, unit: Unit): string {
  const number = spokenNumber(quantity);
  return `${number} ${unitFor(number, unit)}`;
}

/** The unit's name as it stands beside a number. */
export function unitFor(number: string, unit: Unit): string {
  return PLURALS.has(unit.name) && number !== '1' ? `${unit.name}s` : unit.name;
}

/** A number for people: at most 3 decimals, more only where it would otherwise read as nothing. */
export function spokenNumber(quantity: Exact): string {
  const value = roundQuantity(quantity).valueOf();
  const decimals = value !== 0 && Math.abs(value) < SMALLEST_SHOWN ? 6 : SHOWN_DECIMALS;
  return String(Number(value.toFixed(decimals)));
}

/** A count with its noun: 1 lot, 2 lots. */
export function counted(count: number, noun: string, plural = `${noun}s`): string {
  return `${count} ${count === 1 ? noun : plural}`;
}

/** Between which values of pH something should lie: 8 to 9.5, at least 8, at most 9.5; empty where neither is given. */
export function spokenPhLimits(low: Exact | null, high: Exact | null): string {
  if (low !== null && high !== null) return `${spokenNumber(low)} to ${spokenNumber(high)}`;
  if (low !== null) return `at least ${spokenNumber(low)}`;
  return high === null ? '' : `at most ${spokenNumber(high)}`;
}
