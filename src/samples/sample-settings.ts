import { SERVICE_MEASURES } from '../core/planning/plan-problem.ts';
import { COST_BASES } from '../core/settings.ts';
import { SETTING_NAMES, TABLES_VERSION } from '../workbook/read-settings.ts';
import type { settingsTable } from '../workbook/tables-trade.ts';
import type { SampleRow } from './sample-table.ts';

type SettingName = (typeof SETTING_NAMES)[number];
type SettingRow = SampleRow<typeof settingsTable>;

/** What a new workbook holds; amounts of money and percentages are the studio's own to say. */
const USUAL: Readonly<Partial<Record<SettingName, string | number>>> = {
  'tables version': TABLES_VERSION,
  currency: 'EUR',
  'tax %': 0,
  'markup %': 0,
  'smallest consumables charge': 0,
  'warn days': 14,
  'sds years': 3,
  'offer years': 1,
  'quote valid days': 60,
  'cost basis': COST_BASES[0],
  'review days': 7,
  'order cover days': 30,
  'service level means': SERVICE_MEASURES[0],
  'holding % per year': 20,
};

/** All settings that Jarleaf reads, with the usual values or others in their place; one without a value is blank. */
export function settingRows(
  others: Readonly<Partial<Record<SettingName, string | number>>> = {},
): SettingRow[] {
  return SETTING_NAMES.map((setting) => ({ setting, value: others[setting] ?? USUAL[setting] }));
}
