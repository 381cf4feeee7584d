import { check, keepBooks } from '../../../src/core/check.ts';
import { type Drawing, drawAll } from '../../../src/core/draw.ts';
import { exact, ZERO } from '../../../src/core/exact-number.ts';
import { type IdentifierMaker, keyOf } from '../../../src/core/identifier.ts';
import { accountIn, type Ledger } from '../../../src/core/ledger.ts';
import type { LotAccount } from '../../../src/core/lot-account.ts';
import { currencyOf, moneyText } from '../../../src/core/money.ts';
import type { Notice, NoticeCode } from '../../../src/core/notice.ts';
import type { Records } from '../../../src/core/records.ts';
import type { Settings } from '../../../src/core/settings.ts';
import { type MaterialFigures, stockOn } from '../../../src/core/stock.ts';
import type { Entry, Material } from '../../../src/core/studio.ts';
import { on, qty } from './stock-records.ts';

export const EUR = currencyOf('EUR', null);

const SETTINGS: Settings = {
  tablesVersion: null,
  currency: EUR,
  tax: ZERO,
  markup: ZERO,
  benchRatePerHour: null,
  smallestConsumablesCharge: ZERO,
  warnDays: 14,
  sdsYears: 3,
  offerYears: 1,
  quoteValidDays: null,
  costBasis: 'lots',
  reviewDays: 7,
  orderCoverDays: 30,
  serviceMeans: 'chance of no shortage',
  holdingPercent: exact(20),
};

const NOTHING: Records = {
  materials: [],
  lots: [],
  movements: [],
  entries: [],
  treatments: [],
  usageRates: [],
  recipes: [],
  recipeParts: [],
  jobs: [],
  items: [],
  plan: [],
  removed: [],
  suppliers: [],
  offers: [],
  orders: [],
  orderLines: [],
  quotes: [],
  quoteLines: [],
  places: [],
  offcuts: [],
  counts: [],
};

export function recordsOf(some: Partial<Records>): Records {
  return { ...NOTHING, ...some };
}

export function settingsOf(some: Partial<Settings>): Settings {
  return { ...SETTINGS, ...some };
}

/** The ledger that some records make, with the usual settings where a test says nothing of them. */
export function ledgerOf(some: Partial<Records>, settings: Partial<Settings> = {}): Ledger {
  return keepBooks(recordsOf(some), settingsOf(settings), {}).ledger;
}

/** All notices on a day, also those about the records themselves. */
export function noticesOn(
  day: string,
  some: Partial<Records>,
  settings: Partial<Settings> = {},
): readonly Notice[] {
  const { ledger, notices } = keepBooks(recordsOf(some), settingsOf(settings), {});
  return check(ledger, on(day), notices).notices;
}

/** The notices as `code subject`, most pressing first. */
export function brief(notices: readonly Notice[]): string[] {
  return notices.map(({ code, subject }) => `${code} ${subject}`);
}

export function onlyOf(notices: readonly Notice[], code: NoticeCode): Notice[] {
  return notices.filter((notice) => notice.code === code);
}

export function account(ledger: Ledger, name: string): LotAccount {
  const lot = ledger.studio.lotsByKey.get(keyOf(name));
  if (lot === undefined) throw new Error(`no lot ${name}`);
  return accountIn(ledger, lot);
}

export function materialNamed(ledger: Ledger, name: string): Material {
  const material = ledger.studio.materialsByKey.get(keyOf(name));
  if (material === undefined) throw new Error(`no material ${name}`);
  return material;
}

export function entryNamed(ledger: Ledger, name: string): Entry {
  const entry = ledger.studio.entries.find((each) => each.key === keyOf(name));
  if (entry === undefined) throw new Error(`no entry ${name}`);
  return entry;
}

export function figuresOf(ledger: Ledger, name: string, day: string): MaterialFigures {
  const material = materialNamed(ledger, name);
  const figures = stockOn(ledger, on(day)).materials.find((each) => each.material === material);
  if (figures === undefined) throw new Error(`no figures for ${name}`);
  return figures;
}

/** Numbers identifiers in turn: prefix and a count, padded so that they sort as they were given. */
export function numbered(prefix = ''): IdentifierMaker {
  let count = 0;
  return (letter) => {
    count += 1;
    return `${letter}${prefix}n${String(count).padStart(5, '0')}`;
  };
}

export function draw(ledger: Ledger, day: string, prefix = ''): Drawing {
  return drawAll(ledger, on(day), numbered(prefix));
}

/** What a drawing took, as `entry lot quantity unit`, and what it lacks, as `entry - material quantity unit`. */
export function taken(drawing: Drawing): string[] {
  return [
    ...drawing.movements.map(
      ({ entry, lot, quantity, unit }) => `${entry ?? ''} ${lot.name} ${quantity.toString()} ${unit.name}`,
    ),
    ...drawing.shortfalls.map(
      ({ entry, material, missing, unit }) =>
        `${entry.name} - ${material.name} ${missing.toString()} ${unit.name}`,
    ),
  ];
}

/** Money as text in euro, or null. */
export function euro(coins: bigint | null): string | null {
  return coins === null ? null : moneyText(coins, EUR);
}

export { on, qty };
