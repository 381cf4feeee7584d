import { type Exact, parsePlainNumber } from '../core/exact-number.ts';
import { findUnit, UNIT_NAMES, type Unit } from '../core/unit.ts';
import { type Call, CallRefused } from './arguments.ts';

const AMOUNT = /^(?<number>\S*\d)\s*(?<unit>[^\d\s].*)$/;

/** A quantity with its unit given by an option, such as "500 ml"; null where it isn't given. */
export function amountOption(
  call: Call,
  option: string,
): { readonly quantity: Exact; readonly unit: Unit } | null {
  const typed = call.text(option);
  if (typed === null) return null;
  const { number = '', unit: name = '' } = AMOUNT.exec(typed.trim())?.groups ?? {};
  const quantity = parsePlainNumber(number);
  if (quantity === null || quantity.compare(0) <= 0) {
    throw new CallRefused(
      `--${option} holds “${typed}”: a number above 0 and a unit are right, such as "500 ml".`,
    );
  }
  const unit = findUnit(name);
  if (unit === null) {
    throw new CallRefused(
      `--${option} holds the unit “${name}”: a unit is right, one of ${UNIT_NAMES.join(', ')}.`,
    );
  }
  return { quantity, unit };
}

/**
 * The same, in the unit of another option; null where it isn't given.
 * @param as that option, by name
 */
export function amountIn(call: Call, option: string, unit: Unit, as: string): Exact | null {
  const amount = amountOption(call, option);
  if (amount === null) return null;
  if (amount.unit.dimension !== unit.dimension) {
    throw new CallRefused(
      `--${option} is given in ${amount.unit.name} and --${as} in ${unit.name}: give both in ${amount.unit.name}, or both in ${unit.name}.`,
    );
  }
  return amount.quantity.mul(amount.unit.inBase).div(unit.inBase);
}
