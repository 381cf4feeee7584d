import type { Page } from 'playwright-core';
import type { WorkbookCheck } from '../../../src/actions/check-workbook.ts';
import { moneyText } from '../../../src/core/money.ts';
import { spokenQuantity } from '../../../src/core/wording.ts';
import { plain } from './shown-text.ts';

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

/** The stock as the pane lists it; its section is open. In one look, as the list may be put anew at any moment. */
export async function stockIn(page: Pick<Page, 'locator'>): Promise<StockRow[]> {
  const rows = await page.locator('.panel table tbody tr').evaluateAll((lines) =>
    lines.map((line) => ({
      material: line.querySelector('button')?.textContent ?? '',
      cells: [...line.querySelectorAll('td')].map((cell) =>
        [...cell.children].map(({ textContent }) => textContent),
      ),
    })),
  );
  return rows
    .map(({ material, cells: [[left = '', usable = ''] = [], [worth = ''] = []] }) => ({
      material: plain(material),
      left: plain(left),
      usable: plain(usable).replace(/^usable /, ''),
      worth: plain(worth),
    }))
    .toSorted(byName);
}

function byName(a: StockRow, b: StockRow): number {
  return a.material < b.material ? -1 : 1;
}
