import { describe, expect, test } from 'vitest';
import { versionOne } from '../helpers/version-one.ts';
import { fillIn } from './helpers/log-form.ts';
import { fillInBatch, fillInPour } from './helpers/make-form.ts';
import { type PaneOptions, PanePage } from './helpers/pane-page.ts';
import { openLotPage, openShelves } from './helpers/shelves-page.ts';
import { sampleBytes } from './helpers/studio-in-node.ts';

const WIDTHS = [320, 450];
const LOOKS = ['light', 'dark', 'forced colours'] as const;
/** Many things are looked at, one after the other; on a busy machine that takes its time. */
const UNHURRIED = 240_000;
/** How many stops of the Tab key are looked at in each view. */
const STOPS = 15;

/** Opens a section or a thing in it, from wherever the page is. */
interface View {
  readonly name: string;
  readonly go: (pane: PanePage) => Promise<void>;
}

const VIEWS: readonly View[] = [
  { name: 'Today', go: async ({ keys }) => keys.openSection('Today') },
  {
    name: 'Log, with a plan',
    go: async (pane) => {
      await pane.keys.openSection('Log');
      await fillIn(pane, { job: 'J-2031', treatment: 'mending tears', extent: '40' });
      await pane.keys.activate({ role: 'button', name: 'Change amount or lot of kozo tissue 5 g' });
    },
  },
  {
    name: 'Log, with what is wrong',
    go: async ({ keys, page }) => {
      await keys.fill('Amount used', 'a few');
      await keys.press('Enter');
      await page.getByText('Please mend this first').waitFor();
    },
  },
  {
    name: 'Log, with an open list',
    go: async ({ keys, page }) => {
      await keys.tabTo({ role: 'combobox', name: 'Job' }, { back: true });
      await keys.press('Alt+ArrowDown');
      await page.getByRole('listbox', { name: 'Jobs' }).waitFor();
    },
  },
  { name: 'Stock', go: async ({ keys }) => keys.openSection('Stock') },
  {
    name: 'a material',
    go: async ({ keys, page }) => {
      await keys.activate({ role: 'button', name: 'kozo tissue 5 g' });
      await page.getByRole('heading', { name: 'kozo tissue 5 g' }).waitFor();
    },
  },
  {
    name: 'a lot',
    go: async ({ keys, page }) => {
      await keys.activate({ role: 'button', name: 'T-002' });
      await page.getByRole('heading', { name: 'Lot T-002' }).waitFor();
    },
  },
  {
    name: 'a material with hazards',
    go: async ({ keys, page }) => {
      await keys.activate({ role: 'button', name: 'kozo tissue 5 g' });
      const heading = { role: 'heading', name: 'kozo tissue 5 g' } as const;
      await expect.poll(() => keys.isOn(heading)).toBe(true);
      await keys.press('Escape');
      await page.getByRole('textbox', { name: 'Find or scan' }).waitFor();
      await keys.activate({ role: 'button', name: 'ethanol' }, { most: 80 });
      await page.getByText('Highly Flammable liquid and vapor').waitFor();
    },
  },
  {
    name: 'Make, with something short and a bath to be emptied',
    go: async (pane) => {
      await pane.keys.openSection('Make');
      await fillInBatch(pane, 'remoistenable tissue', '20');
      await pane.page.getByRole('button', { name: 'Make wheat starch paste first' }).waitFor();
      await pane.keys.activate({ role: 'button', name: 'Empty the bath… B-045' }, { most: 80 });
      await pane.page.getByText('What is left is charged as waste to:').waitFor();
    },
  },
  {
    name: 'Make, with what is poured at once',
    go: async (pane) => {
      await pane.keys.press('Escape');
      await pane.keys.openSection('Make');
      await fillInBatch(pane, 'magnesium bicarbonate', '3');
      await fillInPour(pane, {
        job: 'J-2034',
        treatment: 'deacidifying in a bath',
        extent: '4',
        amount: '2.5',
      });
      await pane.page.getByText('Besides, this treatment takes:').waitFor();
    },
  },
  {
    name: 'Make, with what is wrong',
    go: async ({ keys, page }) => {
      await keys.tabTo({ role: 'textbox', name: 'How much' }, { back: true, most: 80 });
      await keys.type('a pot');
      await keys.press('Enter');
      await page.getByText('Please mend this first').waitFor();
    },
  },
  {
    name: 'Quote, with what is chosen in the sheet',
    go: async (pane) => {
      await pane.keys.openSection('Quote');
      await pane.keys.activate({ role: 'button', name: 'How each line came about' });
      const jobs = (await pane.snapshot()).tables.find(({ name }) => name === 'Jobs');
      await pane.act(({ host }, row) => host.person('pane').select(`Jobs!A${row}`), jobs?.firstRow);
      await pane.page.getByRole('complementary').waitFor();
    },
  },
  {
    name: 'what was done last',
    go: async (pane) => {
      await pane.keys.openSection('Today');
      await pane.keys.activate({ role: 'button', name: /^Draw it/ });
      await pane.says(/taken from/);
    },
  },
  {
    name: 'rows that somebody else took out, and a writing that failed',
    go: async (pane) => {
      const { length } = await pane.rows('Movements');
      await pane.act(
        ({ host }, at) => host.person('colleague').deleteTableRows('Movements', at, 1),
        length - 2,
      );
      await pane.page.getByText('1 row is gone').waitFor();
      await pane.act(({ host }) => host.setFailure(() => ({ code: 'AccessDenied' })), null);
      await pane.keys.openSection('Today');
      await pane.keys.activate({ role: 'button', name: 'Write it again' });
      await pane.page.getByRole('button', { name: 'Dismiss' }).waitFor();
    },
  },
  {
    name: 'a workbook that can’t be read',
    go: async ({ keys, page }) => {
      await keys.activate({ role: 'button', name: 'Check now' });
      await page.getByRole('button', { name: 'Try again' }).waitFor();
    },
  },
];

/** What is planned, in the sections that show it. */
const PLAN_VIEWS: readonly View[] = [
  {
    name: 'Buy, with a number set by hand, other packs, and what goes off',
    go: async ({ keys, page }) => {
      await keys.openSection('Buy');
      await page
        .getByRole('button', { name: /^Order from/ })
        .first()
        .waitFor();
      for (const summary of ['What will go off unused', 'Other packs and suppliers']) {
        await page.locator('summary').filter({ hasText: summary }).focus();
        await keys.press('Enter');
      }
      await page
        .getByRole('button', { name: /^One pack more/ })
        .first()
        .focus();
      await keys.press('Enter');
      await page.getByText('set by hand').waitFor();
    },
  },
  {
    name: 'Buy, with an order to send and what came of another',
    go: async (pane) => {
      const { keys, page } = pane;
      await page
        .getByRole('button', { name: /^Order from/ })
        .first()
        .focus();
      await keys.press('Enter');
      await pane.says(/^Written down: order/);
      await keys.activate({ role: 'button', name: /^Receive… order O-/ }, { most: 90 });
      await expect.poll(() => keys.focused()).toMatch(/^input/);
      await keys.type('many');
      await keys.press('Enter');
      await page.getByText('Please mend this first').waitFor();
    },
  },
  {
    name: 'Make, with its ways side by side',
    go: async ({ keys, page }) => {
      await keys.openSection('Make');
      await page.locator('summary').filter({ hasText: 'Beside other ways' }).first().focus();
      await keys.press('Enter');
      await page.getByRole('table', { name: /^Ways of making/ }).waitFor();
    },
  },
  {
    name: 'a material, with its next weeks as a table',
    go: async ({ keys, page }) => {
      await keys.openSection('Stock');
      await keys.activate({ role: 'button', name: 'wheat starch paste' }, { most: 80 });
      await page.locator('summary').filter({ hasText: 'As a table' }).focus();
      await keys.press('Enter');
      await page.getByRole('table', { name: /^Days on which/ }).waitFor();
    },
  },
  {
    name: 'Quote, with what a job wants',
    go: async ({ keys, page }) => {
      await keys.openSection('Quote');
      await keys.fill('Job', 'J-2035', 'combobox');
      await keys.press('Enter');
      await page.getByText('Not as it is planned now.').waitFor();
    },
  },
];

/** What is done with lots, on the shelves of the small studio. */
const SHELF_VIEWS: readonly View[] = [
  {
    name: 'Today, with what is to be thrown away',
    go: async ({ keys, page }) => {
      await keys.activate({ role: 'button', name: 'Throw away what has expired…' });
      await page.getByText('1 lot, the studio’s loss').waitFor();
    },
  },
  {
    name: 'a lot, with what is wrong in its form',
    go: async (pane) => {
      await openLotPage(pane, 'B-1');
      await pane.keys.activate({ role: 'button', name: 'Retested…' });
      await expect.poll(() => pane.keys.focused()).toMatch(/^input/);
      await pane.keys.press('Enter');
      await pane.page.getByText('Say who tested it.').waitFor();
    },
  },
  {
    name: 'a lot that is used again, with a form',
    go: async (pane) => {
      await openLotPage(pane, 'R-2');
      await pane.keys.activate({ role: 'button', name: 'Dried or washed…' });
      await pane.page.getByText('Uses that come back').waitFor();
    },
  },
  {
    name: 'a stocktake under way',
    go: async ({ keys, page }) => {
      await keys.openSection('Stock');
      await keys.activate({ role: 'button', name: 'Count…' });
      await keys.fill('Type or scan a lot', 'R-2');
      await keys.press('Enter');
      await page.getByLabel('What is left of R-2').waitFor();
      await keys.type('3');
      await keys.press('Enter');
      await page.getByText('0.4 sheets less than expected', { exact: false }).first().waitFor();
    },
  },
  {
    name: 'the closing stock of another day',
    go: async ({ keys, page }) => {
      await keys.openSection('Stock');
      await keys.activate({ role: 'button', name: 'Closing stock…' });
      await keys.activate({ role: 'button', name: 'As of another day…' });
      await page.getByLabel('As of', { exact: true }).fill('2026-03-25');
      await keys.press('Enter');
      await page.getByText('Figures of 25 Mar 2026').waitFor();
      await keys.activate({ role: 'button', name: 'As of another day…' });
    },
  },
  {
    name: 'a lot on another day',
    go: async (pane) => {
      await openLotPage(pane, 'R-2');
      await pane.page.getByText('Go back to today first', { exact: false }).waitFor();
    },
  },
  {
    name: 'what was thrown away',
    go: async ({ keys, page }) => {
      await keys.activate({ role: 'button', name: 'Blotter' });
      await expect.poll(() => keys.isOn({ role: 'heading', name: 'Blotter' })).toBe(true);
      await keys.press('Escape');
      await keys.activate({ role: 'button', name: 'Closing stock…' });
      await keys.activate({ role: 'button', name: 'Thrown away…' });
      await page.getByText('Nothing was thrown away in 2026').waitFor();
    },
  },
  {
    name: 'carrying over to a new workbook',
    go: async ({ keys, page }) => {
      await keys.activate({ role: 'button', name: 'Closing stock' });
      await keys.activate({ role: 'button', name: 'New workbook…' });
      await page.getByText('No figure of', { exact: false }).first().waitFor();
    },
  },
];

/** Other workbooks, as they are when the pane opens. */
const OPENINGS: readonly { readonly name: string; readonly options: PaneOptions; readonly shows: string }[] =
  [
    { name: 'no tables', options: { workbook: null }, shows: 'Set up the tables' },
    {
      name: 'a workbook that has just been set up',
      options: { workbook: 'starter.xlsx' },
      shows: 'No lots yet',
    },
    {
      name: 'tables of an earlier version',
      options: { workbook: versionOne(sampleBytes('demo-studio.xlsx')) },
      shows: 'These tables are of an earlier version',
    },
    { name: 'many faults', options: { workbook: 'damaged.xlsx' }, shows: 'Names what is not there' },
  ];

describe.each(LOOKS)('in %s', (look) => {
  test(
    'every section has no fault that axe finds, nothing runs over, all is large enough to press',
    async () => {
      const pane = await PanePage.open({ look });
      await pane.page.getByRole('tab', { name: 'Today' }).waitFor();
      expect(await faultsOf(VIEWS, pane)).toEqual([]);
      await pane.close();
    },
    UNHURRIED,
  );

  test(
    'the same for what is planned',
    async () => {
      const pane = await PanePage.open({ look });
      await pane.page.getByRole('tab', { name: 'Today' }).waitFor();
      expect(await faultsOf(PLAN_VIEWS, pane)).toEqual([]);
      await pane.close();
    },
    UNHURRIED,
  );

  test(
    'the same for what is done with lots',
    async () => {
      const pane = await openShelves({ look });
      expect(await faultsOf(SHELF_VIEWS, pane)).toEqual([]);
      await pane.close();
    },
    UNHURRIED,
  );

  test.each(OPENINGS)('$name: the same', async ({ options, shows }) => {
    const pane = await PanePage.open({ ...options, look });
    await pane.page.getByText(shows).first().waitFor();
    expect(await faultsIn(pane)).toEqual([]);
    await pane.close();
  });
});

/** What is wrong with several views, one after the other. */
async function faultsOf(views: readonly View[], pane: PanePage): Promise<string[]> {
  const faults: string[] = [];
  for (const { name, go } of views) {
    await go(pane);
    faults.push(...(await faultsIn(pane)).map((fault) => `${name}: ${fault}`));
  }
  return faults;
}

/** What is wrong with what a page shows now, at both widths. */
async function faultsIn(pane: PanePage): Promise<string[]> {
  const faults = [...(await unseenFocus(pane)), ...(await claims(pane))];
  for (const width of WIDTHS) {
    await pane.page.setViewportSize({ width, height: 900 });
    const found = [
      ...(await pane.violations()),
      ...(await smallControls(pane)),
      ...((await pane.isTooWide()) ? ['runs over the right edge'] : []),
    ];
    faults.push(...found.map((fault) => `${width} px: ${fault}`));
  }
  return faults;
}

/** Controls that are smaller than they should be: 44 px for the main one, 36 px for the others, 24 px in any case. */
function smallControls({ page }: PanePage): Promise<string[]> {
  return page.evaluate(() => {
    const controls = document.querySelectorAll<HTMLElement>('button, input, select, summary, a[href]');
    return [...controls].flatMap((control) => {
      const { width, height } = control.getBoundingClientRect();
      // What is not shown has no size; a link in a sentence is as high as its line.
      if (height === 0 || control.matches('p a, li a')) return [];
      const least = control.classList.contains('button-main') ? 44 : 36;
      // Boxes lie between pixels.
      const isSmall = Math.round(height) < least || width < 24;
      return isSmall
        ? [`${Math.round(width)} × ${Math.round(height)} px: ${control.outerHTML.slice(0, 80)}`]
        : [];
    });
  });
}

/** What has the focus and doesn't show it by an outline, which forced colours keep, at the first stops from here. */
async function unseenFocus({ page, keys }: PanePage): Promise<string[]> {
  const faults: string[] = [];
  for (let stop = 0; stop < STOPS; stop += 1) {
    await keys.press('Tab');
    const fault = await page.evaluate(() => {
      const focused = document.activeElement;
      if (focused === null || focused === document.body) return null;
      const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(focused);
      const isSeen =
        outlineStyle !== 'none' &&
        Number.parseFloat(outlineWidth) >= 2 &&
        !/^rgba\(.*, 0\)$/.test(outlineColor);
      return isSeen ? null : focused.outerHTML.slice(0, 80);
    });
    if (fault !== null) faults.push(`the focus is not seen: ${fault}`);
  }
  return faults;
}

/** Sentences that call something safe: only the safety data sheet, local codes and licensed practice speak of that. */
async function claims({ page }: PanePage): Promise<string[]> {
  const text = (await page.locator('body').allInnerTexts()).join('\n');
  return (text.match(/[^.\n]*\bsafe(?:ly)?\b[^.\n]*/gi) ?? []).map((sentence) => `says: ${sentence}`);
}
