import type { WorkbookCheck } from '../../../src/actions/check-workbook.ts';
import { moneyText } from '../../../src/core/money.ts';
import { spokenQuantity } from '../../../src/core/wording.ts';
import type { PanePage } from './pane-page.ts';
import { plain, textOf } from './shown-text.ts';

/** What stands in the list of the stock, by material. */
export interface StockRow {
  readonly material: string;
  readonly left: string;
  readonly usable: string;
  readonly worth: string;
}

/** The stock as the core has it, in the words of the list. */
export function stockInWords({ stock, settings }: WorkbookCheck): StockRow[] {
  return stock.materials
    .map(({ material, left, usable, worth }): StockRow => {
      const { name, unit } = material;
      if (left === null || usable === null)
        return { material: name, left: 'not counted', usable: '', worth: '' };
      return {
        material: name,
        left: spokenQuantity(left, unit),
        usable: usable.equals(left) ? '' : spokenQuantity(usable, unit),
        worth: worth === null ? 'not known' : moneyText(worth, settings.currency),
      };
    })
    .toSorted(byName);
}

/** The stock as the pane lists it; its section is open. */
export async function stockInPane({ page }: PanePage): Promise<StockRow[]> {
  const rows = await page.locator('.panel table tbody tr').all();
  const read = await Promise.all(
    rows.map(async (row): Promise<StockRow> => {
      const [left = '', worth = ''] = await row.locator('td').allInnerTexts();
      const [quantity = '', usable = ''] = left.split('\n');
      return {
        material: await textOf(row.getByRole('button')),
        left: plain(quantity),
        usable: plain(usable).replace(/^usable /, ''),
        worth: plain(worth),
      };
    }),
  );
  return read.toSorted(byName);
}

function byName(a: StockRow, b: StockRow): number {
  return a.material < b.material ? -1 : 1;
}
