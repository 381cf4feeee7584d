import type { BasketProblem, BuyNeed } from '../../../src/core/buying/basket-problem.ts';
import { addDays } from '../../../src/core/day.ts';
import type { OfferProblem } from '../../../src/core/planning/plan-problem.ts';

/**
 * Baskets by trying everything, written apart from the programme: every count of every pack of every material, with
 * the rules read again from what is asked for. Rows of one supplier with the same pack are one pack, whose price is
 * the lowest that holds for its count.
 */

const NEARLY = 1e-9;

/** A pack that one supplier sells of a material. */
interface Pack {
  readonly supplier: string;
  readonly quantity: number;
  readonly lead: number;
  readonly offers: readonly OfferProblem[];
  /** Set by hand; null where it is open. */
  readonly fixed: number | null;
}

/** One way to buy a material. */
export interface Way {
  /** How many of which pack: `A/5 x3`. */
  readonly key: string;
  /** By supplier: coins of goods. */
  readonly goods: ReadonlyMap<string, number>;
  readonly amount: number;
  readonly parts: readonly { readonly lead: number; readonly amount: number }[];
}

/** The cheapest basket that keeps to all rules, and the fewest orders for so little; null where none does. */
export function tryAllPacks(
  problem: BasketProblem,
): { readonly total: number; readonly orders: number } | null {
  const choices = problem.needs.map((need) => {
    const goods = allowedWays(problem, need).map((way) => way.goods);
    return [...new Map(goods.map((each) => [JSON.stringify([...each]), each])).values()];
  });
  let best: { readonly total: number; readonly orders: number } | null = null;
  const go = (index: number, goods: ReadonlyMap<string, number>): void => {
    const here = choices[index];
    if (here === undefined) {
      const total = totalOf(problem, goods);
      if (total === null) return;
      const isBetter =
        best === null || total < best.total || (total === best.total && goods.size < best.orders);
      if (isBetter) best = { total, orders: goods.size };
      return;
    }
    for (const counts of here) {
      const sum = new Map(goods);
      for (const [supplier, coins] of counts) sum.set(supplier, (sum.get(supplier) ?? 0) + coins);
      go(index + 1, sum);
    }
  };
  go(0, new Map());
  return best;
}

/** Goods and carriage; null where an order stays below its smallest. */
export function totalOf({ suppliers }: BasketProblem, goods: ReadonlyMap<string, number>): number | null {
  let total = 0;
  for (const [name, coins] of goods) {
    const terms = suppliers.find(({ supplier }) => supplier === name);
    if (terms === undefined) throw new Error(`no supplier ${name}`);
    if (coins < terms.minimumOrder) return null;
    const isFree = terms.carriageFreeOver !== null && coins >= terms.carriageFreeOver;
    total += coins + (isFree ? 0 : terms.carriage);
  }
  return total;
}

function packsOf(problem: BasketProblem, need: BuyNeed): Pack[] {
  const byHand = new Map(problem.byHand.map(({ offer, packs }) => [offer, packs]));
  const packs = new Map<string, OfferProblem[]>();
  for (const offer of need.offers) {
    if (byHand.get(offer.offer) === 0) continue;
    const key = `${offer.supplier}/${offer.packQuantity}`;
    packs.set(key, [...(packs.get(key) ?? []), offer]);
  }
  const all = [...packs.values()].map((offers) => {
    const [{ supplier, packQuantity } = { supplier: '', packQuantity: 0 }] = offers;
    const set = offers.filter(({ offer }) => byHand.has(offer));
    return {
      supplier,
      quantity: packQuantity,
      lead: problem.suppliers.find((each) => each.supplier === supplier)?.leadDays ?? 0,
      offers,
      fixed: set.length === 0 ? null : set.reduce((sum, { offer }) => sum + (byHand.get(offer) ?? 0), 0),
    };
  });
  // Where a person has said how much she wants of a material, or nothing asks for it, nothing else is bought of it.
  const isOpen = need.by.length > 0 && all.every(({ fixed }) => fixed === null);
  return isOpen ? all : all.filter(({ fixed }) => fixed !== null);
}

/** How a count of a pack stands in the key of a way. */
export function wayKey(supplier: string, quantity: number, count: number): string {
  return ` ${supplier}/${quantity} x${count}`;
}

function priceOf({ offers }: Pack, count: number): number | null {
  const holding = offers.filter(({ fromPacks }) => fromPacks <= count);
  return holding.length === 0 ? null : Math.min(...holding.map(({ packPrice }) => packPrice));
}

/** Every way to buy a material that its rules allow. */
export function allowedWays(problem: BasketProblem, need: BuyNeed): Way[] {
  const packs = packsOf(problem, need);
  const wanted = need.by.at(-1)?.quantity ?? 0;
  const ways = waysOf(packs, wanted, problem);
  const lead = (offset: number) => addDays(problem.today, offset);
  const openLeads = packs.filter(({ fixed }) => fixed === null).map((pack) => pack.lead);
  const earliest = openLeads.length === 0 ? null : Math.min(...openLeads);
  const fixedBy = (day: number) =>
    packs.reduce(
      (sum, { fixed, lead: days, quantity }) => (lead(days) <= day ? sum + (fixed ?? 0) * quantity : sum),
      0,
    );

  const hereBy = (way: Way, day: number) =>
    way.parts.reduce((sum, part) => (lead(part.lead) <= day ? sum + part.amount : sum), 0);
  const meets = (way: Way, asked: readonly { readonly day: number; readonly quantity: number }[]) =>
    asked.every(({ day, quantity }) => {
      if (fixedBy(day) >= quantity - NEARLY) return true;
      if (earliest === null) return true;
      return hereBy(way, Math.max(day, lead(earliest))) >= quantity - NEARLY;
    });

  let before = 0;
  let forJobs = 0;
  const jobs = need.by.flatMap(({ day, quantity, job }) => {
    const more = quantity - before;
    before = quantity;
    if (job === null) return [];
    forJobs += more;
    return [{ day, quantity: forJobs }];
  });

  const all = ways.filter((way) => meets(way, need.by));
  if (need.most === null) return all;
  const enough = ways.filter((way) => meets(way, jobs));
  const smallest = Math.min(...enough.map(({ amount }) => amount));
  const limit = Math.max(need.most, smallest);
  const within = all.filter(({ amount }) => amount <= limit + NEARLY);
  if (within.length > 0) return within;
  const cut = enough.filter(({ amount }) => amount <= limit + NEARLY);
  const asked = Math.min(Math.max(...cut.map(({ amount }) => amount)), wanted);
  return cut.filter(({ amount }) => amount >= asked - NEARLY);
}

/** All counts of all packs up to where more of one can't help any more. */
function waysOf(packs: readonly Pack[], wanted: number, problem: BasketProblem): Way[] {
  let ways: Way[] = [{ key: '', goods: new Map(), amount: 0, parts: [] }];
  for (const pack of packs) {
    const terms = problem.suppliers.find(({ supplier }) => supplier === pack.supplier);
    const worth = Math.max(terms?.minimumOrder ?? 0, terms?.carriageFreeOver ?? 0);
    const cheapest = Math.min(...pack.offers.map(({ packPrice }) => packPrice));
    const fewest = Math.min(...pack.offers.map(({ fromPacks }) => fromPacks));
    const breaks = Math.max(...pack.offers.map(({ fromPacks }) => fromPacks));
    const enough = Math.max(Math.ceil(wanted / pack.quantity), Math.ceil(worth / cheapest), breaks);
    const counts =
      pack.fixed === null
        ? Array.from({ length: enough + 1 }, (_, count) => count).filter(
            (count) => count === 0 || count >= fewest,
          )
        : [pack.fixed];
    ways = ways.flatMap((way) =>
      counts.map((count) => {
        if (count === 0) return way;
        const price = priceOf(pack, Math.max(count, fewest)) ?? 0;
        const goods = new Map(way.goods);
        goods.set(pack.supplier, (goods.get(pack.supplier) ?? 0) + count * price);
        const amount = count * pack.quantity;
        const key = `${way.key}${wayKey(pack.supplier, pack.quantity, count)}`;
        return {
          key,
          goods,
          amount: way.amount + amount,
          parts: [...way.parts, { lead: pack.lead, amount }],
        };
      }),
    );
  }
  return ways;
}
