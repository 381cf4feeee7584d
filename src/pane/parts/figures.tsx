import { type Day, isoDay, spokenDay } from '../../core/day.ts';
import type { Exact } from '../../core/exact-number.ts';
import { type Coins, type Currency, moneyText } from '../../core/money.ts';
import type { Unit } from '../../core/unit.ts';
import { spokenNumber, unitFor } from '../../core/wording.ts';

export interface MoneyProps {
  readonly coins: Coins | null;
  readonly currency: Currency;
  /** With the currency's code; without it where the heading says it. */
  readonly withCode?: boolean;
}

/** An amount of money; "not known" where nothing says what it is. */
export function Money({ coins, currency, withCode = false }: MoneyProps) {
  if (coins === null) return <span class="figure-unknown">not known</span>;
  const code = withCode && currency.code !== '' ? ` ${currency.code}` : '';
  return <span class="figure">{`${moneyText(coins, currency)}${code}`}</span>;
}

/** A quantity with its unit; the two don't part at the end of a line. */
export function Quantity({ quantity, unit }: { readonly quantity: Exact; readonly unit: Unit }) {
  const number = spokenNumber(quantity);
  return (
    <span class="figure">
      {number}
      <span class="figure-unit">{`\u00a0${unitFor(number, unit)}`}</span>
    </span>
  );
}

/** A day for people, 3 Apr 2026; what is given instead where there is none. */
export function DayText({ day, none = '' }: { readonly day: Day | null; readonly none?: string }) {
  if (day === null) return <span class="figure-unknown">{none}</span>;
  return (
    <time class="figure" dateTime={isoDay(day)}>
      {spokenDay(day)}
    </time>
  );
}
