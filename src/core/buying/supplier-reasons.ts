import { type Day, spokenDay } from '../day.ts';
import { keyOf } from '../identifier.ts';
import { moneyWords } from './basket-words.ts';
import type { ChosenRow } from './choose-packs.ts';
import { supplierTerms } from './offer-row.ts';
import { carriageFor, chosenOf, goodsBySupplier, goodsOf, type Purchase, totalOf } from './purchase.ts';
import type { SettledNeed } from './settle-need.ts';
import { packSums } from './whole-packs.ts';

/** A need bought from one other supplier, everything else as it is. */
interface OtherWay {
  readonly supplier: string;
  /** What the need's goods would cost there; coins. */
  readonly goods: number;
  /** What all orders would cost; null where one would be below its smallest. */
  readonly total: number | null;
  readonly orders: number;
  /** The carriage of the order there. */
  readonly carriage: number;
}

/** Why a need is bought here and not from its preferred supplier, or from one where it is cheaper. */
export function supplierReasons(purchase: Purchase, chosen: ChosenRow): string[] {
  const { need, row } = chosen;
  const rows = chosenOf(purchase, need);
  if (need.rows.some(({ byHand }) => byHand !== null)) return [];
  const named = need.need.supplier === null ? null : keyOf(need.need.supplier);
  const preferred = named === row.supplier ? null : named;
  const isShared = rows.some((each) => each.row.supplier !== row.supplier);
  const notPreferred =
    preferred === null
      ? null
      : isShared
        ? whyTooLate(need, row.supplier, preferred)
        : whyNot(purchase, chosen, preferred);
  const reason = notPreferred ?? (isShared ? null : cheaperElsewhere(purchase, chosen));
  return reason === null ? [] : [reason];
}

/** Why not from the preferred supplier; null where nothing speaks against it. */
function whyNot(purchase: Purchase, chosen: ChosenRow, preferred: string): string | null {
  const { need, row } = chosen;
  const name = nameOf(need, preferred);
  if (name === null) {
    const isSetToNone = need.need.offers.some(({ supplier }) => keyOf(supplier) === preferred);
    return isSetToNone ? null : `${need.need.supplier ?? ''} has no row for it in Offers.`;
  }
  const tooLate = whyTooLate(need, row.supplier, preferred);
  if (tooLate !== null) return tooLate;
  const other = boughtFrom(purchase, need, preferred);
  const now = goodsBySupplier(purchase.chosen);
  const total = totalOf(purchase.problem, now);
  if (other === null || total === null) return null;
  if (other.total === null) return belowSmallest(purchase, need, other, name);
  const saved = other.total - total;
  if (saved > 0) {
    return (
      withoutCarriage(purchase, need, other) ??
      `Cheaper in all by ${moneyWords(saved, purchase.currency)} than from ${name}, with the rest as it is.`
    );
  }
  return saved === 0 && other.orders > now.size
    ? `Costs the same as from ${name}, with one order fewer.`
    : null;
}

/** Which job could not wait for a supplier; null where it is in time. */
function whyTooLate(need: SettledNeed, here: string, there: string): string | null {
  const name = nameOf(need, there);
  const arrivalOf = (key: string) =>
    Math.min(...need.rows.filter(({ supplier }) => supplier === key).map(({ arrives }) => arrives)) as Day;
  const late = need.covers.find(({ day }) => arrivalOf(there) > day);
  if (late === undefined || name === null) return null;
  const forJob = late.job === null ? '' : ` for ${late.job}`;
  const others = need.rows.filter(({ supplier, arrives }) => supplier !== here && arrives <= late.day);
  return others.length === 0
    ? `The only one in time${forJob}.`
    : `From ${name} it would be here only on ${spokenDay(arrivalOf(there))}, too late${forJob}.`;
}

/** Where an order below the smallest keeps it from being bought elsewhere. */
function belowSmallest(
  { problem, chosen, currency }: Purchase,
  need: SettledNeed,
  other: OtherWay,
  name: string,
): string | null {
  const rest = goodsBySupplier(chosen.filter((each) => each.need !== need));
  const order = (rest.get(other.supplier) ?? 0) + other.goods;
  const there = supplierTerms(problem, other.supplier).minimumOrder;
  if (order < there) {
    return `From ${name} the order would be ${moneyWords(order, currency)}, below its smallest order of ${moneyWords(there, currency)}.`;
  }
  const short = [...rest].find(([key, goods]) => goods < supplierTerms(problem, key).minimumOrder)?.[0];
  if (short === undefined) return null;
  const here = supplierTerms(problem, short).minimumOrder;
  return `It brings the order to the smallest order of ${moneyWords(here, currency)}.`;
}

/** The supplier where the goods would cost least, but the carriage of another order would cost more. */
function cheaperElsewhere(purchase: Purchase, { need, row }: ChosenRow): string | null {
  const keys = [...new Set(need.rows.map(({ supplier }) => supplier))].filter((key) => key !== row.supplier);
  const others = keys.flatMap((key) => boughtFrom(purchase, need, key) ?? []);
  const reasons = others
    .toSorted((a, b) => a.goods - b.goods)
    .map((other) => withoutCarriage(purchase, need, other));
  return reasons.find((reason) => reason !== null) ?? null;
}

/** Goods that cost more here than with a supplier of whom nothing else is ordered, but no further carriage. */
function withoutCarriage(purchase: Purchase, need: SettledNeed, other: OtherWay): string | null {
  const { problem, chosen, currency } = purchase;
  const now = goodsBySupplier(chosen);
  const dearer = goodsOf(chosenOf(purchase, need)) - other.goods;
  const isNew = !now.has(other.supplier) && other.orders > now.size;
  if (other.total === null || !isNew || dearer <= 0 || other.carriage <= dearer) return null;
  const paid = [...now].some(([key, goods]) => carriageFor(supplierTerms(problem, key), goods) > 0);
  const name = nameOf(need, other.supplier) ?? other.supplier;
  return (
    `Dearer here by ${moneyWords(dearer, currency)} than from ${name}, ` +
    `but no ${paid ? 'second ' : ''}carriage of ${moneyWords(other.carriage, currency)}.`
  );
}

/**
 * The cheapest way to buy a need from one supplier alone, everything else as it is; where every way leaves an order
 * below its smallest, the one with the cheapest goods.
 * @returns null where it can't be bought there in time
 */
function boughtFrom(purchase: Purchase, need: SettledNeed, supplier: string): OtherWay | null {
  const { problem } = purchase;
  const rows = need.rows.filter((row) => row.supplier === supplier);
  const rest = goodsBySupplier(purchase.chosen.filter((each) => each.need !== need));
  const terms = supplierTerms(problem, supplier);
  const worth = Math.max(terms.minimumOrder, terms.carriageFreeOver ?? 0);
  const enough = rows.map(({ offer, price, least }) => {
    const packs = Math.max(least, Math.ceil(need.asked / offer.packQuantity), price > 0 ? worth / price : 0);
    return Math.ceil(packs) * offer.packQuantity;
  });
  const ways = packSums(rows, need.covers, need.limit ?? Math.max(...enough, 0), true).map(({ goods }) => {
    const all = new Map(rest).set(supplier, (rest.get(supplier) ?? 0) + goods);
    const carriage = carriageFor(terms, all.get(supplier) ?? 0);
    return { supplier, goods, total: totalOf(problem, all), orders: all.size, carriage };
  });
  const rank = ({ total }: OtherWay): number => total ?? Infinity;
  const ranked = ways.toSorted((a, b) => (rank(a) === rank(b) ? a.goods - b.goods : rank(a) - rank(b)));
  return ranked[0] ?? null;
}

/** How a supplier is called in Offers; null where no row is left. */
function nameOf({ rows }: SettledNeed, key: string): string | null {
  return rows.find(({ supplier }) => supplier === key)?.offer.supplier ?? null;
}
