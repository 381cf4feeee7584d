import { describe, expect, test } from 'vitest';
import { quotePlan } from '../../src/actions/quote-job.ts';
import { moneyText } from '../../src/core/money.ts';
import { seededRandom } from '../../src/core/seeded-random.ts';
import { filledRows, rowsFrom } from './helpers/log-form.ts';
import { PanePage } from './helpers/pane-page.ts';
import { sampleSnapshot, TODAY } from './helpers/studio-in-node.ts';

const quoted = quotePlan(sampleSnapshot('demo-studio.xlsx'), 'J-2031', false, TODAY, seededRandom(1));
if (!quoted.ok) throw new Error(quoted.message);
const { quote } = quoted;

/** An amount as it is shown. */
function money(coins: bigint | null): string {
  return coins === null ? 'not known' : moneyText(coins, { code: 'EUR', decimals: 2 });
}

describe.each([320, 450])('Quote at %i pixels, by keyboard', (width) => {
  test('a job’s plan is costed as the core does, explained, and written down in two versions', async () => {
    const pane = await PanePage.open({ width });
    const { keys, page } = pane;
    await page.getByRole('tab', { name: 'Today' }).waitFor();
    await keys.openSection('Quote');
    await keys.fill('Job', 'J-2031', 'combobox');
    await keys.press('Enter');
    await page.getByRole('heading', { name: 'Quote for J-2031' }).waitFor();

    const lines = await pane.shownTable('Consumables');
    expect(lines.map(([what = '', amount]) => [what.split('\n')[0], amount])).toEqual(
      quote.lines.map(({ material, amount }) => [material.name, money(amount)]),
    );
    await keys.activate({ role: 'button', name: 'How each line came about' });
    const explained = await pane.shownTable('Consumables');
    expect(explained.map(([what = '']) => what.split('\n').at(-1))).toEqual(
      quote.lines.map(({ how }) => `${how}.`),
    );
    const sums = Object.fromEntries((await pane.shownTable('Sums')).map(([name, amount]) => [name, amount]));
    expect(sums).toMatchObject({
      Consumables: money(quote.consumables),
      Markup: money(quote.markup),
      Tax: money(quote.tax),
    });
    const total = page.getByRole('table', { name: 'Sums' }).locator('tfoot').locator('th, td');
    expect(await total.allTextContents()).toEqual(['Total', money(quote.total)]);

    const quotes = await filledRows(pane, 'Quotes');
    const quoteLines = await filledRows(pane, 'QuoteLines');
    await keys.activate({ role: 'button', name: 'Write down as version 1' });
    await pane.says(/^Written down: quote .*, version 1, for J-2031/);
    await keys.activate({ role: 'button', name: 'Write down as version 2' });
    await pane.says(/^Written down: quote .*, version 2, for J-2031/);
    const written = await rowsFrom(pane, 'Quotes', quotes);
    expect(written.map((row) => [row['Version'], row['Job'], row['Total']])).toEqual(
      [1, 2].map((version) => [version, 'J-2031', Number(money(quote.total))]),
    );
    expect(new Set(written.map((row) => row['Quote'])).size).toBe(1);
    const amounts = (await rowsFrom(pane, 'QuoteLines', quoteLines)).map((row) => [
      row['Version'],
      row['Amount'],
    ]);
    expect(amounts).toEqual(
      [1, 2].flatMap((version) => quote.lines.map(({ amount }) => [version, Number(money(amount))])),
    );

    const name = String(written[0]?.['Quote']);
    await keys.activate({ role: 'button', name: `Quote ${name}, version 1: show its row` });
    await expect.poll(() => pane.ask(({ host }) => host.person('pane').selected().sheet)).toBe('Quotes');
    await pane.close();
  });
});

test('a job without a plan says where to write one, and goes there', async () => {
  const pane = await PanePage.open();
  const { keys, page } = pane;
  const planned = new Set((await pane.rows('Plan')).map((row) => row['Job']));
  const job = (await pane.rows('Jobs')).map((row) => String(row['Job'])).find((each) => !planned.has(each));
  await page.getByRole('tab', { name: 'Today' }).waitFor();
  await keys.openSection('Quote');
  await keys.fill('Job', job ?? '', 'combobox');
  await keys.press('Enter');
  await page.getByText(`${job} has no row in the table Plan yet`).waitFor();
  await keys.activate({ role: 'button', name: 'Go to the plan' });
  const { firstRow, rowCount } = (await pane.snapshot()).tables.find(({ name }) => name === 'Plan') ?? {};
  await expect
    .poll(() => pane.ask(({ host }) => host.person('pane').selected()))
    .toEqual({ sheet: 'Plan', row: (firstRow ?? 0) + (rowCount ?? 0), column: 1 });
  await pane.close();
});
