import { describe, expect, test } from 'vitest';
import { filledRows, fillIn, rowsFrom } from './helpers/log-form.ts';
import { PanePage } from './helpers/pane-page.ts';
import { sampleSnapshot } from './helpers/studio-in-node.ts';

/** After how long what is being done is said in words, in milliseconds. */
const SAID_AFTER = 500;

describe('while the workbook is read', () => {
  test('the place is held at once, and what is being done is said once it lasts', async () => {
    const pane = await PanePage.open({ held: true });
    const { page } = pane;
    await page.locator('main[aria-busy="true"] .skeleton').waitFor();
    await page.getByText('Reading the workbook…').waitFor();
    await pane.act(({ host }) => host.deliveries.flow(), null);
    await page.getByRole('tab', { name: 'Today', selected: true }).waitFor();
    expect(await page.getByText('Reading the workbook…').count()).toBe(0);
    await pane.close();
  });

  test('what lasts longer than half a second is said, and nothing else can be begun meanwhile', async () => {
    const pane = await PanePage.open();
    const { keys, page } = pane;
    const check = { role: 'button', name: 'Check now' } as const;
    await page.getByRole('tab', { name: 'Today' }).waitFor();
    await keys.tabTo(check);
    await pane.act(({ host }) => host.deliveries.hold(['response']), null);
    await keys.press('Enter');
    await expect.poll(() => keys.control(check).getAttribute('aria-disabled')).toBe('true');
    await pane.says('Reading the workbook…');
    // The focus stays where it was, on a button that is announced as unavailable and does nothing.
    expect(await keys.isOn(check)).toBe(true);
    const waiting = await pane.ask(({ host }) => host.deliveries.pending.length);
    await keys.press('Enter');
    await page.waitForTimeout(SAID_AFTER);
    expect(await pane.ask(({ host }) => host.deliveries.pending.length)).toBe(waiting);
    await pane.act(({ host }) => host.deliveries.flow(), null);
    await expect.poll(() => keys.control(check).getAttribute('aria-disabled')).toBe(null);
    expect(await keys.isOn(check)).toBe(true);
    await pane.close();
  });
});

describe('when something fails', () => {
  test('a workbook that can’t be read says why, and is read again by one key', async () => {
    const pane = await PanePage.open();
    const { keys, page } = pane;
    await page.getByRole('tab', { name: 'Today' }).waitFor();
    await keys.tabTo({ role: 'button', name: 'Check now' });
    await pane.act(({ host }) => host.setFailure(() => ({ code: 'ConnectionFailure' })), null);
    await keys.press('Enter');
    await page.getByRole('heading', { name: 'The workbook can’t be read' }).waitFor();
    await page.getByText('The connection to the workbook is lost. Try again when it is back.').waitFor();
    // The button that was pressed is gone with all else: the focus is at the head of what took its place.
    await expect.poll(() => keys.focused()).toContain('can’t be read');
    const again = { role: 'button', name: 'Try again' } as const;
    await keys.activate(again);
    await expect.poll(() => keys.control(again).getAttribute('aria-disabled')).toBe(null);
    await pane.act(({ host }) => host.setFailure(undefined), null);
    await keys.activate(again);
    await page.getByRole('tab', { name: 'Today', selected: true }).waitFor();
    await expect.poll(() => keys.focused()).not.toBe('BODY');
    await pane.close();
  });

  test('what can’t be written is told until it is dismissed, and nothing is written', async () => {
    const pane = await PanePage.open();
    const { keys, page } = pane;
    await page.getByRole('tab', { name: 'Today' }).waitFor();
    await keys.openSection('Log');
    await fillIn(pane, { job: 'J-2031', treatment: 'mending tears', extent: '4' });
    const movements = await filledRows(pane, 'Movements');
    const entries = await filledRows(pane, 'TreatmentLog');
    await pane.act(({ host }) => {
      host.setFailure(({ does }) => (does === 'set' ? { code: 'AccessDenied' } : undefined));
    }, null);
    await keys.press('Enter');
    const failure = page.getByRole('alert').filter({ hasText: "The workbook can't be written to" });
    await failure.waitFor();
    expect(await filledRows(pane, 'Movements')).toBe(movements);
    expect(await filledRows(pane, 'TreatmentLog')).toBe(entries);
    expect(await page.getByRole('textbox', { name: 'How much' }).inputValue()).toBe('4');
    await keys.activate({ role: 'button', name: 'Dismiss' }, { most: 80 });
    await failure.waitFor({ state: 'hidden' });
    await expect.poll(() => keys.focused()).not.toBe('BODY');
    await pane.close();
  });
});

describe('tables that are not here', () => {
  test('a workbook without tables gets them by one key, keeps what it held, and can be worked in at once', async () => {
    const pane = await PanePage.open({ workbook: null });
    const { keys, page } = pane;
    await page.getByRole('heading', { name: 'No tables in this workbook yet' }).waitFor();
    const own = [
      ['what', 'how much'],
      ['glue', 3],
      ['sum', '=B2*2'],
    ];
    await pane.act(({ host }, rows) => host.person('pane').paste('Tab 1!A1', rows), own);
    const before = await pane.cells('Tab 1', 'A1:C6');
    await keys.activate({ role: 'button', name: 'Set up the tables' });
    await pane.says(/^Set up: \d+ tables\.$/);
    const here = (await pane.snapshot()).tables.map(({ name }) => name).toSorted();
    const starter = sampleSnapshot('starter.xlsx').tables.map(({ name }) => name);
    expect(here).toEqual(starter.toSorted());
    expect(await pane.cells('Tab 1', 'A1:C6')).toEqual(before);
    expect(await pane.ask(({ host }) => host.workbook.sheets[0]?.name)).toBe('Tab 1');
    await expect.poll(() => keys.focused()).not.toBe('BODY');

    await page.getByText('No lots yet').waitFor();
    await page.getByText('No jobs yet').waitFor();
    await keys.openSection('Stock');
    await keys.activate({ role: 'button', name: 'kozo tissue 5 g' });
    await page.getByText('Give what is on the shelf of it a row in a stock tab.').waitFor();
    await keys.openSection('Quote');
    await page.getByText('Which job?').waitFor();
    await keys.openSection('Log');
    await page.getByText('Nothing has been taken from stock yet.').waitFor();
    await fillIn(pane, { job: 'STUDIO', treatment: 'mending tears', extent: '2' });
    await keys.press('Enter');
    await pane.says(/for STUDIO: nothing taken from stock\. Not covered by any lot:/);
    const [entry] = await rowsFrom(pane, 'TreatmentLog', 0);
    expect(entry).toMatchObject({ Job: 'STUDIO', Treatment: 'mending tears', Extent: 2, Drawn: 'part' });
    await pane.close();
  });

  test('where one table is not here, it alone is set up, and what is here stays', async () => {
    const pane = await PanePage.open();
    const { keys, page } = pane;
    await page.getByRole('tab', { name: 'Today' }).waitFor();
    const lots = await pane.rows('Tissue');
    await pane.act(({ host }) => host.person('pane').renameTable('Movements', 'Elsewhere'), null);
    await keys.activate({ role: 'button', name: 'Check now' });
    await page.getByText('A table is not here yet').waitFor();
    await keys.openSection('Log');
    await page.getByText('Nothing can be logged yet').waitFor();
    await keys.activate({ role: 'button', name: 'Set it up' });
    await pane.says('Set up: 1 table.');
    expect(await filledRows(pane, 'Movements')).toBe(0);
    expect(await filledRows(pane, 'Elsewhere')).toBeGreaterThan(100);
    expect(await pane.rows('Tissue')).toEqual(lots);
    await keys.control({ role: 'button', name: 'Take from stock and log' }).waitFor();
    await pane.close();
  });
});

test('tables of a newer version are read, and nothing can be written', async () => {
  const pane = await PanePage.open();
  const { keys, page } = pane;
  await page.getByRole('tab', { name: 'Today' }).waitFor();
  const notices = await pane.notices();
  expect(await page.getByRole('button', { name: /^Draw/ }).count()).toBeGreaterThan(1);
  const settings = (await pane.snapshot()).tables.find(({ name }) => name === 'Settings');
  const row = settings?.columns[0]?.values.indexOf('tables version') ?? -1;
  expect(row).toBeGreaterThanOrEqual(0);
  await pane.act(
    ({ host }, at) => host.person('pane').type(`Settings!B${at}`, 9),
    (settings?.firstRow ?? 0) + row,
  );
  await page.getByText('Reading only').waitFor();
  expect(await pane.notices()).toEqual(notices);
  expect(await page.getByRole('button', { name: /^(?:Draw|Post|Undo)/ }).count()).toBe(0);
  await keys.openSection('Log');
  const entries = await filledRows(pane, 'TreatmentLog');
  await fillIn(pane, { job: 'J-2031', treatment: 'mending tears', extent: '4' });
  await keys.press('Enter');
  expect(await page.getByRole('button', { name: /^(?:Take from stock|Undo|Draw)/ }).count()).toBe(0);
  await keys.openSection('Quote');
  await page.getByRole('heading', { name: /^Quote for/ }).waitFor();
  expect(await page.getByRole('button', { name: /^Write/ }).count()).toBe(0);
  expect(await filledRows(pane, 'TreatmentLog')).toBe(entries);
  await pane.close();
});
