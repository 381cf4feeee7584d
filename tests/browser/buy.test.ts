import { describe, expect, test } from 'vitest';
import type { Basket } from '../../src/core/buying/basket.ts';
import { offerFor } from '../../src/core/buying/wishes.ts';
import { isoDay, spokenDay } from '../../src/core/day.ts';
import { moneyText } from '../../src/core/money.ts';
import { dearestOf, togetherWords, yearlyUseWords } from '../../src/core/planning/year-words.ts';
import { serialOfDay } from '../../src/core/serial-date.ts';
import { goingOffIn, pressingIn } from '../../src/pane/buy/pressing.ts';
import { lineReasons } from '../../src/pane/buy/reasons.ts';
import { STUDIO, TODAY as STUDIO_DAY } from '../helpers/studio.ts';
import { xlsxOf } from '../helpers/xlsx.ts';
import { filledRows, rowsFrom } from './helpers/log-form.ts';
import { type PaneOptions, PanePage } from './helpers/pane-page.ts';
import { basketInNode, planInNode } from './helpers/plan-in-node.ts';
import { plain } from './helpers/shown-text.ts';
import { SAMPLE_DAY, sampleSnapshot, TODAY } from './helpers/studio-in-node.ts';

const PLAN = planInNode(sampleSnapshot('demo-studio.xlsx'));

async function openBuy(options: PaneOptions = {}): Promise<PanePage> {
  const pane = await PanePage.open(options);
  await pane.page.getByRole('tab', { name: 'Today' }).waitFor();
  await pane.keys.openSection('Buy');
  return pane;
}

function money(coins: number): string {
  return moneyText(BigInt(Math.round(coins)), { code: 'EUR', decimals: 2 });
}

/** The lines of the basket as they are shown, by supplier: in one look, as they may be put anew at any moment. */
async function shownBasket({ page }: PanePage) {
  const blocks = await page.getByRole('region', { name: /^From / }).evaluateAll((found) => {
    const textsIn = (element: Element, selector: string): string[] =>
      [...element.querySelectorAll(selector)].map(({ textContent }) => textContent);
    return found.map((block) => ({
      supplier: block.getAttribute('aria-label')?.replace('From ', ''),
      lines: [...block.querySelectorAll('.plan-item')].map((line) => ({
        material: textsIn(line, '.plan-link')[0] ?? '',
        packs: Number(line.querySelector<HTMLInputElement>('input[inputmode=numeric]')?.value),
        amount: textsIn(line, '.plan-item-head .figure')[0] ?? '',
        reasons: textsIn(line, '.plain-list > li'),
      })),
      sums: textsIn(block, '.basket-sum dd'),
    }));
  });
  return blocks.map(({ supplier, lines, sums }) => ({
    supplier,
    lines: lines.map(({ material, packs, amount, reasons }) => ({
      material: plain(material),
      packs,
      amount: plain(amount),
      reasons: reasons.map(plain),
    })),
    sums: sums.map(plain),
  }));
}

/** The same of a basket that was worked out here. */
function basketInWords({ orders }: Basket) {
  return orders.map(({ supplier, lines, goods, carriage }) => ({
    supplier,
    lines: lines.map((line) => ({
      material: line.material,
      packs: line.packs,
      amount: money(line.amount),
      reasons: lineReasons(
        line,
        [...PLAN.answer.needs, ...PLAN.answer.besides].find(({ material }) => material === line.material),
      ),
    })),
    sums: [money(goods), money(carriage), `${money(goods + carriage)} EUR`],
  }));
}

describe.each([320, 450])('Buy at %i pixels, by keyboard', (width) => {
  test('what runs out and what to order are the core’s; a number set by hand is priced, and put back', async () => {
    const pane = await openBuy({ width });
    const { keys, page } = pane;
    const suggested = await basketInNode(PLAN);
    await expect.poll(() => shownBasket(pane)).toEqual(basketInWords(suggested));
    const pressing = await page.getByRole('region', { name: 'What will run out' }).locator('.notice').all();
    const shown = await Promise.all(
      pressing.map(async (item) => (await item.locator('p').allInnerTexts()).map(plain)),
    );
    expect(shown).toEqual(
      pressingIn(PLAN.answer).map(({ material, hits, standing }) =>
        [material, hits, standing].filter((each) => each !== null),
      ),
    );
    const goesOff = page.locator('summary').filter({ hasText: 'What will go off unused' });
    await goesOff.focus();
    await keys.press('Enter');
    const rows = await pane.shownTable('What will go off unused');
    expect(rows.map(([what = '', quantity]) => [what.split('\n')[0], quantity])).toEqual(
      goingOffIn(PLAN.answer).map(({ material, quantity }) => [material, quantity]),
    );

    const [order] = suggested.orders;
    const [line = expect.unreachable()] = order?.lines ?? [];
    const of = `${line.material} from ${order?.supplier}`;
    await keys.activate({ role: 'button', name: `One pack more of ${of}` }, { most: 60 });
    const byHand = await basketInNode(PLAN, [{ offer: line.offer, packs: line.packs + 1 }]);
    await expect.poll(() => shownBasket(pane)).toEqual(basketInWords(byHand));
    expect(await keys.isOn({ role: 'button', name: `One pack more of ${of}` })).toBe(true);
    await page.getByText('set by hand').waitFor();
    const field = page.getByRole('textbox', { name: `${of}: packs of ${line.packWords}` });
    await keys.tabTo({ role: 'textbox', name: `${of}: packs of ${line.packWords}` }, { back: true });
    await keys.type('two');
    await keys.press('Enter');
    await page.getByText('two is no number of packs: a whole number is right, 0 for none.').waitFor();
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    await keys.type('0');
    await keys.press('Enter');
    const without = await basketInNode(PLAN, [{ offer: line.offer, packs: 0 }]);
    const left = basketInWords(without).map((each) => ({
      ...each,
      lines: each.lines.filter(({ packs }) => packs > 0),
    }));
    await expect.poll(() => shownBasket(pane)).toEqual(left);
    await page.getByText('Left out by hand').waitFor();
    for (const { sentence } of without.remarks) await page.getByText(sentence).waitFor();
    await expect.poll(() => keys.focused()).not.toBe('BODY');
    await keys.activate({ role: 'button', name: `Back to the suggestion: ${line.material}` }, { most: 60 });
    await expect.poll(() => shownBasket(pane)).toEqual(basketInWords(suggested));
    await expect.poll(() => keys.focused()).not.toBe('BODY');
    await pane.close();
  });

  test('an order is written and its text shown; what comes of it is taken into stock in two lots, and taken back', async () => {
    const pane = await openBuy({ width });
    const { keys, page } = pane;
    const [order = expect.unreachable()] = (await basketInNode(PLAN)).orders;
    const orders = await filledRows(pane, 'Orders');
    const orderLines = await filledRows(pane, 'OrderLines');
    const button = { role: 'button', name: `Order from ${order.supplier}` } as const;
    await keys.control(button).waitFor();
    await keys.activate(button, { most: 60 });
    await pane.says(/^Written down: order /);
    const [head, ...more] = await rowsFrom(pane, 'Orders', orders);
    expect(more).toEqual([]);
    expect(head).toMatchObject({
      Supplier: order.supplier,
      'Ordered on': serialOfDay(TODAY, 1900),
      Expected: serialOfDay(order.expected, 1900),
      State: 'Ordered',
    });
    const name = String(head?.['Order']);
    expect(
      (await rowsFrom(pane, 'OrderLines', orderLines)).map((row) => [
        row['Order'],
        row['Material'],
        row['Packs'],
      ]),
    ).toEqual(order.lines.map(({ material, packs }) => [name, material, packs]));

    await expect
      .poll(() => keys.isOn({ role: 'heading', name: `Text to send to ${order.supplier}` }))
      .toBe(true);
    const text = await page.getByRole('textbox', { name: `Order ${name}` }).inputValue();
    for (const { material, packs } of order.lines) {
      expect(text).toContain(material);
      expect(text).toMatch(new RegExp(`: ${packs} packs? of `));
    }
    await keys.activate({ role: 'button', name: 'Copy' });
    await page.getByText(/^(?:Copied: paste it|This pane may not copy)/).waitFor();
    await keys.activate({ role: 'button', name: `Put away the text of order ${name}` });
    await expect.poll(() => page.getByRole('textbox', { name: `Order ${name}` }).count()).toBe(0);
    await expect.poll(() => keys.focused()).not.toBe('BODY');

    // It is on its way now, and not suggested again.
    const [line = expect.unreachable()] = order.lines;
    await expect
      .poll(async () =>
        (await shownBasket(pane)).flatMap(({ lines }) => lines.map(({ material }) => material)),
      )
      .not.toContain(line.material);
    const receive = { role: 'button', name: `Receive… order ${name}` } as const;
    await keys.activate(receive, { most: 80 });
    const packs = { role: 'textbox', name: `Packs of ${line.packWords}` } as const;
    await expect.poll(() => keys.isOn(packs)).toBe(true);
    await keys.press('Escape');
    await expect.poll(() => keys.isOn(receive)).toBe(true);
    await keys.press('Enter');
    await expect.poll(() => keys.isOn(packs)).toBe(true);
    await keys.type('many');
    await keys.press('Enter');
    const summary = page.getByRole('alert').filter({ hasText: 'Please mend this first' });
    await summary.waitFor();
    expect(await summary.evaluate((element) => element === document.activeElement)).toBe(true);
    await keys.activate({ role: 'link', name: /^many can’t be read as a number/ });
    await keys.type('0.5');
    await keys.fill('Supplier’s lot (optional)', 'S-17');
    await keys.activate({ role: 'button', name: `Another lot of it: ${line.material}` });
    await expect.poll(() => keys.focused()).toMatch(/^input/);
    await keys.type('0.25');
    await keys.fill('Carriage charged (optional)', '6');
    const before = (await pane.check()).stock.lots.length;
    await keys.press('Enter');
    await pane.says(`Received of order ${name}: `);
    const { stock } = await pane.check();
    const lots = stock.lots.filter(({ lot }) => lot.record.order === name);
    expect(stock.lots).toHaveLength(before + 2);
    expect(lots.map(({ left }) => left.valueOf())).toEqual([
      line.packQuantity * 0.5,
      line.packQuantity * 0.25,
    ]);
    expect(lots.map(({ lot }) => lot.record.supplierLot)).toEqual(['S-17', null]);
    const cost = lots.reduce((sum, { lot }) => sum + Number(lot.record.cost), 0);
    expect(cost).toBeCloseTo((line.packPrice * 0.75) / 100 + 6, 9);
    await page.getByText(spokenDay(order.expected)).first().waitFor();

    await keys.activate({ role: 'button', name: /^Undo: Received/ }, { most: 90 });
    await pane.says('Taken back');
    const after = (await pane.check()).stock.lots.filter(({ lot }) => lot.record.order === name);
    expect(after.filter(({ left }) => left.compare(0) > 0)).toEqual([]);
    await expect.poll(() => keys.focused()).not.toBe('BODY');

    // Nothing more of it comes: asked twice, and then it is suggested again.
    const cancel = { role: 'button', name: `Cancel… order ${name}` } as const;
    await keys.activate(cancel, { most: 90 });
    await expect.poll(() => keys.isOn({ role: 'button', name: `Cancel order ${name}` })).toBe(true);
    await keys.press('Escape');
    await page.getByRole('button', { name: `Receive… order ${name}` }).waitFor();
    await keys.activate(cancel, { most: 90 });
    await expect.poll(() => keys.isOn({ role: 'button', name: `Cancel order ${name}` })).toBe(true);
    await keys.press('Enter');
    await pane.says(`Cancelled: order ${name} of ${order.supplier}.`);
    await page.getByRole('button', { name: `Receive… order ${name}` }).waitFor({ state: 'detached' });
    await expect
      .poll(async () =>
        (await shownBasket(pane)).flatMap(({ lines }) => lines.map(({ material }) => material)),
      )
      .toContain(line.material);
    await expect.poll(() => keys.focused()).not.toBe('BODY');

    await keys.openSection('Log');
    const written = page.locator('.log-posting').filter({ hasText: `Received: ${line.material}` });
    await written.getByText('Taken back since: not received after all.').waitFor();
    await pane.close();
  });
});

test('something that nothing asks for is ordered as well, and taken off again; what the year costs is shown', async () => {
  const pane = await openBuy({ width: 320 });
  const { keys, page } = pane;
  const suggested = await basketInNode(PLAN);
  await expect.poll(() => shownBasket(pane)).toEqual(basketInWords(suggested));
  const beside = PLAN.answer.besides.find(({ material }) => material === 'gelatine') ?? expect.unreachable();
  const ordering = suggested.orders.map(({ supplier }) => supplier);
  const offer = offerFor(beside, 1, ordering) ?? expect.unreachable();
  const more = { role: 'button', name: 'Order something else as well' } as const;
  await keys.activate(more, { most: 80 });
  await expect.poll(() => keys.isOn({ role: 'combobox', name: 'What else to order' })).toBe(true);
  await keys.type('gelat');
  await keys.press('Enter');
  const withIt = await basketInNode(PLAN, [{ offer: offer.offer, packs: 1 }]);
  await expect.poll(() => shownBasket(pane)).toEqual(basketInWords(withIt));
  await expect.poll(() => keys.isOn(more)).toBe(true);
  const block = page.getByRole('region', { name: `From ${offer.supplier}` });
  await block.getByText('Added by hand: the plan does not ask for it now.').waitFor();
  await keys.activate(
    { role: 'button', name: `One pack more of gelatine from ${offer.supplier}` },
    { back: true, most: 80 },
  );
  const two = await basketInNode(PLAN, [{ offer: offer.offer, packs: 2 }]);
  await expect.poll(() => shownBasket(pane)).toEqual(basketInWords(two));
  await keys.activate({ role: 'button', name: 'Take it off: gelatine' }, { most: 80 });
  await expect.poll(() => shownBasket(pane)).toEqual(basketInWords(suggested));
  await expect.poll(() => keys.focused()).not.toBe('BODY');

  await page.locator('summary').filter({ hasText: 'Over a year at this pace' }).focus();
  await keys.press('Enter');
  const year = await pane.shownTable('Most of the money goes into');
  expect(year.map(([name = '', use]) => [name.split('\n')[0], use])).toEqual(
    dearestOf(PLAN.answer.year).map((each) => [each.material, yearlyUseWords(each)]),
  );
  for (const each of PLAN.answer.year.suppliers) {
    await page.getByText(togetherWords(each, { code: 'EUR', decimals: 2 })).waitFor();
  }
  expect(await pane.violations()).toEqual([]);
  expect(await pane.isTooWide()).toBe(false);
  await pane.close();
});

describe('what may be in the way', () => {
  const WORKER = /planner-worker-[\w-]+\.js$/;
  const script = (body: string) => ({ status: 200, contentType: 'text/javascript', body });

  test('a plan that takes long says how far it is, and is stopped and asked again', async () => {
    const pane = await PanePage.open();
    const { keys, page } = pane;
    await page.getByRole('tab', { name: 'Today' }).waitFor();
    const told =
      'onmessage = ({ data }) => postMessage({ id: data.id, kind: "progress", done: 3, all: 12 });';
    await page.route(WORKER, (route) => route.fulfill(script(told)));
    await keys.openSection('Buy');
    await page.getByText('Working out the plan: material 3 of 12').waitFor();
    expect(await page.getByRole('progressbar').getAttribute('value')).toBe('3');
    expect(await pane.violations()).toEqual([]);
    await keys.activate({ role: 'button', name: 'Cancel' });
    await page.getByText('The plan was not worked out to its end').waitFor();
    await expect.poll(() => keys.focused()).not.toBe('BODY');
    await page.unroute(WORKER);
    await keys.activate({ role: 'button', name: 'Work it out again' });
    await page
      .getByRole('button', { name: /^Order from/ })
      .first()
      .waitFor();
    await expect.poll(() => keys.focused()).not.toBe('BODY');
    await pane.close();
  });

  test('a worker that can’t be loaded, or stops, is told, and can be tried again', async () => {
    const pane = await PanePage.open();
    const { keys, page } = pane;
    await page.getByRole('tab', { name: 'Today' }).waitFor();
    await page.route(WORKER, (route) =>
      route.fulfill(script('onmessage = () => { throw new Error("worn out"); };')),
    );
    await keys.openSection('Buy');
    await page.getByText('The plan could not be worked out').waitFor();
    await page.getByText('worn out').waitFor();
    expect(await pane.violations()).toEqual([]);
    await page.unroute(WORKER);
    await keys.activate({ role: 'button', name: 'Work it out again' });
    await page
      .getByRole('button', { name: /^Order from/ })
      .first()
      .waitFor();
    // The browser tells the fault of the worker itself.
    expect(pane.failures.splice(0).every((failure) => failure.includes('worn out'))).toBe(true);
    await pane.close();
  });

  test('a workbook that is only read shows the basket, and offers nothing that writes', async () => {
    const pane = await openBuy();
    const { page } = pane;
    const settings = (await pane.snapshot()).tables.find(({ name }) => name === 'Settings');
    const row = settings?.columns[0]?.values.indexOf('tables version') ?? -1;
    const cell = { row: (settings?.firstRow ?? 0) + row, tab: settings?.tab ?? '' };
    await pane.act(({ host }, { tab, row: at }) => host.person('pane').type(`${tab}!B${at}`, 99), cell);
    await page.getByText('Reading only').waitFor();
    await page
      .getByRole('region', { name: /^From / })
      .first()
      .waitFor();
    expect(await page.getByRole('button', { name: /^(?:Order from|Receive…)/ }).count()).toBe(0);
    await pane.close();
  });

  test('where nothing is offered yet, that is said once, and the tab for it is shown', async () => {
    const pane = await openBuy({ workbook: 'starter.xlsx' });
    const { keys, page } = pane;
    await page.getByText('Nobody sells these yet').waitFor();
    await page.getByText('Nothing is on order.').waitFor();
    expect(await pane.violations()).toEqual([]);
    await keys.activate({ role: 'button', name: 'Show the tab Offers' });
    await expect
      .poll(async () => (await pane.ask(({ host }) => host.person('pane').selected())).sheet)
      .toBe('Offers');
    await pane.close();
  });

  test('where nothing is wanted, that is said', async () => {
    const pane = await openBuy({ workbook: xlsxOf(STUDIO), today: STUDIO_DAY });
    const { page } = pane;
    await page.getByText('Nothing will run out', { exact: false }).waitFor();
    await page.getByText('Nothing has to be ordered now').waitFor();
    await page.getByText('Nothing is on order.').waitFor();
    expect(await pane.violations()).toEqual([]);
    await pane.close();
  });

  test('an order that is late is marked, and counts as many days as it is', async () => {
    const pane = await openBuy({ today: '2026-12-04' });
    await pane.page
      .getByText(/days late: expected on 2[57] Nov 2026/)
      .first()
      .waitFor();
    await pane.close();
  });
});

test('the day of the sample is the day that is planned from', () => {
  expect(isoDay(PLAN.answer.today)).toBe(SAMPLE_DAY);
});
