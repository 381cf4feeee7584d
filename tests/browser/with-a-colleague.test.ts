import { describe, expect, test } from 'vitest';
import { fillIn } from './helpers/log-form.ts';
import { openSample, QUIET, rowBelow } from './helpers/sheet-places.ts';

describe('what somebody else does', () => {
  test('rows that a colleague takes out are offered for writing again, never written by themselves', async () => {
    const pane = await openSample();
    const { keys, page } = pane;
    await keys.openSection('Log');
    await fillIn(pane, { job: 'J-2031', treatment: 'mending tears', extent: '4' });
    await keys.press('Enter');
    await pane.says('Mending tears, 4 cm, for J-2031: taken from');
    const all = await pane.rows('Movements');
    const count = all.length;
    const own = all.slice(-2);
    await pane.act(({ host }, at) => host.person('colleague').deleteTableRows('Movements', at, 2), count - 2);
    await page.getByText('2 rows are gone').waitFor();
    await page.waitForTimeout(QUIET);
    expect(await pane.rows('Movements')).toHaveLength(count - 2);
    await keys.openSection('Log');
    await keys.activate({ role: 'button', name: 'Write them again' });
    await pane.says('Written again: 2 rows.');
    expect((await pane.rows('Movements')).slice(-2)).toEqual(own);
    expect(await page.getByText('are gone').count()).toBe(0);
    await expect.poll(() => keys.focused()).not.toBe('BODY');

    await pane.act(({ host }, at) => host.person('colleague').deleteTableRows('Movements', at, 1), count - 1);
    await page.getByText('1 row is gone').waitFor();
    await keys.openSection('Log');
    await keys.activate({ role: 'button', name: 'Let it go' });
    await page.getByText('is gone').waitFor({ state: 'detached' });
    expect(await pane.rows('Movements')).toHaveLength(count - 1);
    await expect.poll(() => keys.focused()).not.toBe('BODY');
    await pane.close();
  });

  test('a lot that both drew on at the same time is told, and the entry is drawn from another', async () => {
    const pane = await openSample();
    const { keys, page } = pane;
    await keys.openSection('Log');
    await fillIn(pane, { job: 'J-2031', treatment: 'mending tears', extent: '20' });
    await keys.press('Enter');
    await pane.says('Mending tears, 20 cm, for J-2031: taken from');
    const row = await rowBelow(pane, 'Movements');
    const headers = (await pane.snapshot()).tables.find(({ name }) => name === 'Movements')?.columns ?? [];
    const taken: Record<string, string | number> = {
      Movement: 'M-COLLEAGUE',
      Date: '2026-11-16',
      Kind: 'Use',
      Lot: 'T-002',
      Quantity: 40,
      Unit: 'cm2',
      Job: 'J-2032',
    };
    await pane.act(({ host }, { at, cells }) => host.person('colleague').paste(`Movements!A${at}`, [cells]), {
      at: row,
      cells: headers.map(({ header }) => taken[header] ?? ''),
    });
    await page.getByText('Lot T-002 was drawn on twice at the same time').waitFor();
    await keys.openSection('Log');
    await keys.activate({ role: 'button', name: 'Take it from another lot' });
    await page.getByText('drawn on twice').waitFor({ state: 'detached' });
    const lot = (await pane.check()).stock.lots.find((each) => each.lot.name === 'T-002');
    expect(lot?.left.compare(0)).toBeGreaterThanOrEqual(0);
    await pane.close();
  });
});
