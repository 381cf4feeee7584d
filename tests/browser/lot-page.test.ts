import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { spokenDay } from '../../src/core/day.ts';
import { accountIn } from '../../src/core/ledger.ts';
import { lifeLimitsOn } from '../../src/core/life.ts';
import { moneyText } from '../../src/core/money.ts';
import { costPerUse, usesLeft } from '../../src/core/uses.ts';
import { spokenNumber, spokenQuantity } from '../../src/core/wording.ts';
import { today } from '../helpers/opened-session.ts';
import { factsIn } from './helpers/facts.ts';
import { checkNow, leftNow, openLotPage, openShelves } from './helpers/shelves-page.ts';

describe.each([320, 450])('A lot at %i pixels, by keyboard', (width) => {
  test('shows which limit ends its life, its uses and its pH as the core has them', async () => {
    const pane = await openShelves({ width });
    const { ledger } = booksOf(await pane.snapshot());
    const { currency } = ledger.studio.settings;
    const lotCalled = (name: string) => {
      const lot = ledger.studio.lotsByKey.get(name.toLowerCase());
      if (lot === undefined) throw new Error(`There is no lot ${name}`);
      return { lot, account: accountIn(ledger, lot) };
    };
    await openLotPage(pane, 'P-1');
    const [limit] = lifeLimitsOn(lotCalled('P-1').account, today);
    expect((await factsIn(pane))['Good until']).toBe(
      `${spokenDay(limit?.day ?? today)} ${limit?.reason ?? ''}`,
    );
    await pane.keys.press('Escape', 'Escape');
    await openLotPage(pane, 'R-2');
    const { lot, account } = lotCalled('R-2');
    const cost = costPerUse(lot, currency);
    expect(await factsIn(pane)).toMatchObject({
      'Uses left': `${spokenNumber(usesLeft(account, today) ?? lot.record.quantity)} uses of 40 uses`,
      'Cost per use': `${moneyText(cost ?? 0n, currency)} EUR`,
    });
    await openLotPage(pane, 'B-1');
    expect((await factsIn(pane))['pH']).toBe('6.9 outside 7.5 to 9');
    await pane.close();
  });

  test('is counted by the weight of its jar; a refusal shows in the form; Undo takes it back', async () => {
    const pane = await openShelves({ width });
    const { keys, page } = pane;
    await openLotPage(pane, 'G-1');
    const opener = { role: 'button', name: 'Set right by a count…' } as const;
    await keys.activate(opener);
    await expect.poll(() => keys.isOn({ role: 'textbox', name: /^Weight with the jar/ })).toBe(true);
    // Escape closes the form alone, and the focus goes back to what opened it.
    await keys.press('Escape');
    await expect.poll(() => keys.isOn(opener)).toBe(true);
    await keys.press('Enter');
    await expect.poll(() => keys.isOn({ role: 'textbox', name: /^Weight with the jar/ })).toBe(true);
    await keys.type('100');
    await keys.press('Enter');
    await page.getByText(/and the empty jar alone 112.4 g: one of the two is wrong/).waitFor();
    expect(await page.locator('.failure').count()).toBe(0);
    expect(await leftNow(pane, 'G-1')).toBe(150);
    await keys.fill(/^Weight with the jar/, '252.4');
    await keys.press('Enter');
    await pane.says('Counted: lot G-1, 140 g: 10 g less than expected, worth 2.00 EUR.');
    expect(await leftNow(pane, 'G-1')).toBe(140);
    const figures = (await checkNow(pane)).stock.lots.find(({ lot }) => lot.name === 'G-1');
    expect(await factsIn(pane)).toMatchObject({
      Left: figures === undefined ? '' : spokenQuantity(figures.left, figures.lot.record.unit),
      Worth: '28.00 EUR',
    });
    await keys.activate({ role: 'button', name: /^Undo: Counted/ });
    await pane.says(/^Taken back/);
    expect(await leftNow(pane, 'G-1')).toBe(150);
    await pane.close();
  });

  test('a container is opened, a lot tested, wet sheets set aside and put back', async () => {
    const pane = await openShelves({ width });
    const { keys, page } = pane;
    await openLotPage(pane, 'G-1');
    await keys.activate({ role: 'button', name: 'Open it…' });
    await expect.poll(() => keys.focused()).toMatch(/^input/);
    const amount = page.getByRole('textbox', { name: /^How much is in what you open/ });
    expect(await amount.inputValue()).toBe('50');
    await keys.press('Enter');
    await pane.says(/^Opened: 50 g of lot G-1, which is lot \w+ now\.$/);
    expect(await leftNow(pane, 'G-1')).toBe(100);
    await openLotPage(pane, 'B-1');
    await keys.activate({ role: 'button', name: 'Retested…' });
    await keys.fill('By whom', 'A. K.');
    await keys.press('Enter');
    await page.getByText('Give a day of the calendar.').waitFor();
    await page.getByLabel('Good until').fill('2026-06-30');
    await keys.fill(/^pH/, '8.1');
    await keys.press('Enter');
    await pane.says('Retested: lot B-1 by A. K., good until 30 Jun 2026.');
    expect(await factsIn(pane)).toMatchObject({
      'Good until': '30 Jun 2026 retested 3 Apr 2026 by A. K.',
      Retested: '3 Apr 2026 by A. K.',
      pH: '8.1 within 7.5 to 9',
    });
    await openLotPage(pane, 'R-2');
    await keys.activate({ role: 'button', name: 'Wet: out of action…' });
    await expect.poll(() => keys.focused()).toMatch(/^input/);
    await keys.press('Enter');
    await pane.says('Set aside while wet: lot R-2.');
    await keys.activate({ role: 'button', name: 'Back in use…' });
    await keys.fill(/^Uses that come back/, '5');
    await keys.press('Enter');
    await pane.says('Back in use: lot R-2, dried, 5 uses put back.');
    expect(await leftNow(pane, 'R-2')).toBe(3.9);
    await pane.close();
  });
});

test('what has gone off is thrown away in one go, without what is left out, and can be taken back', async () => {
  const pane = await openShelves();
  const { keys, page } = pane;
  await keys.activate({ role: 'button', name: 'Throw away what has expired…' });
  await expect.poll(() => keys.isOn({ role: 'checkbox', name: /^P-0 Wheat starch paste/ })).toBe(true);
  await page.getByText('Throw it away by your local rules', { exact: false }).waitFor();
  await page.getByText('1 lot, the studio’s loss').waitFor();
  await keys.press('Space');
  await page.getByText('0 lots, the studio’s loss').waitFor();
  await keys.press('Space', 'Enter');
  await pane.says('Thrown away: lot P-0, worth 0.60 EUR.');
  expect(await leftNow(pane, 'P-0')).toBe(0);
  const waste = (await pane.rows('Movements')).filter((row) => row['Kind'] === 'Waste');
  expect(waste.map((row) => [row['Lot'], row['Quantity'], row['Job']])).toEqual([['P-0', 50, undefined]]);
  expect((await checkNow(pane)).notices.filter(({ code }) => code === 'expired')).toEqual([]);
  await expect.poll(() => keys.focused()).not.toBe('BODY');
  await keys.activate({ role: 'button', name: /^Undo: Thrown away/ });
  await pane.says(/^Taken back/);
  expect(await leftNow(pane, 'P-0')).toBe(50);
  // A pH outside its limits leads to the lot.
  await keys.openSection('Today');
  await keys.activate({ role: 'button', name: 'Show the lot: B-1' });
  await expect.poll(() => keys.isOn({ role: 'heading', name: 'Lot B-1' })).toBe(true);
  await pane.close();
});
