import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { leftAnswer } from '../../src/actions/cell-answers.ts';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import type { WorkbookSnapshot } from '../../src/workbook/port.ts';
import { fillIn } from './helpers/log-form.ts';
import { PanePage } from './helpers/pane-page.ts';
import { sampleSnapshot, TODAY } from './helpers/studio-in-node.ts';

/** What a cell that asks for the kozo tissue is told, as the core has it. */
function leftIn(snapshot: WorkbookSnapshot): number {
  const books = { ledger: booksOf(snapshot).ledger, stock: checkWorkbook(snapshot, TODAY).stock };
  const answer = leftAnswer(books, 'kozo tissue 5 g', 'cm2');
  if (!('value' in answer)) throw new Error(answer.message);
  return answer.value;
}

async function open(): Promise<PanePage> {
  const pane = await PanePage.open();
  await pane.page.getByRole('tab', { name: 'Today' }).waitFor();
  return pane;
}

describe('the buttons of the ribbon', () => {
  test('one logs what is chosen in the sheet, one checks now; the focus is in the pane afterwards', async () => {
    const pane = await open();
    const { keys, page } = pane;
    const plan = (await pane.snapshot()).tables.find(({ name }) => name === 'Plan');
    await pane.act(({ host }, row) => host.person('pane').select(`Plan!B${row}`), plan?.firstRow);
    await page.getByRole('complementary').getByText('Plan mending tears, 110 cm, J-2031').waitFor();
    await pane.ask(({ ribbon }) => ribbon.press('logFromRow'));
    await page.getByRole('tab', { name: 'Log', selected: true }).waitFor();
    await expect.poll(() => keys.isOn({ role: 'textbox', name: 'How much' })).toBe(true);
    expect(await page.getByRole('textbox', { name: 'How much' }).inputValue()).toBe('110');

    const requests = await pane.ask((bench) => bench.requests());
    await pane.ask(({ ribbon }) => ribbon.press('checkNow'));
    await page.getByRole('tab', { name: 'Today', selected: true }).waitFor();
    expect(await pane.ask((bench) => bench.requests())).toBeGreaterThan(requests);
    await expect.poll(() => keys.isOn({ role: 'heading', name: '16 Nov 2026' })).toBe(true);
    await pane.close();
  });
});

describe('functions in people’s own sheets', () => {
  test('they answer as the core does, say what is wrong, and follow a posting without another reading', async () => {
    const pane = await open();
    const before = leftIn(sampleSnapshot('demo-studio.xlsx'));

    await pane.act((bench) => {
      const call = (name: string, args: readonly (string | number | null)[]) =>
        bench.host.callFunction('pane', name, args, { streaming: true });
      Object.assign(bench, {
        left: call('LEFT', ['kozo tissue 5 g', 'cm2']),
        unknown: call('USABLE', ['no such thing', null]),
      });
    }, null);
    const outcomes = (of: 'left' | 'unknown') =>
      pane.ask(
        of === 'left'
          ? (bench) => (bench as unknown as { left: { outcomes: unknown[] } }).left.outcomes
          : (bench) => (bench as unknown as { unknown: { outcomes: unknown[] } }).unknown.outcomes,
      );
    await expect.poll(() => outcomes('left')).toEqual([{ kind: 'value', value: before }]);
    await expect.poll(() => outcomes('unknown')).toHaveLength(1);
    expect((await outcomes('unknown'))[0]).toMatchObject({
      kind: 'error',
      error: '#VALUE!',
      message: expect.stringContaining('no such thing') as string,
    });

    await pane.keys.openSection('Log');
    await fillIn(pane, { job: 'J-2031', treatment: 'mending tears', extent: '40' });
    await pane.keys.press('Enter');
    await pane.says('Mending tears, 40 cm, for J-2031: taken from');
    await expect.poll(() => outcomes('left')).toHaveLength(2);
    const after = leftIn(await pane.snapshot());
    expect(after).toBeLessThan(before);
    expect((await outcomes('left'))[1]).toEqual({ kind: 'value', value: after });
    // Answers go out as requests too; a reading of the workbook would be several more.
    const requests = await pane.ask((bench) => bench.requests());
    await pane.page.waitForTimeout(600);
    expect(await pane.ask((bench) => bench.requests())).toBe(requests);
    await pane.close();
  });
});
