import { counted } from '../wording.ts';
import { moneyWords, moreWords } from './basket-words.ts';
import type { ChosenRow } from './choose-packs.ts';
import { type OfferRow, SAME, slackOf, supplierTerms } from './offer-row.ts';
import { broughtBy, carriageFor, chosenOf, goodsBySupplier, goodsOf, type Purchase } from './purchase.ts';

/** Packs beyond what is needed, and what they are good for. */
interface ExtraPacks {
  readonly packs: number;
  readonly because: 'carriage' | 'smallest order' | 'cheaper' | 'fewest sold';
}

/** Why so many packs of a row are bought. */
export function packReasons(purchase: Purchase, chosen: ChosenRow): string[] {
  return [
    ...priceReasons(purchase, chosen),
    ...extraReasons(purchase, chosen),
    ...limitReasons(purchase, chosen),
  ];
}

/** The price where it depends on the number of packs. */
function priceReasons({ currency }: Purchase, { row, packs, need }: ChosenRow): string[] {
  const price = moneyWords(row.price, currency);
  if (row.byHand !== null) {
    return row.price === row.offer.packPrice ? [] : [`${counted(packs, 'pack')} cost ${price} each.`];
  }
  const fewer = rowFor(need.rows, row, row.least - 1);
  return fewer === undefined
    ? []
    : [`From ${counted(row.least, 'pack')} ${price} each instead of ${moneyWords(fewer.price, currency)}.`];
}

function extraReasons(purchase: Purchase, chosen: ChosenRow): string[] {
  const extra = extraPacks(purchase, chosen);
  if (extra === null) return [];
  const { currency, problem } = purchase;
  const { carriage, minimumOrder } = supplierTerms(problem, chosen.row.supplier);
  const quantity = extra.packs * chosen.row.offer.packQuantity;
  const more = moreWords(quantity, chosen.need.need);
  const s = quantity === 1 ? 's' : '';
  switch (extra.because) {
    case 'carriage':
      return [`${more} save${s} the carriage of ${moneyWords(carriage, currency)}.`];
    case 'smallest order':
      return [`${more} bring${s} the order to the smallest order of ${moneyWords(minimumOrder, currency)}.`];
    case 'cheaper':
      return [`${counted(chosen.packs, 'pack')} cost no more than ${chosen.packs - extra.packs}.`];
    case 'fewest sold':
      return [`No fewer than ${counted(chosen.packs, 'pack')} are sold.`];
  }
}

/** Where one more pack would be more than can be used. */
function limitReasons(purchase: Purchase, { row, packs, need }: ChosenRow): string[] {
  const { most, mostBecause } = need.need;
  const rows = chosenOf(purchase, need);
  if (most === null || rows.length > 1) return [];
  const slack = slackOf(most);
  const { packQuantity } = row.offer;
  const isLast = packs * packQuantity <= most + slack && (packs + 1) * packQuantity > most + slack;
  const because = mostBecause === null ? '' : `, as ${mostBecause}`;
  return isLast ? [`No more than ${counted(packs, 'pack')}${because}.`] : [];
}

/**
 * The packs of a row that could be left out with everything still here in time, and what leaving them out would spoil.
 * @returns null where none could, or where it was set by hand
 */
function extraPacks(purchase: Purchase, chosen: ChosenRow): ExtraPacks | null {
  const { row, packs, need } = chosen;
  if (row.byHand !== null) return null;
  const spare = spareQuantity(purchase, chosen);
  const dropped = Math.min(Math.floor(spare / row.offer.packQuantity + SAME), packs);
  let extra: ExtraPacks | null = null;
  for (let count = 1; count <= dropped; count += 1) {
    const rest = packs - count;
    const at = rowFor(need.rows, row, rest);
    if (rest > 0 && at === undefined) {
      // Fewer than the supplier sells: only none at all would be another way.
      extra ??= { packs: count, because: 'fewest sold' };
      continue;
    }
    const because = spoilt(purchase, chosen, rest * (at?.price ?? 0));
    if (because === null || (extra !== null && extra.because !== because)) break;
    extra = { packs: count, because };
  }
  return extra;
}

/** What would be spoilt if a row cost less, or nothing; null where nothing would. */
function spoilt({ problem, chosen }: Purchase, each: ChosenRow, cost: number): ExtraPacks['because'] | null {
  const terms = supplierTerms(problem, each.row.supplier);
  const before = goodsBySupplier(chosen).get(each.row.supplier) ?? 0;
  const after = before - goodsOf([each]) + cost;
  if (after > 0 && after < terms.minimumOrder) return 'smallest order';
  if (after > 0 && carriageFor(terms, after) > carriageFor(terms, before)) return 'carriage';
  return cost >= goodsOf([each]) ? 'cheaper' : null;
}

/** How much less of a row would still cover everything, in the stock unit. */
function spareQuantity(purchase: Purchase, { row, need, packs }: ChosenRow): number {
  const rows = chosenOf(purchase, need);
  const spares = need.covers
    .filter(({ day }) => day >= row.arrives)
    .map(({ day, quantity }) => broughtBy(rows, day) - quantity + slackOf(quantity));
  return Math.min(packs * row.offer.packQuantity, ...spares);
}

/** The row of the same pack whose price holds for so many. */
function rowFor(rows: readonly OfferRow[], { pack }: OfferRow, packs: number): OfferRow | undefined {
  return rows.find((row) => row.pack === pack && row.least <= packs && packs <= row.most);
}
