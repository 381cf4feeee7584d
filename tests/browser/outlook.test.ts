import { describe, expect, test } from 'vitest';
import { spokenDay } from '../../src/core/day.ts';
import { exactWords } from '../../src/core/forecast/planned-words.ts';
import { batchInWords, servingsInWords, waysInWords } from '../../src/pane/make/make-plan-words.ts';
import { answerInWords, wantInWords } from '../../src/pane/quote/job-words.ts';
import { chartInWords, eventfulDays } from '../../src/pane/stock/projection-words.ts';
import { PanePage } from './helpers/pane-page.ts';
import { materialIn, planInNode } from './helpers/plan-in-node.ts';
import { plain } from './helpers/shown-text.ts';
import { sampleSnapshot } from './helpers/studio-in-node.ts';

/** What the other sections say of the plan: the figures are those that the core gives here. */

const PLAN = planInNode(sampleSnapshot('demo-studio.xlsx'));

async function openAt(section: 'Make' | 'Stock' | 'Quote', width: number): Promise<PanePage> {
  const pane = await PanePage.open({ width });
  await pane.page.getByRole('tab', { name: 'Today' }).waitFor();
  await pane.keys.openSection(section);
  return pane;
}

describe.each([320, 450])('the plan at %i pixels, by keyboard', (width) => {
  test('Make says when to make how much for whom, beside other ways; a batch opens the form', async () => {
    const pane = await openAt('Make', width);
    const { keys, page } = pane;
    const made = PLAN.answer.materials.flatMap(({ make, unit }) => (make === null ? [] : [{ make, unit }]));
    const [first = expect.unreachable()] = made;
    const block = page.getByRole('region', { name: 'When to make' });
    await block.getByText(first.make.material, { exact: true }).waitFor();
    expect((await block.locator('.plan-item').allInnerTexts()).map(plain)).toEqual(
      made.flatMap(({ make, unit }) =>
        make.batches.map((batch) =>
          [
            `${spokenDay(batch.makeOn)}: ${exactWords(batch.quantity, unit)}`,
            'Make it',
            ...servingsInWords(batch, unit),
            batchInWords(batch, unit),
          ].join(' '),
        ),
      ),
    );
    await block.locator('summary').first().focus();
    await keys.press('Enter');
    const ways = await pane.shownTable(`Ways of making ${first.make.material}`);
    expect(
      ways.map(([way = '', time = '', waste = '']) => [way, time, waste].map((each) => each.split('\n')[0])),
    ).toEqual(waysInWords(first.make, first.unit).map(({ name, minutes, waste }) => [name, minutes, waste]));
    const [batch = expect.unreachable()] = first.make.batches;
    const amount = exactWords(batch.quantity, first.unit);
    await keys.activate({
      role: 'button',
      name: `Make it: ${amount} by ${first.make.recipe}, planned for ${spokenDay(batch.makeOn)}`,
    });
    await expect
      .poll(() => page.getByRole('combobox', { name: 'Recipe' }).inputValue())
      .toBe(first.make.recipe);
    await expect.poll(() => keys.isOn({ role: 'textbox', name: 'How much' })).toBe(true);
    expect(Number(await page.getByRole('textbox', { name: 'How much' }).inputValue())).toBeCloseTo(
      batch.quantity,
      6,
    );
    await pane.close();
  });

  test('a material’s page shows what becomes of it, in a chart and in a table, and for whom it is wanted', async () => {
    const pane = await openAt('Stock', width);
    const { keys, page } = pane;
    const plan = materialIn(PLAN, 'kozo tissue 5 g');
    await keys.activate({ role: 'button', name: plan.material });
    await page.getByRole('img', { name: chartInWords(plan) }).waitFor();
    await page.getByText(plan.forecast.sentence).waitFor();
    await page.getByText(plan.level.sentence).waitFor();
    await page.locator('summary').filter({ hasText: 'As a table' }).focus();
    await keys.press('Enter');
    const rows = await pane.shownTable(`Days on which something happens to ${plan.material}`);
    expect(rows.map((cells) => cells.map(plain))).toEqual(
      eventfulDays(plan.projection.days, plan.unit).map(({ day, events, usable }) => [
        spokenDay(day),
        events.join(', '),
        usable,
      ]),
    );
    const demands = PLAN.problem.materials.find(({ material }) => material === plan.material)?.demands ?? [];
    expect(demands.length).toBeGreaterThan(0);
    const wanted = await pane.shownTable('Planned for jobs');
    expect(wanted.map(([job = '', day]) => [job.split('\n')[0], day])).toEqual(
      demands.map(({ job, day }) => [job, spokenDay(day)]),
    );
    expect(await pane.isTooWide()).toBe(false);
    await pane.close();
  });

  test('Quote says whether a job can be done on its day, and what it wants by when', async () => {
    const pane = await openAt('Quote', width);
    const { keys, page } = pane;
    const wanting = PLAN.answer.jobs.find(({ wants }) => wants.length > 0) ?? expect.unreachable();
    const block = page.getByRole('region', { name: 'Can it be done on its day?' });
    await keys.fill('Job', wanting.job, 'combobox');
    await keys.press('Enter');
    await block.getByText(answerInWords(wanting)).waitFor();
    expect((await block.locator('li').allInnerTexts()).map(plain)).toEqual([
      ...wanting.wants.map(wantInWords),
      ...wanting.obstacles,
    ]);
    await keys.fill('Job', 'J-2031', 'combobox');
    await keys.press('Enter');
    const own = PLAN.answer.jobs.find(({ job }) => job === 'J-2031');
    await block.getByText(answerInWords(own ?? expect.unreachable())).waitFor();
    await pane.close();
  });
});
