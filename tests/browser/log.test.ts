import { describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { filledRows, fillIn, rowsFrom, shownPlan } from './helpers/log-form.ts';
import { PanePage } from './helpers/pane-page.ts';
import { stockInWords } from './helpers/stock-words.ts';
import { sampleSnapshot, TODAY } from './helpers/studio-in-node.ts';

const TEARS = { job: 'J-2031', treatment: 'mending tears', extent: '40' };
const SEND = { role: 'button', name: 'Take from stock and log' } as const;

async function openLog(width: number): Promise<PanePage> {
  const pane = await PanePage.open({ width });
  await pane.page.getByRole('tab', { name: 'Today' }).waitFor();
  await pane.keys.openSection('Log');
  return pane;
}

function rounded(value: unknown): number {
  return Number(Number(value).toFixed(3));
}

describe.each([320, 450])('Log at %i pixels, by keyboard', (width) => {
  test('what is planned is shown, posted as it was shown, and taken back', async () => {
    const pane = await openLog(width);
    const { keys, page } = pane;
    const before = stockInWords(checkWorkbook(sampleSnapshot('demo-studio.xlsx'), TODAY));
    await fillIn(pane, TEARS);
    expect(await shownPlan(pane)).toEqual([
      {
        material: 'kozo tissue 5 g',
        quantity: '84 cm2',
        takes: ['45 cm2 from T-002, keeps assumed', '39 cm2 from T-008, keeps assumed'],
      },
      {
        material: 'wheat starch paste',
        quantity: '16.2 g',
        takes: ['from P-027, good until 19 Nov 2026 assumed'],
      },
    ]);

    await keys.activate({ role: 'button', name: 'Change amount or lot of wheat starch paste' });
    await keys.fill('Amount used', '20');
    await page.getByText('By the rates 16.2 g.').waitFor();
    await keys.fill('Lot', 'P-027', 'combobox');
    await keys.press('Enter');
    // A scanner ends its code with Enter: the next Enter logs.
    await expect.poll(() => keys.isOn(SEND)).toBe(true);
    const plan = await shownPlan(pane);
    expect(plan[1]).toEqual({
      material: 'wheat starch paste',
      quantity: '20 g',
      takes: ['from P-027, good until 19 Nov 2026 confirmed'],
    });

    const movements = await filledRows(pane, 'Movements');
    const entries = await filledRows(pane, 'TreatmentLog');
    await keys.press('Enter');
    await pane.says('Mending tears, 40 cm, for J-2031: taken from');
    const [entry, ...more] = await rowsFrom(pane, 'TreatmentLog', entries);
    expect(more).toEqual([]);
    expect(entry).toMatchObject({
      Job: 'J-2031',
      Treatment: 'mending tears',
      Extent: 40,
      Drawn: 'yes',
      'Drawn for': 40,
    });
    const taken = await rowsFrom(pane, 'Movements', movements);
    expect(
      taken.map((row) => [row['Lot'], rounded(row['Quantity']), row['Unit'], row['Lot is'], row['Entry']]),
    ).toEqual([
      ['T-002', 45, 'cm2', 'assumed', entry?.['Entry']],
      ['T-008', 39, 'cm2', 'assumed', entry?.['Entry']],
      ['P-027', 20, 'g', 'confirmed', entry?.['Entry']],
    ]);
    // The next treatment of the same job can be typed at once.
    expect(await keys.isOn({ role: 'combobox', name: 'Treatment' })).toBe(true);
    expect(stockInWords(await pane.check())).not.toEqual(before);

    await keys.activate({ role: 'button', name: /^Undo: Mending tears/ }, { most: 60 });
    await pane.says('Taken back: 3 movements');
    const reversed = await rowsFrom(pane, 'Movements', movements + taken.length);
    expect(reversed.map((row) => [row['Reverses'], row['Quantity']])).toEqual(
      taken.map((row) => [row['Movement'], -Number(row['Quantity'])]),
    );
    expect(stockInWords(await pane.check())).toEqual(before);
    await expect.poll(() => keys.focused()).not.toBe('BODY');
    await pane.close();
  });
});

test('another material is chosen of those that may stand for it, and an amount split over two lots', async () => {
  const pane = await openLog(320);
  const { keys } = pane;
  await fillIn(pane, { ...TEARS, extent: '12' });
  await keys.activate({ role: 'button', name: 'Change amount or lot of kozo tissue 5 g' });
  await keys.tabTo({ role: 'combobox', name: 'Which of them' });
  await keys.press('ArrowDown');
  const [first] = await shownPlan(pane);
  expect(first?.material).not.toBe('kozo tissue 5 g');
  await keys.activate({ role: 'button', name: `Split over a second lot: ${first?.material ?? ''}` });
  await expect.poll(() => keys.isOn({ role: 'textbox', name: 'And of a second lot' })).toBe(true);
  await keys.activate({ role: 'button', name: `All in one: ${first?.material ?? ''}` });
  const plan = await shownPlan(pane);
  const movements = await filledRows(pane, 'Movements');
  await keys.activate(SEND);
  await pane.says('Mending tears, 12 cm, for J-2031: taken from');
  const taken = await rowsFrom(pane, 'Movements', movements);
  const materials = new Map(
    (await pane.check()).stock.lots.map(({ lot }) => [lot.name, lot.material.name] as const),
  );
  // An amount that a person gave is written last.
  expect(
    taken
      .map((row) => `${rounded(row['Quantity'])} ${row['Unit']} of ${materials.get(String(row['Lot']))}`)
      .toSorted(),
  ).toEqual(plan.map(({ material, quantity }) => `${quantity} of ${material}`).toSorted());
  await pane.close();
});

test('a material that no rate names is added, and begins with its amount', async () => {
  const pane = await openLog(320);
  const { keys } = pane;
  await fillIn(pane, { ...TEARS, extent: '12' });
  const before = await shownPlan(pane);
  const more = { role: 'button', name: 'Something else was used' } as const;
  await keys.activate(more, { most: 60 });
  const field = { role: 'combobox', name: 'What else was used' } as const;
  await expect.poll(() => keys.isOn(field)).toBe(true);
  await keys.activate({ role: 'button', name: 'Nothing else' });
  await expect.poll(() => keys.isOn(more)).toBe(true);
  await keys.press('Enter');
  await expect.poll(() => keys.isOn(field)).toBe(true);
  await keys.type('linen thr');
  await keys.press('Enter');
  await expect.poll(() => keys.isOn({ role: 'textbox', name: 'Amount used' })).toBe(true);
  await keys.type('2');
  await expect
    .poll(async () => (await shownPlan(pane)).map(({ material, quantity }) => [material, quantity]))
    .toEqual([...before.map(({ material, quantity }) => [material, quantity]), ['linen thread', '2 m']]);
  await pane.close();
});

test('what no lot covers is said before and after, and the entry is kept and drawn in part', async () => {
  const pane = await openLog(320);
  const { keys, page } = pane;
  await fillIn(pane, { ...TEARS, extent: '40000' });
  await page.getByText(/^Only .* g of .* g is there: the rest stays noticed/).waitFor();
  const entries = await filledRows(pane, 'TreatmentLog');
  // From the field for the extent, Enter logs.
  await keys.press('Enter');
  await pane.says(/Not covered by any lot: .* g of wheat starch paste/);
  const [entry] = await rowsFrom(pane, 'TreatmentLog', entries);
  expect(entry).toMatchObject({ Extent: 40_000, Drawn: 'part' });
  await keys.openSection('Today');
  const notice = (await pane.notices()).filter((text) => text.includes('is drawn in part only'));
  expect(notice.length).toBeGreaterThan(0);
  expect(notice.join('\n')).toContain('J-2031');
  await pane.close();
});

test('what is wrong with the form is told with links to the fields, and nothing that was typed is lost', async () => {
  const pane = await openLog(320);
  const { keys, page } = pane;
  const entries = await filledRows(pane, 'TreatmentLog');
  await fillIn(pane, { ...TEARS, extent: '12,5' });
  await keys.press('Enter');
  const summary = page.getByRole('alert').filter({ hasText: 'Please mend this first' });
  await summary.waitFor();
  expect(await summary.evaluate((element) => element === document.activeElement)).toBe(true);
  await keys.activate({ role: 'link', name: /^12,5 can’t be read as a number/ });
  expect(await keys.isOn({ role: 'textbox', name: 'How much' })).toBe(true);
  await keys.openSection('Stock');
  await keys.openSection('Log');
  expect(await page.getByRole('textbox', { name: 'How much' }).inputValue()).toBe('12,5');
  expect(await page.getByRole('combobox', { name: 'Treatment' }).inputValue()).toBe('mending tears');
  expect(await filledRows(pane, 'TreatmentLog')).toBe(entries);
  await keys.fill('How much', '2');
  expect(await shownPlan(pane)).toHaveLength(2);
  await pane.close();
});

test('codes that are scanned one right after the other each land in their field', async () => {
  const pane = await openLog(320);
  const { keys, page } = pane;
  await keys.tabTo({ role: 'combobox', name: 'Job' });
  // All keys are on their way before the page has shown what the first code did.
  const scanned = ['J-2032', 'pressing'].flatMap((code) => [...code, 'Enter']);
  await Promise.all([...scanned, '3'].map((key) => page.keyboard.press(key)));
  await expect.poll(() => page.getByRole('textbox', { name: 'How much' }).inputValue()).toBe('3');
  expect(await page.getByRole('combobox', { name: 'Job' }).inputValue()).toBe('J-2032');
  expect(await page.getByRole('combobox', { name: 'Treatment' }).inputValue()).toBe('pressing');
  await pane.close();
});

test('a posting of long ago is taken back from the list, asked twice, and kept by Escape', async () => {
  const pane = await openLog(320);
  const { keys, page } = pane;
  const movements = await filledRows(pane, 'Movements');
  const [undo] = await page.getByRole('button', { name: /^Undo Count: / }).all();
  const name = (await undo?.getAttribute('aria-label')) ?? '';
  await keys.activate({ role: 'button', name }, { most: 80 });
  const what = name.replace('Undo ', '');
  await expect.poll(() => keys.isOn({ role: 'button', name: `Put back ${what}` })).toBe(true);
  await keys.press('Escape');
  await expect.poll(() => keys.isOn({ role: 'button', name })).toBe(true);
  expect(await filledRows(pane, 'Movements')).toBe(movements);
  await keys.press('Enter');
  await expect.poll(() => keys.isOn({ role: 'button', name: `Put back ${what}` })).toBe(true);
  await keys.press('Enter');
  await pane.says(/^Taken back: 1 movement/);
  expect(await filledRows(pane, 'Movements')).toBe(movements + 1);
  await expect.poll(() => keys.focused()).not.toBe('BODY');
  await pane.close();
});
