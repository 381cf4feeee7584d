import { type Day, spokenDay } from '../day.ts';
import { counted } from '../wording.ts';
import type { BasketRemark } from './basket.ts';
import type { NeedBy } from './basket-problem.ts';
import { moneyWords, quantityWords } from './basket-words.ts';
import type { ChosenRow } from './choose-packs.ts';
import { SAME, slackOf, supplierTerms } from './offer-row.ts';
import { broughtBy, chosenOf, goodsBySupplier, type Purchase } from './purchase.ts';
import { type SettledNeed, settleNeed } from './settle-need.ts';

/** What of the needs can't be bought, or not in time, or not so; and what was set by hand that doesn't fit. */
export function basketRemarks(purchase: Purchase): BasketRemark[] {
  return [
    ...purchase.needs.flatMap((need) => needRemarks(purchase, need)),
    ...purchase.chosen.flatMap((each) => fewPacksRemarks(purchase, each)),
    ...smallOrderRemarks(purchase),
    ...unknownByHand(purchase),
  ];
}

function needRemarks(purchase: Purchase, settled: SettledNeed): BasketRemark[] {
  const { need, covers } = settled;
  const { material } = need;
  if (settled.wanted > 0 && !need.offers.some(({ packQuantity }) => packQuantity > 0)) {
    return [{ material, kind: 'no offer', sentence: `${material}: nobody sells it: add a row to Offers.` }];
  }
  const rows = chosenOf(purchase, settled);
  const isOpen = covers.some(({ day, quantity }) => broughtBy(rows, day) < quantity - slackOf(quantity));
  if (isOpen) return [{ material, kind: 'not solved', sentence: openSentence(purchase, settled) }];
  // What would be asked for if nothing were set by hand.
  const free = settleNeed({ ...purchase.problem, byHand: [] }, need);
  const total = broughtBy(rows);
  const remarks = [...lateRemarks(free, rows), ...limitRemarks(free, rows)];
  if (total >= free.asked - slackOf(free.asked)) return remarks;
  const sentence = `${material}: ${quantityWords(total, need)} by hand, and ${quantityWords(free.asked, need)} are needed.`;
  return [...remarks, { material, kind: 'by hand too little', sentence }];
}

/** A need that was left open because the order would stay below a smallest order. */
function openSentence({ problem, currency }: Purchase, { need, rows }: SettledNeed): string {
  const keys = [...new Set(rows.map(({ supplier }) => supplier))];
  const smallest = keys
    .map((key) => supplierTerms(problem, key))
    .filter(({ minimumOrder }) => minimumOrder > 0)
    .map(
      ({ supplier, minimumOrder }) =>
        `${supplier} takes no order below ${moneyWords(minimumOrder, currency)}`,
    );
  return `${need.material} is not ordered: ${smallest.join(', ')}, and no more of what is needed there can be used.`;
}

/** What comes after the day on which it is needed; of each job the first. */
function lateRemarks({ need, wanted, asked }: SettledNeed, rows: readonly ChosenRow[]): BasketRemark[] {
  const { material } = need;
  const jobs = new Set<string | null>();
  let before = 0;
  return need.by.flatMap(({ day, quantity, job }) => {
    const isMore = quantity > before;
    before = quantity;
    // What refills the stock is not late where it was cut down: it would go off.
    if (!isMore || jobs.has(job) || (job === null && asked < wanted)) return [];
    const here = dayOf(rows, Math.min(quantity, asked));
    if (here === null || here <= day) return [];
    jobs.add(job);
    return [{ material, kind: 'too late', sentence: lateSentence(material, { day, quantity, job }, here) }];
  });
}

function lateSentence(material: string, { day, job }: NeedBy, here: Day): string {
  const wanted = job === null ? 'should be here to refill the stock' : `is needed for ${job}`;
  return (
    `${material} ${wanted} on ${spokenDay(day)}; ordered today it is here on ${spokenDay(here)}, ` +
    `${counted(here - day, 'day')} too late.`
  );
}

/** The first day on which so much is here; null where it never is. */
function dayOf(rows: readonly ChosenRow[], quantity: number): Day | null {
  const days = rows.map(({ row }) => row.arrives).toSorted((a, b) => a - b);
  return days.find((day) => broughtBy(rows, day) >= quantity - slackOf(quantity)) ?? null;
}

/** What is bought beyond what can be used, and what isn't bought for that reason. */
function limitRemarks(free: SettledNeed, rows: readonly ChosenRow[]): BasketRemark[] {
  const { need, wanted, asked } = free;
  const { material, most, mostBecause } = need;
  if (most === null) return [];
  const because = mostBecause === null ? '' : ` (${mostBecause})`;
  const total = broughtBy(rows);
  const limit = free.limit ?? most;
  if (total > most + slackOf(most)) {
    const over = quantityWords(total - most, need);
    const sentence = `${material}: of ${quantityWords(total, need)} ${over} would be too much${because}.`;
    return [
      { material, kind: total > limit + slackOf(limit) ? 'by hand too much' : 'would go off', sentence },
    ];
  }
  const isCut = asked < wanted - slackOf(wanted) && Math.abs(total - asked) <= slackOf(asked);
  if (!isCut) return [];
  const sentence =
    asked === 0
      ? `${material}: nothing is ordered: the smallest pack would be too much${because}.`
      : `${material}: ${quantityWords(asked, need)} instead of ${quantityWords(wanted, need)}: another pack would be too much${because}.`;
  return [{ material, kind: 'would go off', sentence }];
}

/** A count set by hand for which no row of Offers has a price. */
function fewPacksRemarks({ currency }: Purchase, { need, row, packs }: ChosenRow): BasketRemark[] {
  const { material } = need.need;
  const { fromPacks, offer } = row.offer;
  const isFewer = row.byHand !== null && row.price === row.offer.packPrice && packs < fromPacks - SAME;
  if (!isFewer) return [];
  const sentence = `${material}: ${moneyWords(row.price, currency)} of ${offer} holds from ${counted(fromPacks, 'pack')}; ${packs} by hand.`;
  return [{ material, kind: 'by hand too little', sentence }];
}

/** Orders below the smallest, which only what is set by hand can bring about. */
function smallOrderRemarks({ problem, chosen, currency }: Purchase): BasketRemark[] {
  return [...goodsBySupplier(chosen)].flatMap(([key, goods]) => {
    const { supplier, minimumOrder } = supplierTerms(problem, key);
    const material = chosen.find(({ row }) => row.supplier === key)?.need.need.material ?? '';
    if (goods >= minimumOrder) return [];
    const sentence = `The order to ${supplier} is ${moneyWords(goods, currency)}, below its smallest order of ${moneyWords(minimumOrder, currency)}.`;
    return [{ material, kind: 'by hand too little', sentence }];
  });
}

/** Counts set by hand for rows that nothing in the basket is bought by. */
function unknownByHand({ problem }: Purchase): BasketRemark[] {
  const known = new Set(problem.needs.flatMap(({ offers }) => offers.map(({ offer }) => offer)));
  return problem.byHand
    .filter(({ offer, packs }) => packs > 0 && !known.has(offer))
    .map(({ offer, packs }) => ({
      material: '',
      kind: 'not solved',
      sentence: `${counted(packs, 'pack')} of ${offer} by hand: nothing that is needed has that row of Offers.`,
    }));
}
