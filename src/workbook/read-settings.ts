import type * as z from 'zod';
import { exact, ZERO } from '../core/exact-number.ts';
import { keyOf } from '../core/identifier.ts';
import { currencyOf } from '../core/money.ts';
import { type Notice, notice } from '../core/notice.ts';
import { SERVICE_MEASURES } from '../core/planning/plan-problem.ts';
import { COST_BASES, type Settings } from '../core/settings.ts';
import {
  type CellSchema,
  isBlank,
  number,
  type PreparedCell,
  shown,
  text,
  wholeNumber,
  wholeNumberTo,
  word,
} from './cell.ts';
import { addressOf, type LocatedTable } from './located-table.ts';
import { prepare } from './read-table.ts';

/** The version of the tables' layout that this program writes. */
export const TABLES_VERSION = 2;

/** The settings by name, each with what may stand in Value. */
const SETTING_VALUES = {
  'tables version': wholeNumber,
  currency: text,
  'currency decimals': wholeNumberTo(6),
  'tax %': number('not negative'),
  'markup %': number('not negative'),
  'bench rate per hour': number('not negative'),
  'smallest consumables charge': number('not negative'),
  'warn days': wholeNumber,
  'sds years': wholeNumberTo(1000),
  'offer years': wholeNumberTo(1000),
  'quote valid days': wholeNumber,
  'cost basis': word(COST_BASES),
  'review days': wholeNumber,
  'order cover days': wholeNumber,
  'service level means': word(SERVICE_MEASURES),
  'holding % per year': number('not negative'),
} satisfies Record<string, CellSchema<unknown>>;

type SettingName = keyof typeof SETTING_VALUES;
type SettingValues = { [N in SettingName]?: z.output<(typeof SETTING_VALUES)[N]> };

/** The names of the settings that the program reads, as they stand in the table. */
export const SETTING_NAMES = Object.keys(SETTING_VALUES) as readonly SettingName[];

const NO_CURRENCY = '';

/**
 * Reads the Settings table. A name that the program doesn't know is the user's own and left alone; of a name that
 * stands twice the first row counts; a value that can't be read is noticed and the usual one stands in.
 */
export function readSettings(table: LocatedTable | null): {
  readonly settings: Settings;
  readonly notices: readonly Notice[];
} {
  const values: SettingValues = {};
  const notices: Notice[] = [];
  const seen = new Set<string>();
  const names = table?.columns.get('Setting')?.column.values ?? [];
  names.forEach((name, row) => {
    if (table === null) return;
    const place = { table: table.snapshot.name, row, sheetRow: table.snapshot.firstRow + row };
    const at = { place, unreadable: new Set<string>() };
    const value = valueIn(table, row);
    const isNameless = isBlank(name) ? !isBlank(value) : typeof name === 'object';
    if (isNameless) {
      const message = `${addressOf(table, row, 'Setting')} (Setting) holds ${shown(name ?? null)}: the name of a setting is right.`;
      notices.push(notice('unreadable', null, at, 'Setting', message));
      return;
    }
    if (typeof name !== 'string') return;
    const known = SETTING_NAMES.find((each) => each === keyOf(name).replace(/\s+/g, ' '));
    if (known === undefined) return;
    const where = addressOf(table, row, 'Value');
    if (seen.has(known)) {
      const message = `Setting ${known} stands in two rows; the first counts: remove this one.`;
      notices.push(notice('duplicate-id', known, at, 'Setting', message));
      return;
    }
    seen.add(known);
    const read = SETTING_VALUES[known].safeParse(value);
    if (read.success) {
      if (read.data !== null) Object.assign(values, { [known]: read.data });
      return;
    }
    const right = read.error.issues[0]?.message ?? '';
    const message = `${where} (${known}) holds ${shown(value)}: ${right}. Until then the usual value is taken.`;
    notices.push(notice('unreadable', known, at, 'Value', message));
  });
  return { settings: withUsualValues(values), notices };
}

function valueIn(table: LocatedTable, row: number): PreparedCell {
  const column = table.columns.get('Value')?.column;
  return column === undefined ? null : prepare(column, row, 'number', table.dateSystem);
}

function withUsualValues(values: SettingValues): Settings {
  return {
    tablesVersion: values['tables version'] ?? null,
    currency: currencyOf(values.currency ?? NO_CURRENCY, values['currency decimals'] ?? null),
    tax: values['tax %'] ?? ZERO,
    markup: values['markup %'] ?? ZERO,
    benchRatePerHour: values['bench rate per hour'] ?? null,
    smallestConsumablesCharge: values['smallest consumables charge'] ?? ZERO,
    warnDays: values['warn days'] ?? 14,
    sdsYears: values['sds years'] ?? 3,
    offerYears: values['offer years'] ?? 1,
    quoteValidDays: values['quote valid days'] ?? null,
    costBasis: values['cost basis'] ?? 'lots',
    reviewDays: values['review days'] ?? 7,
    orderCoverDays: values['order cover days'] ?? 30,
    serviceMeans: values['service level means'] ?? 'chance of no shortage',
    // Common practice, no source: money tied up, room, and what spoils.
    holdingPercent: values['holding % per year'] ?? exact(20),
  };
}
