import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { stocktakeList } from '../../src/core/stocktake.ts';
import { differencesOf } from '../../src/core/stocktake-differences.ts';
import { differenceWords } from '../../src/pane/stocktake/count-words.ts';
import { today } from '../helpers/opened-session.ts';
import { versionOne } from '../helpers/version-one.ts';
import { PanePage } from './helpers/pane-page.ts';
import { leftNow, openShelves } from './helpers/shelves-page.ts';
import { plain } from './helpers/shown-text.ts';
import { sampleBytes } from './helpers/studio-in-node.ts';

const field = (lot: string) => ({ role: 'textbox', name: `What is left of ${lot}` }) as const;

describe.each([320, 450])('A stocktake at %i pixels, by keyboard', (width) => {
  test('goes along the places, is kept, gone on with, posted and taken back', async () => {
    const pane = await openShelves({ width });
    const { keys, page } = pane;
    await keys.openSection('Stock');
    await keys.activate({ role: 'button', name: 'Count…' });
    await page.getByLabel('Type or scan a lot').waitFor();
    const list = stocktakeList(booksOf(await pane.snapshot()).ledger, today, null);
    expect(await page.locator('.count-group .subheading').allTextContents()).toEqual(
      list.places.map(({ place }) => place ?? 'No place is known'),
    );
    expect(await page.locator('.count-lot').allTextContents()).toEqual(
      list.places.flatMap(({ lots }) => lots.map(({ lot }) => lot.name)),
    );

    await keys.fill('Type or scan a lot', 'r-2');
    await keys.press('Enter');
    await expect.poll(() => keys.isOn(field('R-2'))).toBe(true);
    // What is expected stays hidden until she has counted.
    expect(await page.locator('.panel').textContent()).not.toContain('3.4');
    await keys.type('three');
    await keys.press('Enter');
    await page.getByText(/^three can’t be read as a number/).waitFor();
    await keys.type('3');
    await keys.press('Enter');
    // The next lot of the place is weighed, as it has a tare.
    await expect.poll(() => keys.isOn({ role: 'textbox', name: 'Weight of G-1 with the jar' })).toBe(true);
    await pane.says('Counted: lot R-2, 3 sheets, 0.4 sheets less than expected, worth 0.80 EUR.');
    await keys.type('262.4');
    await keys.press('Enter');
    await pane.says('Counted: lot G-1, 150 g, as expected.');
    await expect.poll(() => keys.isOn(field('P-1'))).toBe(true);
    // A code that is scanned into the field of another lot goes to its own.
    await keys.type('t-2');
    await keys.press('Enter');
    await expect.poll(() => keys.isOn(field('T-2'))).toBe(true);
    await keys.type('11');
    await keys.press('Enter');
    await pane.says(/^Counted: lot T-2, 11 sheets, 1 sheet more than expected/);
    expect(await leftNow(pane, 'R-2')).toBe(3.4);

    await keys.openSection('Today');
    await keys.openSection('Stock');
    await keys.activate({ role: 'button', name: 'Go on counting: 2026-04-03' });
    await page.getByText('Stocktake 2026-04-03').waitFor();
    const { ledger } = booksOf(await pane.snapshot());
    const { differences } = differencesOf(ledger, today, '2026-04-03');
    const shown = await page.locator('.count-row > p').allInnerTexts();
    expect(shown.map(plain).toSorted()).toEqual(
      differences.map((each) => differenceWords(each, ledger.studio.settings.currency)).toSorted(),
    );
    await keys.activate({ role: 'button', name: 'Post the differences' });
    await pane.says(/^Posted: stocktake 2026-04-03, 2 lots, a gain of/);
    expect([await leftNow(pane, 'R-2'), await leftNow(pane, 'G-1'), await leftNow(pane, 'T-2')]).toEqual([
      3, 150, 11,
    ]);
    const marks = (await pane.rows('Counts')).map((row) => [row['Lot'], row['Posting'] === 'no difference']);
    expect(marks).toEqual([
      ['R-2', false],
      ['G-1', true],
      ['T-2', false],
    ]);
    await keys.activate({ role: 'button', name: /^Undo: Posted/ });
    await pane.says(/^Taken back/);
    expect(await leftNow(pane, 'R-2')).toBe(3.4);
    await pane.close();
  });
});

test('one place alone is counted, what else is found there too, and a scan goes to its lot', async () => {
  const pane = await openShelves();
  const { keys, page } = pane;
  await keys.openSection('Stock');
  await keys.activate({ role: 'button', name: 'Count…' });
  await keys.tabTo({ role: 'combobox', name: 'Place' });
  await keys.press('d');
  await expect.poll(() => page.locator('.count-lot').allTextContents()).toEqual(['R-2', 'G-1']);
  await keys.fill('Type or scan a lot', 'T-1');
  await keys.press('Enter');
  await expect.poll(() => keys.isOn(field('T-1'))).toBe(true);
  await page.getByText('by the workbook it is kept in no place that is known').waitFor();
  await keys.press('Escape');
  await expect.poll(() => keys.isOn({ role: 'button', name: /^T-1, count it/ })).toBe(true);
  await page.waitForTimeout(100);
  await page.evaluate(() => {
    for (const key of ['R', '-', '2', 'Enter']) {
      document.activeElement?.dispatchEvent(
        new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }),
      );
    }
  });
  await expect.poll(() => keys.isOn(field('R-2'))).toBe(true);
  await pane.close();
});

test('tables of an earlier version are brought up to date, where the stocktake needs them', async () => {
  const pane = await PanePage.open({ workbook: versionOne(sampleBytes('demo-studio.xlsx')) });
  const { keys, page } = pane;
  await page.getByRole('tab', { name: 'Today' }).waitFor();
  await page.getByText('These tables are of an earlier version: bring them up to date?').waitFor();
  await keys.openSection('Stock');
  await keys.activate({ role: 'button', name: 'Count…' });
  await page.getByText('The table Counts is not here yet').waitFor();
  await keys.activate({ role: 'button', name: 'Bring the tables up to date' });
  await pane.says(/^Brought up to date/);
  await page.getByLabel('Type or scan a lot').waitFor();
  expect(await page.getByText('of an earlier version').count()).toBe(0);
  await expect.poll(() => keys.focused()).not.toBe('BODY');
  const settings = await pane.rows('Settings');
  expect(settings.find((row) => row['Setting'] === 'tables version')?.['Value']).toBe(2);
  await pane.close();
});

test('bringing the tables up to date can wait', async () => {
  const pane = await PanePage.open({ workbook: versionOne(sampleBytes('demo-studio.xlsx')) });
  const { keys, page } = pane;
  await page.getByRole('tab', { name: 'Today' }).waitFor();
  await keys.activate({ role: 'button', name: 'Later' });
  await expect.poll(() => page.getByText('of an earlier version').count()).toBe(0);
  await expect.poll(() => keys.focused()).not.toBe('BODY');
  await pane.close();
});
