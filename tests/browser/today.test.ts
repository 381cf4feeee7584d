import { describe, expect, test } from 'vitest';
import { checkWorkbook, type PlacedNotice } from '../../src/actions/check-workbook.ts';
import { drawEntries } from '../../src/actions/draw-entries.ts';
import type { Severity } from '../../src/core/notice.ts';
import { seededRandom } from '../../src/core/seeded-random.ts';
import { withChanges } from '../../src/workbook/with-changes.ts';
import { PanePage } from './helpers/pane-page.ts';
import { stockIn, stockInWords } from './helpers/stock-words.ts';
import { sampleSnapshot, TODAY } from './helpers/studio-in-node.ts';

const WORDS: Readonly<Record<Severity, string>> = { stop: 'Mend first', warn: 'Warning', note: 'Note' };
const PRESSING: readonly string[] = ['Mend first', 'Warning', 'Note'];

function inWords(notices: readonly PlacedNotice[]): string[] {
  return notices.map(({ severity, message }) => `${WORDS[severity]}: ${message}`);
}

describe.each([320, 450])('Today at %i pixels, by keyboard', (width) => {
  test('notices lead to their cells, entries are drawn one by one and all at once, and every figure is the core’s', async () => {
    const pane = await PanePage.open({ width });
    const { keys, page } = pane;
    const before = checkWorkbook(sampleSnapshot('demo-studio.xlsx'), TODAY);
    await page.getByRole('tab', { name: 'Today' }).waitFor();

    const shown = await pane.notices();
    expect(shown.toSorted()).toEqual(inWords(before.notices).toSorted());
    const ranks = shown.map((text) => PRESSING.indexOf(text.split(':')[0] ?? ''));
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));

    for (const { address, cell } of before.notices.slice(0, 3)) {
      await keys.activate({ role: 'button', name: `${address}, show this cell` });
      await expect
        .poll(() => pane.ask(({ host }) => host.person('pane').selected()))
        .toEqual({ sheet: cell?.tab, row: cell?.row, column: cell?.column });
    }

    const undrawn = before.notices.flatMap(({ mend }) => (mend?.kind === 'draw' ? [mend.entry.name] : []));
    const [first = '', ...others] = undrawn;
    expect(others.length).toBeGreaterThan(1);
    const movementsBefore = (await pane.rows('Movements')).length;
    await keys.activate({ role: 'button', name: `Draw it: ${first}` });
    await pane.says(/taken from/);
    const drawn = (await pane.rows('Movements')).slice(movementsBefore);
    expect(new Set(drawn.map((row) => row['Entry']))).toEqual(new Set(drawn.length === 0 ? [] : [first]));
    // What had the focus is gone or done: it stands on something all the same.
    await expect.poll(() => keys.focused()).not.toBe('BODY');

    await keys.openSection('Today');
    await keys.activate({ role: 'button', name: /^Draw all \d+$/ });
    await pane.says(/ent(?:ry|ries).*taken from/);

    const sample = sampleSnapshot('demo-studio.xlsx');
    const written = drawEntries(sample, TODAY, seededRandom(1), null, null);
    if (!written.ok) throw new Error(written.message);
    const expected = checkWorkbook(withChanges(sample, written.changes), TODAY);
    expect((await pane.notices()).toSorted()).toEqual(inWords(expected.notices).toSorted());
    await keys.openSection('Stock');
    const stock = await stockIn(pane.page);
    expect(stock).toEqual(stockInWords(expected));
    expect(stock).toEqual(stockInWords(await pane.check()));
    expect(stock).not.toEqual(stockInWords(before));
    await pane.close();
  });
});

test('of many notices the first few of each kind are shown, and all when asked', async () => {
  const pane = await PanePage.open({ workbook: 'damaged.xlsx' });
  const { keys, page } = pane;
  const { notices } = checkWorkbook(sampleSnapshot('damaged.xlsx'), TODAY);
  await page.getByRole('tab', { name: 'Today' }).waitFor();
  const stops = notices.filter(({ severity }) => severity === 'stop');
  expect(stops.length).toBeGreaterThan(100);
  await page.getByText(`${stops.length} to mend first`, { exact: false }).first().waitFor();
  expect((await pane.notices()).length).toBeLessThan(notices.length);
  for (const title of ['Can’t be read', 'Names what is not there', 'Named twice']) {
    await keys.activate({ role: 'button', name: new RegExp(`^Show all \\d+: ${title}$`) }, { most: 120 });
    expect(await keys.isOn({ role: 'button', name: `Show fewer: ${title}` })).toBe(true);
  }
  for (const more of await page.getByRole('button', { name: /^Show all/ }).all()) {
    await keys.activate(
      { role: 'button', name: (await more.getAttribute('aria-label')) ?? '' },
      { most: 120 },
    );
  }
  // The file holds no result of one formula; the program that opened it shows an error there.
  const uncalculated = notices.filter(({ message }) => message.includes('of which the file holds no result'));
  expect(uncalculated).toHaveLength(1);
  const calculated = notices.filter((notice) => !uncalculated.includes(notice));
  const shown = await pane.notices();
  expect(shown).toHaveLength(notices.length);
  expect(shown).toEqual(expect.arrayContaining(inWords(calculated)));
  const places = await page.locator('.panel .notice-stop .button-link').allTextContents();
  expect(places.toSorted()).toEqual(stops.map(({ address }) => address).toSorted());
  await pane.close();
});

test('the list of keys opens, holds the focus, and gives it back', async () => {
  const pane = await PanePage.open();
  const { keys, page } = pane;
  await page.getByRole('tab', { name: 'Today' }).waitFor();
  await keys.activate({ role: 'button', name: 'Keys' }, { most: 80 });
  await page.getByRole('dialog', { name: 'Keys' }).waitFor();
  expect(await keys.isOn({ role: 'button', name: 'Close' })).toBe(true);
  await keys.press('Escape');
  await page.getByRole('dialog', { name: 'Keys' }).waitFor({ state: 'hidden' });
  expect(await keys.isOn({ role: 'button', name: 'Keys' })).toBe(true);
  await pane.close();
});
