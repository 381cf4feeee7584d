import type { BasketProblem } from './basket-problem.ts';
import type { IntegerProgramme, ProgrammeConstraint, ProgrammeVariable } from './integer-programme.ts';
import { type OfferRow, SAME, slackOf, supplierTerms } from './offer-row.ts';
import { type SettledNeed, settleNeed } from './settle-need.ts';

/** A basket to be worked out: what is asked for, and the variables that say what is bought. */
export interface BasketModel {
  readonly needs: readonly SettledNeed[];
  readonly rows: readonly ModelRow[];
  readonly suppliers: readonly ModelSupplier[];
}

export interface ModelRow {
  readonly row: OfferRow;
  readonly need: SettledNeed;
  /** Whole: how many packs. */
  readonly packs: string;
  /** 0 or 1: whether any are bought; null where that is set by hand. */
  readonly used: string | null;
  readonly least: number;
  readonly most: number;
}

export interface ModelSupplier {
  /** See keyOf. */
  readonly key: string;
  readonly minimumOrder: number;
  readonly carriage: number;
  readonly carriageFreeOver: number | null;
  /** 0 or 1: whether anything is ordered there. */
  readonly ordered: string;
  /** 0 or 1: whether carriage is saved; null where it can't be. */
  readonly free: string | null;
  readonly rows: readonly ModelRow[];
}

type Term = ProgrammeConstraint['terms'][number];

/** What a basket is made of, each need settled and each row that may be bought with the most packs that make sense. */
export function basketModel(problem: BasketProblem): BasketModel {
  const needs = problem.needs.map((need) => settleNeed(problem, need));
  const found = needs.flatMap((need) => need.rows.map((row) => ({ need, row })));
  const rows = found.flatMap(({ need, row }, index) => {
    const most = mostPacks(problem, need, row);
    if (row.byHand === null && most < row.least) return [];
    const used = row.byHand === null ? `used_${index}` : null;
    return [{ row, need, packs: `packs_${index}`, used, least: row.byHand ?? 0, most: row.byHand ?? most }];
  });
  const keys = [...new Set(rows.map(({ row }) => row.supplier))];
  const suppliers = keys.map((key, index) => {
    const { minimumOrder, carriage, carriageFreeOver } = supplierTerms(problem, key);
    return {
      key,
      minimumOrder,
      carriage,
      carriageFreeOver,
      ordered: `ordered_${index}`,
      free: carriage > 0 && carriageFreeOver !== null ? `free_${index}` : null,
      rows: rows.filter(({ row }) => row.supplier === key),
    };
  });
  return { needs, rows, suppliers };
}

/**
 * More packs of a row than this never pay: it covers all that is asked for, reaches the supplier's smallest order and
 * saves the carriage by itself, and stays within what can be used.
 */
function mostPacks(problem: BasketProblem, { asked, limit }: SettledNeed, row: OfferRow): number {
  const { minimumOrder, carriage, carriageFreeOver } = supplierTerms(problem, row.supplier);
  const worth = Math.max(minimumOrder, carriage > 0 ? (carriageFreeOver ?? 0) : 0);
  const { packQuantity } = row.offer;
  return Math.min(
    row.most,
    Math.max(
      row.least,
      Math.ceil(asked / packQuantity - SAME),
      row.price > 0 ? Math.ceil(worth / row.price) : 0,
    ),
    limit === null ? Infinity : Math.floor((limit + slackOf(limit)) / packQuantity),
  );
}

/** The cheapest basket as an integer programme: whole packs, price breaks, smallest orders, carriage and its limits. */
export function cashProgramme(model: BasketModel): IntegerProgramme {
  return { variables: variablesOf(model, cashCosts(model)), constraints: constraintsOf(model) };
}

/** What goods and carriage cost, by variable; coins. */
export function cashCosts({ rows, suppliers }: BasketModel): Map<string, number> {
  return new Map([
    ...rows.map(({ packs, row }): [string, number] => [packs, row.price]),
    ...suppliers.flatMap(({ ordered, free, carriage }): [string, number][] => [
      [ordered, carriage],
      ...(free === null ? [] : [[free, -carriage] satisfies [string, number]]),
    ]),
  ]);
}

/** The variables of a model, each with its cost; 0 where none is given. */
export function variablesOf(
  { rows, suppliers }: BasketModel,
  costs: ReadonlyMap<string, number>,
): ProgrammeVariable[] {
  const whole = (name: string, least: number, most: number): ProgrammeVariable => ({
    name,
    cost: costs.get(name) ?? 0,
    whole: true,
    least,
    most,
  });
  return [
    ...rows.flatMap(({ packs, used, least, most }) => [
      whole(packs, least, most),
      ...(used === null ? [] : [whole(used, 0, 1)]),
    ]),
    ...suppliers.flatMap(({ ordered, free, rows: sold }) => [
      whole(ordered, sold.some(({ used }) => used === null) ? 1 : 0, 1),
      ...(free === null ? [] : [whole(free, 0, 1)]),
    ]),
  ];
}

/** What every basket keeps to. */
function constraintsOf({ needs, rows, suppliers }: BasketModel): ProgrammeConstraint[] {
  return [
    ...needs.flatMap((need) => quantityConstraints(need, rows)),
    ...rowConstraints(rows),
    ...suppliers.flatMap((supplier) => [...smallestOrder(supplier), ...supplierConstraints(supplier)]),
  ];
}

/** The constraints of rows: packs only of rows that are used, at most one price for a pack. */
export function rowConstraints(rows: readonly ModelRow[]): ProgrammeConstraint[] {
  return [...rows.flatMap(countConstraints), ...priceBreakConstraints(rows)];
}

/** What must be here by when (>=), and no more than can be used (<=); counted in the smallest pack. */
export function quantityConstraints(need: SettledNeed, all: readonly ModelRow[]): ProgrammeConstraint[] {
  const rows = all.filter((each) => each.need === need);
  const smallest = Math.min(...rows.map(({ row }) => row.offer.packQuantity));
  const factors = new Map(
    rows.map(({ packs, row }) => [packs, nearWhole(row.offer.packQuantity / smallest)]),
  );
  // Where all packs are multiples of the smallest, so is their sum: then the bound may be whole too.
  const allWhole = [...factors.values()].every(Number.isInteger);
  const termsBy = (day: number): Term[] =>
    rows
      .filter(({ row }) => row.arrives <= day)
      .map(({ packs }) => ({ variable: packs, factor: factors.get(packs) ?? 0 }));
  const covers = need.covers.map(({ day, quantity }): ProgrammeConstraint => {
    const bound = (quantity - slackOf(quantity)) / smallest;
    return { terms: termsBy(day), relation: '>=', bound: allWhole ? Math.ceil(bound) : bound };
  });
  if (need.limit === null || rows.length === 0) return covers;
  const bound = (need.limit + slackOf(need.limit)) / smallest;
  return [
    ...covers,
    { terms: termsBy(Infinity), relation: '<=', bound: allWhole ? Math.floor(bound) : bound },
  ];
}

function nearWhole(value: number): number {
  return Math.abs(value - Math.round(value)) <= slackOf(value) ? Math.round(value) : value;
}

/** A row is used or not; if it is, From packs and the most hold. */
function countConstraints({ row, packs, used, most }: ModelRow): ProgrammeConstraint[] {
  if (used === null) return [];
  const count = { variable: packs, factor: 1 };
  return [
    { terms: [count, { variable: used, factor: -row.least }], relation: '>=', bound: 0 },
    { terms: [count, { variable: used, factor: -most }], relation: '<=', bound: 0 },
  ];
}

/** Of the rows of one pack at most one is used: its price is that of all packs. */
function priceBreakConstraints(rows: readonly ModelRow[]): ProgrammeConstraint[] {
  const packs = new Map<string, Term[]>();
  for (const { row, need, used } of rows) {
    if (used === null) continue;
    const key = `${need.need.material}\n${row.pack}`;
    packs.set(key, [...(packs.get(key) ?? []), { variable: used, factor: 1 }]);
  }
  return [...packs.values()]
    .filter((terms) => terms.length > 1)
    .map((terms) => ({ terms, relation: '<=', bound: 1 }));
}

/** No order below the supplier's smallest; none where there is no such limit. */
export function smallestOrder({ ordered, rows, minimumOrder }: ModelSupplier): ProgrammeConstraint[] {
  const terms = [...goodsOf(rows), { variable: ordered, factor: -minimumOrder }];
  return minimumOrder > 0 ? [{ terms, relation: '>=', bound: 0 }] : [];
}

/** Nothing is bought without an order; carriage is saved only from its limit on. */
export function supplierConstraints(supplier: ModelSupplier): ProgrammeConstraint[] {
  const { ordered, free, rows, carriageFreeOver } = supplier;
  const onlyWith = (variable: string): ProgrammeConstraint => ({
    terms: [
      { variable, factor: 1 },
      { variable: ordered, factor: -1 },
    ],
    relation: '<=',
    bound: 0,
  });
  const used = rows.flatMap((row) => (row.used === null ? [] : [onlyWith(row.used)]));
  if (free === null || carriageFreeOver === null) return used;
  const terms = [...goodsOf(rows), { variable: free, factor: -carriageFreeOver }];
  return [...used, { terms, relation: '>=', bound: 0 }, onlyWith(free)];
}

function goodsOf(rows: readonly ModelRow[]): Term[] {
  return rows.map(({ packs, row }) => ({ variable: packs, factor: row.price }));
}
