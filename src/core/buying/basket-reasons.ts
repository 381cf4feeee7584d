import { type Day, spokenDay } from '../day.ts';
import type { SupplierProblem } from '../planning/plan-problem.ts';
import { counted } from '../wording.ts';
import { moneyWords } from './basket-words.ts';
import type { ChosenRow } from './choose-packs.ts';
import { packReasons } from './pack-reasons.ts';
import { carriageFor, chosenOf, goodsOf, type Purchase } from './purchase.ts';
import { supplierReasons } from './supplier-reasons.ts';

/** Why a line stands in the basket: what it is needed for, why so many packs, and why from here. */
export function lineReasons(purchase: Purchase, chosen: ChosenRow): string[] {
  return [
    ...purposes(purchase, chosen),
    ...packReasons(purchase, chosen),
    ...supplierReasons(purchase, chosen),
  ];
}

/** Why carriage is charged or not, and whether the supplier takes so small an order. */
export function orderReasons(
  purchase: Purchase,
  rows: readonly ChosenRow[],
  terms: SupplierProblem,
): string[] {
  const money = (coins: number) => moneyWords(coins, purchase.currency);
  const goods = goodsOf(rows);
  const { carriage, carriageFreeOver, minimumOrder } = terms;
  const reasons: string[] = [];
  if (goods < minimumOrder) reasons.push(`Below the smallest order of ${money(minimumOrder)}.`);
  if (carriage > 0 && carriageFreeOver !== null) {
    reasons.push(
      carriageFor(terms, goods) === 0
        ? `No carriage: it is charged only below ${money(carriageFreeOver)}.`
        : `Carriage of ${money(carriage)}: it is charged below ${money(carriageFreeOver)}.`,
    );
  }
  return reasons;
}

/** The jobs that wait for what a line brings; where none does, why the material is needed. */
function purposes(purchase: Purchase, { need, row }: ChosenRow): string[] {
  const first = Math.min(...chosenOf(purchase, need).map((each) => each.row.arrives)) as Day;
  const waiting = need.need.by.filter(
    ({ job, day }) => job !== null && row.arrives <= (Math.max(day, first) as Day),
  );
  const jobs = [...new Set(waiting.map(({ job }) => job))];
  const earliest = waiting[0];
  if (earliest === undefined) return need.need.because === '' ? [] : [need.need.because];
  const more = jobs.length === 1 ? '' : `, and for ${counted(jobs.length - 1, 'more job', 'more jobs')}`;
  return [`Needed for ${earliest.job ?? ''} on ${spokenDay(earliest.day)}${more}.`];
}
