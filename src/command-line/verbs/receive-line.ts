import type { AmountReceived, LineReceived } from '../../actions/order-to-receive.ts';
import { parseDay } from '../../core/day.ts';
import { parsePlainNumber } from '../../core/exact-number.ts';
import { findUnit, UNIT_NAMES } from '../../core/unit.ts';
import { CallRefused } from '../arguments.ts';

/**
 * What came of one order line, as it is typed: the name of the line alone for all that is still to come of it, or
 * LINE=NUMBER UNIT for GOODS @SUPPLIERLOT until DAY in PLACE, from the number on all optional.
 */
export function lineReceived(typed: string): LineReceived {
  const [line, said] = cut(typed, typed.indexOf('='), 1);
  if (line === '' || said === '') throw misread(typed);
  const parts = said ?? 'all';
  const [beforePlace, storedAt] = cut(parts, parts.lastIndexOf(' in '), ' in '.length);
  const [beforeDay, day] = cut(beforePlace, beforePlace.indexOf(' until '), ' until '.length);
  const [beforeLot, supplierLot] = cut(beforeDay, beforeDay.indexOf('@'), 1);
  const [amount, goods] = cut(beforeLot, beforeLot.indexOf(' for '), ' for '.length);
  // Parts in another order would be taken for words of the supplier's lot.
  if (supplierLot === '' || / (?:for|in) /.test(supplierLot ?? '')) throw misread(typed);
  return {
    line,
    amount: amountOf(typed, amount),
    supplierLot,
    useBy: day === null ? null : (parseDay(day) ?? fail(typed)),
    storedAt,
    goods: goods === null ? null : (parsePlainNumber(goods) ?? fail(typed)),
  };
}

/** What stands before a place in a text, and what stands behind what begins there; null where it doesn't. */
function cut(text: string, at: number, length: number): [string, string | null] {
  return at < 0 ? [text.trim(), null] : [text.slice(0, at).trim(), text.slice(at + length).trim()];
}

function amountOf(typed: string, amount: string): AmountReceived {
  if (amount.toLowerCase() === 'all') return 'all to come';
  const { number = '', unit: name = '' } =
    /^(?<number>\S*?\d)\s*(?<unit>[^\d\s.,].*)?$/.exec(amount)?.groups ?? {};
  const quantity = parsePlainNumber(number);
  if (quantity === null || quantity.compare(0) <= 0) throw misread(typed);
  if (['', 'pack', 'packs'].includes(name.toLowerCase())) return { packs: quantity };
  const unit = findUnit(name);
  if (unit !== null) return { quantity, unit };
  throw new CallRefused(
    `--line holds the unit “${name}”: packs or a unit is right, one of ${UNIT_NAMES.join(', ')}.`,
  );
}

function fail(typed: string): never {
  throw misread(typed);
}

function misread(typed: string): CallRefused {
  return new CallRefused(
    `--line holds “${typed}”: write it like "H2=2 packs@KT-88 until 2027-01-31 in Plan chest", or like "H2" for all ` +
      `that is still to come of it.`,
  );
}
