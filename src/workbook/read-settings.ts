import { z } from 'zod';
import { type Exact, exact, ZERO } from '../core/exact-number.ts';
import { keyOf } from '../core/identifier.ts';
import { currencyOf } from '../core/money.ts';
import { type Notice, notice } from '../core/notice.ts';
import { COST_BASES, type Settings } from '../core/settings.ts';
import { type CellSchema, isBlank, number, type PreparedCell, shown, text, wholeNumber, word } from './cell.ts';
import { addressOf, type LocatedTable } from './located-table.ts';

/** The version of the tables' layout that this program writes. */
export const TABLES_VERSION = 1;

/** The settings by name, each with what may stand in Value. */
const SETTING_VALUES = {
  'tables version': wholeNumber,
  currency: text,
  'currency decimals': wholeNumber.pipe(z.number().max(6, 'a whole number from 0 to 6 is right').nullable()),
  'tax %': number('not negative'),
  'markup %': number('not negative'),
  'bench rate per hour': number('not negative'),
  'smallest consumables charge': number('not negative'),
  'warn days': wholeNumber,
  'sds years': wholeNumber,
  'offer years': wholeNumber,
  'quote valid days': wholeNumber,
  'cost basis': word(COST_BASES),
  'review days': wholeNumber,
  'order cover days': wholeNumber,
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
    if (table === null || typeof name !== 'string') return;
    const known = SETTING_NAMES.find((each) => each === keyOf(name).replace(/\s+/g, ' '));
    if (known === undefined) return;
    const place = { table: table.snapshot.name, row, sheetRow: table.snapshot.firstRow + row };
    const at = { place, unreadable: new Set<string>() };
    const where = addressOf(table, row, 'Value');
    if (seen.has(known)) {
      const message = `Setting ${known} stands in two rows; the first counts: remove this one.`;
      notices.push(notice('duplicate-id', known, at, 'Setting', message));
      return;
    }
    seen.add(known);
    const value = valueOf(table, row);
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

function valueOf(table: LocatedTable, row: number): PreparedCell {
  const column = table.columns.get('Value')?.column;
  const value = column?.values[row] ?? null;
  if (column === undefined || isBlank(value)) return null;
  return typeof value === 'number' && column.look(row) === 'percent' ? exact(value).mul(100).valueOf() : value;
}

function withUsualValues(values: SettingValues): Settings {
  const amount = (value: Exact | null | undefined): Exact => value ?? ZERO;
  return {
    tablesVersion: values['tables version'] ?? null,
    currency: currencyOf(values.currency ?? NO_CURRENCY, values['currency decimals'] ?? null),
    tax: amount(values['tax %']),
    markup: amount(values['markup %']),
    benchRatePerHour: values['bench rate per hour'] ?? null,
    smallestConsumablesCharge: amount(values['smallest consumables charge']),
    warnDays: values['warn days'] ?? 14,
    sdsYears: values['sds years'] ?? 3,
    offerYears: values['offer years'] ?? 1,
    quoteValidDays: values['quote valid days'] ?? null,
    costBasis: values['cost basis'] ?? 'lots',
    reviewDays: values['review days'] ?? 7,
    orderCoverDays: values['order cover days'] ?? 30,
  };
}
