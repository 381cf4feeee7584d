import { checkWorkbook, type WorkbookCheck } from '../../../src/actions/check-workbook.ts';
import { quantityNumber } from '../../../src/core/exact-number.ts';
import { today } from '../../helpers/opened-session.ts';
import { TODAY } from '../../helpers/studio.ts';
import { xlsxOf } from '../../helpers/xlsx.ts';
import { SHELVES } from '../../pane-stock/helpers.ts';
import { type PaneOptions, PanePage } from './pane-page.ts';

/** The shelves of the small studio in the pane, on their day. */
export async function openShelves(options: PaneOptions = {}): Promise<PanePage> {
  const pane = await PanePage.open({ workbook: xlsxOf(SHELVES), today: TODAY, ...options });
  await pane.page.getByRole('tab', { name: 'Today' }).waitFor();
  return pane;
}

/** What the core says of the workbook as it is now, on the day of the shelves, worked out here. */
export async function checkNow(pane: PanePage): Promise<WorkbookCheck> {
  return checkWorkbook(await pane.snapshot(), today);
}

/** What the core has left of a lot now. */
export async function leftNow(pane: PanePage, lot: string): Promise<number> {
  const found = (await checkNow(pane)).stock.lots.find((each) => each.lot.name === lot);
  if (found === undefined) throw new Error(`There is no lot ${lot}`);
  return quantityNumber(found.left);
}

/** Opens a lot from the field of Stock. */
export async function openLotPage({ keys, page }: PanePage, lot: string): Promise<void> {
  await keys.openSection('Stock');
  await page.getByRole('textbox', { name: 'Find or scan' }).waitFor();
  await keys.fill('Find or scan', lot);
  await keys.press('Enter');
  await page.getByRole('heading', { name: `Lot ${lot}` }).waitFor();
}
