import { describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { addDays, isoDay, spokenDay } from '../../src/core/day.ts';
import { decimal, quantityNumber } from '../../src/core/exact-number.ts';
import { moneyText } from '../../src/core/money.ts';
import { serialOfDay } from '../../src/core/serial-date.ts';
import { unitNamed } from '../../src/core/unit.ts';
import { filledRows, rowsFrom, shownPlan } from './helpers/log-form.ts';
import { fillInBatch, fillInPour, openMake, partsInWords, planInNode } from './helpers/make-form.ts';
import type { PanePage } from './helpers/pane-page.ts';
import { stockInWords } from './helpers/stock-words.ts';
import { sampleSnapshot, TODAY } from './helpers/studio-in-node.ts';

const SNAPSHOT = sampleSnapshot('demo-studio.xlsx');
const { settings } = checkWorkbook(SNAPSHOT, TODAY);
const YESTERDAY = addDays(TODAY, -1);
const SEND = { role: 'button', name: 'Make it' } as const;

/** The lot that was made last, by the link to it. */
async function madeLot({ page }: PanePage): Promise<string> {
  const link = page.locator('.make-made button');
  await link.waitFor();
  return ((await link.textContent()) ?? '').replace(/^Lot /, '');
}

describe.each([320, 450])('Make at %i pixels, by keyboard', (width) => {
  test('paste with a weighed yield: the figures are the core’s, the lot is named, and all is taken back', async () => {
    const pane = await openMake(width);
    const { keys, page } = pane;
    const before = stockInWords(checkWorkbook(SNAPSHOT, TODAY));
    await fillInBatch(pane, 'wheat starch paste', '200');
    // On the sample's own day the starch was counted: an odd cent would fall on either.
    await page.getByLabel('Day').fill(isoDay(YESTERDAY));
    const plan = planInNode(SNAPSHOT, {
      recipe: 'wheat starch paste',
      amount: decimal('200'),
      unit: unitNamed('g'),
      yielded: decimal('190'),
      date: YESTERDAY,
    });
    await keys.fill(/^Weighed or measured in the end/, '190');
    await page.getByText('In all, for 190 g').waitFor();
    const shown = await shownPlan(pane);
    expect(shown.map(({ material, quantity }) => ({ material, quantity }))).toEqual(partsInWords(plan));
    const [starch] = plan.parts;
    expect(shown[0]?.takes.map((take) => take.split(',')[0])).toEqual(
      starch?.takes.map(({ lot }) => `from ${lot.name}`),
    );
    const cost = moneyText(plan.cost ?? 0n, settings.currency);
    expect(await page.locator('.log-total').first().textContent()).toContain(cost);
    if (plan.goodUntil === null) throw new Error('Paste goes off');
    await page.getByText(`Good until ${spokenDay(plan.goodUntil)}: ${plan.goodUntilBecause}.`).waitFor();

    const movements = await filledRows(pane, 'Movements');
    const lots = await filledRows(pane, 'Paste');
    // From the field for what was weighed, Enter makes it.
    await keys.press('Enter');
    await pane.says('Made: 190 g of wheat starch paste, lot ');
    const name = await madeLot(pane);
    const [lot, ...more] = await rowsFrom(pane, 'Paste', lots);
    expect(more).toEqual([]);
    expect(lot).toMatchObject({
      Lot: name,
      Material: 'wheat starch paste',
      Recipe: 'wheat starch paste',
      Received: serialOfDay(YESTERDAY, 1900),
      Quantity: 190,
      Unit: 'g',
      Cost: Number(cost),
      Left: 190,
      'Good until': serialOfDay(plan.goodUntil, 1900),
    });
    const made = await rowsFrom(pane, 'Movements', movements);
    expect(made.map((row) => [row['Kind'], row['Lot'], row['Quantity'], row['Unit'], row['Into']])).toEqual(
      plan.parts.flatMap(({ takes }) =>
        takes.map((take) => ['Make', take.lot.name, quantityNumber(take.quantity), take.unit.name, name]),
      ),
    );
    expect(new Set(made.map((row) => row['Posting'])).size).toBe(1);
    expect(lot?.['Posting']).toBe(made[0]?.['Posting']);
    // The next batch can be typed at once.
    expect(await keys.isOn({ role: 'combobox', name: 'Recipe' })).toBe(true);
    expect(await page.getByRole('combobox', { name: 'Recipe' }).inputValue()).toBe('');
    expect(stockInWords(await pane.check())).not.toEqual(before);

    await keys.activate({ role: 'button', name: /^Undo: Made/ }, { most: 60 });
    await pane.says('Taken back');
    expect(stockInWords(await pane.check())).toEqual(before);
    await expect.poll(() => page.locator('.make-made').count()).toBe(0);
    await expect.poll(() => keys.focused()).not.toBe('BODY');
    await pane.close();
  });
});

test('a bath is made and poured for a job in one go', async () => {
  const pane = await openMake(320);
  const { keys, page } = pane;
  await fillInBatch(pane, 'magnesium bicarbonate', '3');
  await fillInPour(pane, {
    job: 'J-2034',
    treatment: 'deacidifying in a bath',
    extent: '4',
    amount: '2.5',
  });
  await page.getByText('Besides, this treatment takes:').waitFor();
  const movements = await filledRows(pane, 'Movements');
  const entries = await filledRows(pane, 'TreatmentLog');
  await keys.activate({ role: 'button', name: 'Make it and pour' });
  await pane.says('2.5 l poured for J-2034: deacidifying in a bath.');
  const name = await madeLot(pane);
  const [entry] = await rowsFrom(pane, 'TreatmentLog', entries);
  expect(entry).toMatchObject({
    Job: 'J-2034',
    Treatment: 'deacidifying in a bath',
    Extent: 4,
    Drawn: 'yes',
  });
  expect(entry?.['Notes']).toContain(`magnesium bicarbonate=2.5 l@${name}`);
  const rows = await rowsFrom(pane, 'Movements', movements);
  const poured = rows.find((row) => row['Lot'] === name);
  expect(poured).toMatchObject({
    Kind: 'Use',
    Quantity: 2.5,
    Unit: 'l',
    Job: 'J-2034',
    Entry: entry?.['Entry'],
    'Lot is': 'confirmed',
  });
  expect(new Set(rows.map((row) => row['Posting'])).size).toBe(1);
  const lot = (await pane.check()).stock.lots.find((each) => each.lot.name === name);
  expect(lot?.left.valueOf()).toBe(0.5);
  await pane.close();
});

test('a bath is emptied: the jobs are named, asked once, kept by Escape; its pH is kept with another', async () => {
  const pane = await openMake(450);
  const { keys, page } = pane;
  const empty = { role: 'button', name: 'Empty the bath… B-045' } as const;
  const before = (await pane.check()).stock.lots.find(({ lot }) => lot.name === 'B-045');
  if (before === undefined) throw new Error('There is no lot B-045');
  const left = quantityNumber(before.left);
  const movements = await filledRows(pane, 'Movements');
  await keys.activate(empty, { most: 60 });
  const yes = { role: 'button', name: 'Empty the bath: B-045' } as const;
  await expect.poll(() => keys.isOn(yes)).toBe(true);
  await page.getByText('What is left is charged as waste to:').waitFor();
  await keys.press('Escape');
  await expect.poll(() => keys.isOn(empty)).toBe(true);
  expect(await filledRows(pane, 'Movements')).toBe(movements);
  await keys.press('Enter');
  await expect.poll(() => keys.isOn(yes)).toBe(true);
  await keys.press('Enter');
  await pane.says(`Emptied: lot B-045, ${left} l charged to J-2034.`);
  const [waste, ...more] = await rowsFrom(pane, 'Movements', movements);
  expect(more).toEqual([]);
  expect(waste).toMatchObject({ Kind: 'Waste', Lot: 'B-045', Quantity: left, Unit: 'l', Job: 'J-2034' });
  expect(Number(waste?.['Cost'])).toBe(
    Number(moneyText(before.worth ?? expect.unreachable(), settings.currency)),
  );
  await expect.poll(() => keys.focused()).not.toBe('BODY');
  expect(await page.getByRole('button', { name: 'B-045, show in stock' }).count()).toBe(0);

  await keys.activate({ role: 'button', name: 'Keep it… B-044' }, { most: 60, back: true });
  await expect.poll(() => keys.isOn({ role: 'textbox', name: 'pH of B-044' })).toBe(true);
  await keys.type('12,4');
  await keys.press('Enter');
  await page.getByText(/^12,4 can’t be read as a number/).waitFor();
  await keys.type('12.4');
  await keys.press('Enter');
  await pane.says('Kept: lot B-044, pH 12.4.');
  const lots = await pane.rows('Buffers');
  expect(lots.find((row) => row['Lot'] === 'B-044')?.['pH']).toBe(12.4);
  await expect.poll(() => keys.focused()).not.toBe('BODY');
  await pane.close();
});

test('what is short and made here is made first; then the form comes back as it was left', async () => {
  const pane = await openMake(320);
  const { keys, page } = pane;
  await fillInBatch(pane, 'remoistenable tissue', '20');
  const { materials } = checkWorkbook(SNAPSHOT, TODAY).stock;
  const paste = materials.find(({ material }) => material.name === 'wheat starch paste');
  await page
    .getByText(
      `Only ${quantityNumber(paste?.usable ?? expect.unreachable())} g of 240 g is there: the rest is left out, and the Notes of the lot say so.`,
    )
    .waitFor();
  await keys.activate({ role: 'button', name: 'Make wheat starch paste first' });
  await expect
    .poll(() => page.getByRole('combobox', { name: 'Recipe' }).inputValue())
    .toBe('wheat starch paste');
  const amount = page.getByRole('textbox', { name: 'How much' });
  const plan = planInNode(SNAPSHOT, {
    recipe: 'remoistenable tissue',
    amount: decimal('20'),
    unit: unitNamed('sheet'),
  });
  const short = plan.parts.find(({ material }) => material.name === 'wheat starch paste');
  expect(Number(await amount.inputValue())).toBe(short?.missing.valueOf());
  await page.getByText('remoistenable tissue waits').waitFor();
  await keys.activate(SEND, { most: 60 });
  await pane.says(/^Made: .* of wheat starch paste/);
  expect(await page.getByRole('combobox', { name: 'Recipe' }).inputValue()).toBe('remoistenable tissue');
  expect(await amount.inputValue()).toBe('20');
  expect(await page.getByText('remoistenable tissue waits').count()).toBe(0);
  const lines = await shownPlan(pane);
  expect(lines.find(({ material }) => material === 'wheat starch paste')?.takes).toHaveLength(2);
  await pane.close();
});

test('from a material in Stock; what is wrong is told with links, and a code on a jar means its recipe', async () => {
  const pane = await openMake(320);
  const { keys, page } = pane;
  await keys.openSection('Stock');
  await keys.activate({ role: 'button', name: 'wheat starch paste' }, { most: 80 });
  await keys.activate({ role: 'button', name: 'Make some' });
  await expect
    .poll(() => page.getByRole('combobox', { name: 'Recipe' }).inputValue())
    .toBe('wheat starch paste');
  await expect.poll(() => keys.isOn({ role: 'textbox', name: 'How much' })).toBe(true);
  await keys.type('a pot');
  await keys.press('Enter');
  const summary = page.getByRole('alert').filter({ hasText: 'Please mend this first' });
  await summary.waitFor();
  expect(await summary.evaluate((element) => element === document.activeElement)).toBe(true);
  await keys.activate({ role: 'link', name: /^a pot can’t be read as a number/ });
  expect(await keys.isOn({ role: 'textbox', name: 'How much' })).toBe(true);
  await keys.tabTo({ role: 'combobox', name: 'Recipe' }, { back: true });
  await keys.type('b-044');
  await keys.press('Enter');
  await expect.poll(() => page.getByRole('combobox', { name: 'Recipe' }).inputValue()).toBe('limewater');
  await expect.poll(() => keys.isOn({ role: 'textbox', name: 'How much' })).toBe(true);
  await pane.close();
});
