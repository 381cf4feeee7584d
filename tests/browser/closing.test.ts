import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { closingStock } from '../../src/core/closing-stock.ts';
import { type Day, spokenDay } from '../../src/core/day.ts';
import { disposalsIn } from '../../src/core/disposals.ts';
import { moneyText } from '../../src/core/money.ts';
import { compareText } from '../../src/core/notice.ts';
import { spokenQuantity } from '../../src/core/wording.ts';
import { dayOf } from '../helpers/literal.ts';
import { factsIn } from './helpers/facts.ts';
import { PanePage } from './helpers/pane-page.ts';
import { plain } from './helpers/shown-text.ts';
import { stockIn, stockInWords } from './helpers/stock-words.ts';
import { sampleSnapshot, TODAY } from './helpers/studio-in-node.ts';

const PAST = '2026-06-30';
const SNAPSHOT = sampleSnapshot('demo-studio.xlsx');
const { ledger } = booksOf(SNAPSHOT);
const { currency } = ledger.studio.settings;

/** The list stands in the order of its sections; the lines alone are compared. */
function inOrder(lines: readonly (readonly string[])[]): (readonly string[])[] {
  return lines.toSorted((a, b) => compareText(a.join(' '), b.join(' ')));
}

/** Material, what is left and what that is worth, then the same of each lot, in the words of the list. */
function closingInWords(day: Day): string[][] {
  return closingStock(ledger, day).materials.flatMap(({ material, left, unit, worth, lots }) => [
    [material.name, spokenQuantity(left, unit), worth === null ? 'not known' : moneyText(worth, currency)],
    ...lots.map((each) => [
      each.lot.name,
      spokenQuantity(each.left, each.unit),
      each.worth === null ? 'not known' : moneyText(each.worth, currency),
    ]),
  ]);
}

async function closingInPane({ page }: PanePage): Promise<string[][]> {
  const rows = await page
    .getByRole('table', { name: /^At cost/ })
    .locator('tbody tr')
    .all();
  return Promise.all(
    rows.map(async (row) => {
      const cells = await row.locator('th, td').allInnerTexts();
      return cells.map((cell) => plain(cell.split('\n')[0] ?? ''));
    }),
  );
}

async function chooseDay({ keys, page }: PanePage, day: string): Promise<void> {
  await keys.activate({ role: 'button', name: 'As of another day…' });
  await page.getByLabel('As of', { exact: true }).fill(day);
  await keys.press('Enter');
  await page.getByText(`Figures of ${spokenDay(dayOf(day))}`).waitFor();
}

describe.each([320, 450])('Other days at %i pixels, by keyboard', (width) => {
  test('the list, a material, a lot and the closing stock show the figures of the day that is chosen', async () => {
    const pane = await PanePage.open({ width });
    const { keys, page } = pane;
    const day = dayOf(PAST);
    const past = checkWorkbook(SNAPSHOT, day);
    await page.getByRole('tab', { name: 'Today' }).waitFor();
    await keys.openSection('Stock');
    await chooseDay(pane, PAST);
    const shown = await stockIn(pane.page);
    expect(shown).toEqual(stockInWords(past));
    expect(shown).not.toEqual(stockInWords(checkWorkbook(SNAPSHOT, TODAY)));

    const figures = past.stock.lots.find(
      ({ lot, usable }) => usable && lot.material.name === 'wheat starch paste',
    );
    if (figures === undefined) throw new Error('No paste was usable on that day');
    await keys.activate({ role: 'button', name: 'wheat starch paste' }, { most: 80 });
    await keys.activate({ role: 'button', name: figures.lot.name });
    await page.getByRole('heading', { name: `Lot ${figures.lot.name}` }).waitFor();
    expect(await factsIn(pane)).toMatchObject({
      Left: spokenQuantity(figures.left, figures.lot.record.unit),
      Worth: `${moneyText(figures.worth ?? 0n, currency)} EUR`,
    });
    // Nothing can be posted from them, and it says why.
    const before = (await pane.rows('Movements')).length;
    await keys.activate({ role: 'button', name: 'Set right by a count…' });
    await page.getByText(/nothing can be posted from them. Go back to today first/).waitFor();
    expect(await page.getByRole('textbox').count()).toBe(0);
    expect((await pane.rows('Movements')).length).toBe(before);

    await keys.activate({ role: 'button', name: 'Back to today' }, { back: true });
    await expect.poll(() => page.getByText('Figures of').count()).toBe(0);
    await expect.poll(() => keys.focused()).not.toBe('BODY');
    await pane.close();
  });

  test('the closing stock and what was thrown away are the core’s, and are printed alone, black on white', async () => {
    const pane = await PanePage.open({ width, look: 'dark' });
    const { keys, page } = pane;
    await page.getByRole('tab', { name: 'Today' }).waitFor();
    await keys.openSection('Stock');
    await keys.activate({ role: 'button', name: 'Closing stock…' });
    await expect.poll(() => keys.isOn({ role: 'heading', name: 'Closing stock, 16 Nov 2026' })).toBe(true);
    const { known } = closingStock(ledger, TODAY);
    expect(inOrder(await closingInPane(pane))).toEqual(inOrder(closingInWords(TODAY)));
    expect(plain((await page.locator('tfoot').textContent()) ?? '')).toContain(moneyText(known, currency));
    await page.getByText(/the lower of cost and what it would fetch is for the accountant/).waitFor();
    await chooseDay(pane, PAST);
    expect(inOrder(await closingInPane(pane))).toEqual(inOrder(closingInWords(dayOf(PAST))));

    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('button').filter({ visible: true }).count()).toBe(0);
    expect(await page.getByRole('heading', { name: 'Closing stock, 30 Jun 2026' }).isVisible()).toBe(true);
    const colours = await page.evaluate(() => {
      const { color } = getComputedStyle(document.querySelector('.table strong') ?? document.body);
      return [color, getComputedStyle(document.body).backgroundColor];
    });
    expect(colours).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
    await page.emulateMedia({ media: 'screen' });

    await keys.activate({ role: 'button', name: 'Thrown away…' }, { back: true });
    await page.getByRole('heading', { name: 'Thrown away in 2026' }).waitFor();
    const expected = disposalsIn(ledger, 2026);
    const sums = await page.locator('.disposal tfoot tr').all();
    expect(
      await Promise.all(sums.map(async (row) => (await row.locator('td').allInnerTexts()).map(plain))),
    ).toEqual(
      expected.materials.map(({ quantity, unit, worth }) => [
        spokenQuantity(quantity, unit),
        moneyText(worth, currency),
      ]),
    );
    expect(await factsIn(pane)).toEqual({
      'Waste of jobs': `${moneyText(expected.jobWaste, currency)} EUR`,
      'The studio’s loss': `${moneyText(expected.studioLoss, currency)} EUR`,
    });
    await pane.close();
  });
});
