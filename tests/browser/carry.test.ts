import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { quantityNumber } from '../../src/core/exact-number.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import { dayOf } from '../helpers/literal.ts';
import { xlsxOf } from '../helpers/xlsx.ts';
import { YEARS } from '../helpers/years.ts';
import { MACHINE_DAY, PreviewPage } from './helpers/preview-page.ts';
import { MODES } from './helpers/preview-site.ts';

const FILE = xlsxOf(YEARS);
const DAY = dayOf(MACHINE_DAY);

function figures(bytes: Uint8Array) {
  return checkWorkbook(openXlsx(bytes).snapshot(), DAY).stock.lots.map(({ lot, left, goodUntil, worth }) => [
    lot.name,
    quantityNumber(left),
    goodUntil,
    worth,
  ]);
}

function movements(bytes: Uint8Array): number {
  return (
    openXlsx(bytes)
      .snapshot()
      .tables.find(({ name }) => name === 'Movements')?.rowCount ?? 0
  );
}

describe.each(MODES)('carrying over from the pane, %s', (mode) => {
  let preview: PreviewPage;
  beforeAll(async () => {
    preview = await PreviewPage.open(mode);
  });
  afterAll(() => preview.close());

  test('makes a new workbook with the same figures, by keyboard; a day that is none is refused', async () => {
    await preview.openFile('bench.xlsx', FILE);
    await preview.says('bench.xlsx is open.');
    await preview.paneIsOpen();
    await preview.goTo('pane');
    await preview.paneKeys.openSection('Stock');
    await preview.paneKeys.activate({ role: 'button', name: 'Closing stock…' });
    await preview.paneKeys.activate({ role: 'button', name: 'New workbook…' });
    const { frame, page } = preview;
    await frame.getByRole('heading', { name: 'Carry over to a new workbook' }).waitFor();
    await frame
      .getByText(/movements of \d+ lots folded into \d+ Carried movements/)
      .first()
      .waitFor();

    let downloads = 0;
    page.on('download', () => {
      downloads += 1;
    });
    const day = frame.getByLabel('As of', { exact: true });
    const refusal = frame.getByText('Give a day of the calendar, today or before.');
    for (const none of ['', '2026-11-26']) {
      await day.fill(none);
      await refusal.waitFor();
      await preview.paneKeys.activate({ role: 'button', name: 'Make the new workbook' });
      await day.fill(MACHINE_DAY);
      await refusal.waitFor({ state: 'hidden' });
    }

    const downloaded = page.waitForEvent('download');
    await preview.paneKeys.activate({ role: 'button', name: 'Make the new workbook' });
    const download = await downloaded;
    await preview.paneSays(/^Carried over to 25 Nov 2026: the new workbook is /);
    expect(downloads).toBe(1);
    if (mode === 'direct') expect(download.suggestedFilename()).toBe(`bench from ${MACHINE_DAY}.xlsx`);
    const made = new Uint8Array(readFileSync(await download.path()));
    expect(figures(made)).toEqual(figures(FILE));
    expect(movements(made)).toBeLessThan(movements(FILE));
    // The open workbook is the old one, with nothing to save.
    expect(await page.locator('.toolbar-name').textContent()).toBe('bench.xlsx');
    expect(movements((await preview.save()).bytes)).toBe(movements(FILE));

    await preview.openFile('next.xlsx', made);
    await preview.says('next.xlsx is open.');
    await preview.paneIsOpen();
  });
});
