import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { spokenDay } from '../../src/core/day.ts';
import { accountIn } from '../../src/core/ledger.ts';
import { goodUntilReason } from '../../src/core/life.ts';
import { moneyText } from '../../src/core/money.ts';
import { spokenNumber, spokenQuantity } from '../../src/core/wording.ts';
import { factsIn } from './helpers/facts.ts';
import { PanePage } from './helpers/pane-page.ts';
import { stockIn, stockInWords } from './helpers/stock-words.ts';
import { sampleSnapshot, TODAY } from './helpers/studio-in-node.ts';

const SNAPSHOT = sampleSnapshot('demo-studio.xlsx');
const CHECK = checkWorkbook(SNAPSHOT, TODAY);
const { ledger } = booksOf(SNAPSHOT);

describe.each([320, 450])('Stock at %i pixels, by keyboard', (width) => {
  test('from the list to a material, to a lot and its movements, and back; all figures are the core’s', async () => {
    const pane = await PanePage.open({ width });
    const { keys, page } = pane;
    await page.getByRole('tab', { name: 'Today' }).waitFor();
    await keys.openSection('Stock');
    expect(await stockIn(pane.page)).toEqual(stockInWords(CHECK));

    await keys.fill('Find or scan', 'wheat starch');
    await page.getByText('2 materials found').waitFor();
    await keys.activate({ role: 'button', name: 'wheat starch paste' });
    const heading = { role: 'heading', name: 'wheat starch paste' } as const;
    await expect.poll(() => keys.isOn(heading)).toBe(true);
    const figures = CHECK.stock.materials.find(({ material }) => material.name === 'wheat starch paste');
    if (figures?.left == null || figures.usable === null)
      throw new Error('The sample has no wheat starch paste');
    const { unit } = figures.material;
    expect(await factsIn(pane)).toMatchObject({
      Left: spokenQuantity(figures.left, unit),
      'Usable today': spokenQuantity(figures.usable, unit),
      Planned: spokenQuantity(figures.reorder.planned, unit),
      'Suggested order': spokenQuantity(figures.reorder.suggestedOrder, unit),
      'First goes off': figures.goodUntil === null ? 'keeps' : spokenDay(figures.goodUntil),
      Worth: `${figures.worth === null ? '' : moneyText(figures.worth, CHECK.settings.currency)} EUR`,
    });

    const lot = CHECK.stock.lots.find((each) => each.lot.name === 'P-027');
    if (lot === undefined) throw new Error('The sample has no lot P-027');
    const reason = goodUntilReason(accountIn(ledger, lot.lot), TODAY);
    await keys.activate({ role: 'button', name: 'P-027' });
    await expect.poll(() => keys.isOn({ role: 'heading', name: 'Lot P-027' })).toBe(true);
    expect(await factsIn(pane)).toMatchObject({
      Left: spokenQuantity(lot.left, lot.lot.record.unit),
      'Good until': `${lot.goodUntil === null ? '' : spokenDay(lot.goodUntil)} ${reason ?? ''}`,
      'Made by': lot.lot.recipe?.name,
    });
    const { postings } = accountIn(ledger, lot.lot);
    expect(postings.length).toBeGreaterThan(1);
    const rows = await pane.shownTable('Movements, the latest first');
    expect(rows.map(([what = '', , left]) => [what.split('\n')[0], left])).toEqual(
      postings.toReversed().map(({ movement, left }) => [spokenDay(movement.date), spokenNumber(left)]),
    );

    await keys.activate({ role: 'button', name: 'Show in the tab' }, { back: true });
    const { place } = lot.lot.record;
    await expect
      .poll(() => pane.ask(({ host }) => host.person('pane').selected()))
      .toEqual({ sheet: place.table, row: place.sheetRow, column: 1 });
    // Escape goes back one thing at a time, to where she came from.
    await keys.press('Escape');
    await expect.poll(() => keys.isOn(heading)).toBe(true);
    await keys.press('Escape');
    await expect.poll(() => keys.isOn({ role: 'button', name: 'wheat starch paste' })).toBe(true);
    expect(await page.getByRole('textbox', { name: 'Find or scan' }).inputValue()).toBe('wheat starch');
    await keys.press('Escape');
    await expect.poll(() => page.getByRole('textbox', { name: 'Find or scan' }).inputValue()).toBe('');
    await pane.close();
  });
});

test('a code that is scanned opens its lot, in the field and outside of it; one that names nothing is told', async () => {
  const pane = await PanePage.open();
  const { keys, page } = pane;
  await page.getByRole('tab', { name: 'Today' }).waitFor();
  await keys.openSection('Stock');
  await keys.fill('Find or scan', 't-008');
  await keys.press('Enter');
  await expect.poll(() => keys.isOn({ role: 'heading', name: 'Lot T-008' })).toBe(true);
  // One thing at a time, as a hand would: the focus moves when the page is there.
  await keys.press('Escape');
  await expect.poll(() => keys.isOn({ role: 'heading', name: 'kozo tissue 5 g' })).toBe(true);
  await keys.press('Escape');
  await page.getByRole('textbox', { name: 'Find or scan' }).waitFor();
  await keys.fill('Find or scan', 'X-999');
  await keys.press('Enter');
  await page.getByText('No lot and no material is called X-999.').waitFor();
  await keys.press('Escape');
  await expect.poll(() => page.getByRole('textbox', { name: 'Find or scan' }).inputValue()).toBe('');
  await keys.openSection('Today');
  // On the row of tabs an L opens the log; the code is meant for Today all the same.
  await scan(pane, 'l-404');
  await page.getByText('l-404 was scanned: no lot and no material is called that.').waitFor();
  await keys.openSection('Today');
  await scan(pane, 'P-027');
  await expect.poll(() => keys.isOn({ role: 'heading', name: 'Lot P-027' })).toBe(true);
  await pane.close();
});

/** How much longer than a scanner a hand needs between two keys, in milliseconds. */
const PAUSE = 100;

/** Sends the keys of a code as fast as a scanner does: all within one turn of the page, to whatever has the focus. */
async function scan({ page }: PanePage, code: string): Promise<void> {
  await page.waitForTimeout(PAUSE);
  await page.evaluate((text) => {
    for (const key of [...text, 'Enter']) {
      document.activeElement?.dispatchEvent(
        new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }),
      );
    }
  }, code);
}
