import { costOfQuantity } from '../core/cost-of-quantity.ts';
import { type Day, spokenDay } from '../core/day.ts';
import { dailyDemand } from '../core/demand.ts';
import { type Exact, exact, quantityNumber, roundQuantity, ZERO } from '../core/exact-number.ts';
import { keyOf } from '../core/identifier.ts';
import { accountIn, accountsOf, type Ledger } from '../core/ledger.ts';
import { goodUntilOn, isUsableOn } from '../core/life.ts';
import { type LotAccount, leftOn, stateOn } from '../core/lot-account.ts';
import { noPath } from '../core/missing-conversions.ts';
import { fromCoins } from '../core/money.ts';
import { dailyStatistics } from '../core/reorder-formula.ts';
import type { MaterialFigures, Stock } from '../core/stock.ts';
import type { Material } from '../core/studio.ts';
import { findUnit, UNIT_NAMES, type Unit } from '../core/unit.ts';
import { unitFor } from '../core/wording.ts';
import { nearest } from './nearest-name.ts';

/** Single figures for a cell of a person's own sheet, from books that are already read. */

/** What the answers come from: a ledger and the stock that it gives on a day. */
export interface CellBooks {
  readonly ledger: Ledger;
  readonly stock: Stock;
}

/** Why there is no figure: the first four lie in what was asked, the others in what the workbook holds. */
export type CellProblem =
  | 'unknown name'
  | 'unknown unit'
  | 'bad quantity'
  | 'no conversion'
  | 'not counted'
  | 'no cost'
  | 'no use'
  | 'keeps'
  | 'not known';

export interface NoFigure {
  readonly error: CellProblem;
  /** One sentence or two for the person at the cell. */
  readonly message: string;
}

export type CellAnswer<Value = number> = { readonly value: Value } | NoFigure;

/** What is left of a material in all its lots, expired and set aside ones too; in its stock unit or the one named. */
export function leftAnswer(books: CellBooks, material: string, unit: string | null): CellAnswer {
  return stockAnswer(books, material, unit, ({ left }) => left, isKept);
}

/** What may be used of a material today; in its stock unit or the one named. */
export function usableAnswer(books: CellBooks, material: string, unit: string | null): CellAnswer {
  return stockAnswer(books, material, unit, ({ usable }) => usable, isUsableOn);
}

/** The last day on which a lot may be used. */
export function goodUntilAnswer({ ledger, stock }: CellBooks, name: string): CellAnswer<Day> {
  const { lotsByKey, materialsByKey, lots } = ledger.studio;
  const lot = lotsByKey.get(keyOf(name));
  if (lot === undefined) {
    const isMaterial = materialsByKey.has(keyOf(name));
    return isMaterial
      ? noFigure('unknown name', `${name} is a material, and each of its lots has its own date: name a lot.`)
      : unknownName('lot', name, 'the stock tables', lots);
  }
  if (lot.doubtful) {
    const message = `A date, a state or the recipe of lot ${lot.name} can't be read, so nothing says until when it is good.`;
    return noFigure('not known', message);
  }
  const day = goodUntilOn(accountIn(ledger, lot), stock.today);
  return day === null
    ? noFigure('keeps', `Lot ${lot.name} keeps: no date and no life says when it goes off.`)
    : { value: day };
}

/**
 * What a quantity of a material costs today, in the currency's main unit, as a quote would cost it: see
 * costOfQuantity. The quantity is in the stock unit or the one named.
 */
export function costAnswer(
  books: CellBooks,
  materialName: string,
  quantity: number,
  unitName: string | null,
): CellAnswer {
  const found = findMaterial(books, materialName);
  if ('error' in found) return found;
  const { material } = found;
  const unit = unitOr(material.unit, unitName);
  if ('error' in unit) return unit;
  if (!(quantity >= 0 && Number.isFinite(quantity))) {
    return noFigure('bad quantity', `A quantity is 0 or more, such as 2.5; ${quantity} stands there.`);
  }
  const asked = roundQuantity(exact(quantity));
  if (asked.compare(0) === 0) return { value: 0 };
  const toCost = { material, quantity: asked, unit, whole: false };
  const { portions } = costOfQuantity(books.ledger, toCost, books.stock.today);
  let total = 0n;
  for (const { amount } of portions) {
    if (amount === null) return noCost(material, unit);
    total += amount;
  }
  return { value: fromCoins(total, books.ledger.studio.settings.currency).valueOf() };
}

/** For how many days what is usable of a material lasts at its mean daily use (see dailyDemand). */
export function coverAnswer(books: CellBooks, materialName: string): CellAnswer {
  const figures = countedFigures(books, materialName);
  if ('error' in figures) return figures;
  const { material, usable } = figures;
  const days = dailyDemand(books.ledger, material, books.stock.today);
  const { mean } = dailyStatistics(days);
  if (mean <= 0) {
    const since = spokenDay((books.stock.today - days.length + 1) as Day);
    const message = `Nothing was used of ${material.name} since ${since}, so there is no daily use to divide by.`;
    return noFigure('no use', message);
  }
  return { value: usable.valueOf() / mean };
}

/** The stock at which a material is ordered again; in its stock unit or the one named. */
export function orderPointAnswer(books: CellBooks, material: string, unit: string | null): CellAnswer {
  const figures = countedFigures(books, material);
  return 'error' in figures ? figures : inUnit(figures.material, figures.reorder.reorderPoint, unit);
}

type Counted = MaterialFigures & { readonly left: Exact; readonly usable: Exact };

/**
 * What lots hold of a material. In its stock unit that is the material's own figure; in another one each lot is
 * converted by its own facts, as sheets of one material may differ in size.
 * @param figure the material's own
 * @param counts the lots that make it up on a day
 */
function stockAnswer(
  books: CellBooks,
  name: string,
  unitName: string | null,
  figure: (figures: Counted) => Exact,
  counts: (account: LotAccount, today: Day) => boolean,
): CellAnswer {
  const figures = countedFigures(books, name);
  if ('error' in figures) return figures;
  const { material } = figures;
  const unit = unitOr(material.unit, unitName);
  if ('error' in unit) return unit;
  if (unit.name === material.unit.name) return { value: quantityNumber(figure(figures)) };
  const { today } = books.stock;
  let total = ZERO;
  for (const account of accountsOf(books.ledger, material).filter((each) => counts(each, today))) {
    const { converter, record } = account.lot;
    const factor = converter.factor(record.unit, unit);
    if (factor === null) return noWay(material, record.unit, unit);
    total = total.add(leftOn(account, today).mul(factor));
  }
  return material.converter.factor(material.unit, unit) === null && total.equals(ZERO)
    ? noWay(material, material.unit, unit)
    : { value: quantityNumber(total) };
}

/** Whether a lot belongs into its material's total. */
function isKept(account: LotAccount, today: Day): boolean {
  return account.lot.record.received <= today && stateOn(account, today) !== 'Discarded';
}

function findMaterial({ ledger }: CellBooks, name: string): { readonly material: Material } | NoFigure {
  const { materialsByKey, materials } = ledger.studio;
  const material = materialsByKey.get(keyOf(name));
  return material === undefined ? unknownName('material', name, 'Materials', materials) : { material };
}

/** The figures of a material that is counted, all of whose lots could be added up. */
function countedFigures(books: CellBooks, name: string): Counted | NoFigure {
  const found = findMaterial(books, name);
  if ('error' in found) return found;
  const { material } = found;
  const figures = books.stock.materials.find((each) => each.material === material);
  if (figures === undefined) throw new Error(`the stock lacks the material ${material.name}`);
  const { left, usable } = figures;
  if (left === null || usable === null) {
    return noFigure('not counted', `${material.name} is not counted (see Counted in Materials).`);
  }
  const missed = accountsOf(books.ledger, material).find((account) => isMissed(account, books.stock.today));
  if (missed !== undefined) {
    const consequence = `lot ${missed.lot.name} can't be added up with the others`;
    return noFigure('no conversion', noPath(material, missed.lot.record.unit, material.unit, consequence));
  }
  return { ...figures, left, usable };
}

/** Whether a lot belongs into its material's total, but has a unit that doesn't lead to the stock unit. */
function isMissed(account: LotAccount, today: Day): boolean {
  const { converter, record, material } = account.lot;
  return (
    converter.factor(record.unit, material.unit) === null &&
    stateOn(account, today) !== 'Discarded' &&
    leftOn(account, today).compare(0) !== 0
  );
}

function unitOr(usual: Unit, name: string | null): Unit | NoFigure {
  if (name === null) return usual;
  return (
    findUnit(name) ??
    noFigure('unknown unit', `${name} is no unit that is known here; these are: ${UNIT_NAMES.join(', ')}.`)
  );
}

/** A quantity in the stock unit, as a number of the unit that a person names. */
function inUnit(material: Material, quantity: Exact, unitName: string | null): CellAnswer {
  const unit = unitOr(material.unit, unitName);
  if ('error' in unit) return unit;
  const factor = material.converter.factor(material.unit, unit);
  return factor === null
    ? noWay(material, material.unit, unit)
    : { value: quantityNumber(quantity.mul(factor)) };
}

function noCost(material: Material, unit: Unit): NoFigure {
  return material.converter.factor(unit, material.unit) === null
    ? noWay(material, unit, material.unit)
    : noFigure('no cost', `No lot and no offer says what all of that ${material.name} costs.`);
}

/** The unit that a person names doesn't lead to the one that is needed, or the other way. */
function noWay(material: Material, from: Unit, to: Unit): NoFigure {
  const message =
    `Nothing says how many ${unitFor('', to)} of ${material.name} one ${from.name} is: name another unit, or give in ` +
    'Materials the size of the sheet, the grammage, the density or the uses that link them.';
  return noFigure('no conversion', message);
}

function unknownName(
  what: string,
  name: string,
  where: string,
  known: readonly { readonly name: string }[],
): NoFigure {
  if (name.trim() === '') return noFigure('unknown name', `No ${what} is named.`);
  const near = nearest(
    name,
    known.map((each) => each.name),
  );
  const hint = near.length === 0 ? '' : ` Did you mean ${near.join(' or ')}?`;
  return noFigure('unknown name', `There is no ${what} called ${name} in ${where}.${hint}`);
}

function noFigure(error: CellProblem, message: string): NoFigure {
  return { error, message };
}
