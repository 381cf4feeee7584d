import type { BatchPlan, BatchToMake } from '../../actions/make-batch.ts';
import { spokenDay } from '../../core/day.ts';
import { type Exact, ratio, roundHalfAway } from '../../core/exact-number.ts';
import { type Coins, type Currency, moneyText } from '../../core/money.ts';
import type { Unit } from '../../core/unit.ts';
import { spokenNumber, spokenQuantity, unitFor } from '../../core/wording.ts';
import type { LineWords } from '../log/plan-words.ts';

export const BATCH_WORDS: LineWords = {
  by: 'By the recipe',
  missing: 'is left out, and the Notes of the lot say so',
};

/** Until when a batch is good, and what decides it. */
export function keepsWords({ goodUntil, goodUntilBecause }: BatchPlan): string {
  const until = goodUntil === null ? 'It keeps' : `Good until ${spokenDay(goodUntil)}`;
  return goodUntilBecause === '' ? `${until}.` : `${until}: ${goodUntilBecause}.`;
}

/** When a batch can be used; null where nothing is said about it. */
export function readyWords({ readyAfterHours }: BatchPlan): string | null {
  if (readyAfterHours === null || readyAfterHours.compare(0) <= 0) return null;
  const hours = spokenNumber(readyAfterHours);
  return `Ready after ${hours} ${hours === '1' ? 'hour' : 'hours'}.`;
}

const STEPS = [1, 10, 100, 1000] as const;
const FEWEST_COINS = 10n;

/**
 * What a quantity costs per unit, for as many units as give a price that can be read: 0.83 EUR per 100 g.
 * @param quantity above 0
 */
export function unitCostWords(cost: Coins, quantity: Exact, unit: Unit, currency: Currency): string {
  const priced = STEPS.map((units) => ({
    units,
    coins: roundHalfAway(ratio(cost, 1).mul(units).div(quantity)),
  }));
  const { units, coins } = priced.find((each) => each.coins >= FEWEST_COINS) ?? {
    units: 1,
    coins: priced[0]?.coins ?? 0n,
  };
  const price = [moneyText(coins, currency), currency.code].join(' ').trim();
  return units === 1 ? `${price} per ${unit.name}` : `${price} per ${units} ${unitFor(String(units), unit)}`;
}

/** One sentence about a batch that was made. */
export function madeSentence(plan: BatchPlan, lot: string, currency: Currency): string {
  const price =
    plan.cost === null ? '' : `, ${[currency.code, moneyText(plan.cost, currency)].join(' ').trim()}`;
  const what = `${spokenQuantity(plan.yielded, plan.unit)} of ${plan.recipe.record.makes}`;
  const until = plan.goodUntil === null ? '' : `, good until ${spokenDay(plan.goodUntil)}`;
  return `Made: ${what}, lot ${lot}${price}${until}.`;
}

/** For what a batch was poured at once, behind the sentence about it. */
export function pouredWords({ pour, unit }: BatchToMake): string {
  if (pour === null) return '';
  const { job, item, treatment, amount } = pour;
  const how = amount === null ? 'Poured' : `${spokenQuantity(amount, unit)} poured`;
  return ` ${how} for ${[job, item].filter((each) => each !== null).join(', ')}: ${treatment}.`;
}
