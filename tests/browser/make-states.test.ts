import { expect, test } from 'vitest';
import { xlsxOf } from '../helpers/xlsx.ts';
import { KITCHEN } from '../pane-make/helpers.ts';
import { fillInBatch } from './helpers/make-form.ts';
import { PanePage } from './helpers/pane-page.ts';

async function openMakeOf(workbook: Uint8Array | string): Promise<PanePage> {
  const pane = await PanePage.open({ workbook });
  await pane.page.getByRole('tab', { name: 'Today' }).waitFor();
  await pane.keys.openSection('Make');
  return pane;
}

test('without a recipe, where to write one is said, and the tab is opened', async () => {
  const pane = await openMakeOf(xlsxOf({ ...KITCHEN, Recipes: [], RecipeParts: [] }));
  const { keys, page } = pane;
  await page.getByText('No recipes yet').waitFor();
  await keys.activate({ role: 'button', name: 'Show the tab Recipes' });
  await expect
    .poll(async () => (await pane.ask(({ host }) => host.person('pane').selected())).sheet)
    .toBe('Recipes');
  expect(await page.getByRole('combobox', { name: 'Recipe' }).count()).toBe(0);
  await pane.close();
});

test('a workbook that is only read shows the plan and offers nothing that writes', async () => {
  const newer = [{ Setting: 'tables version', Value: 99 }];
  const pane = await openMakeOf(xlsxOf({ ...KITCHEN, Settings: newer }));
  const { keys, page } = pane;
  await page.getByText('Reading only').waitFor();
  await fillInBatch(pane, 'Bath', '2');
  await page.getByText('In all, for 2 l').waitFor();
  await keys.press('Enter');
  expect(await page.getByRole('button', { name: 'Make it' }).count()).toBe(0);
  expect(await page.getByRole('button', { name: /^Empty the bath/ }).count()).toBe(0);
  await page.getByRole('button', { name: 'B-1, show in stock' }).waitFor();
  await pane.close();
});

test('without Movements nothing can be made, and what is missing is named', async () => {
  const { Movements: _, ...others } = KITCHEN;
  const pane = await openMakeOf(xlsxOf(others));
  const { page } = pane;
  await page.getByText('Nothing can be made yet').waitFor();
  expect(await page.getByRole('combobox', { name: 'Recipe' }).count()).toBe(0);
  await pane.close();
});

test('with nothing in stock, all of it is short and the cost is not known', async () => {
  const pane = await openMakeOf('starter.xlsx');
  const { page } = pane;
  await fillInBatch(pane, 'wheat starch paste', '41');
  await page
    .getByText('None of the 5.7 g is there: it is left out, and the Notes of the lot say so.')
    .waitFor();
  expect(await page.locator('.log-total').first().textContent()).toContain('not known');
  await page.getByText('Nothing that was made here is left.').waitFor();
  await pane.close();
});
