import { describe, expect, test } from 'vitest';
import { filledRows, rowsFrom } from './helpers/log-form.ts';
import type { PanePage } from './helpers/pane-page.ts';
import { cellOf, openSample, QUIET, rowBelow } from './helpers/sheet-places.ts';
import { textOf } from './helpers/shown-text.ts';
import { stockIn, stockInWords } from './helpers/stock-words.ts';

async function toDraw({ page }: PanePage): Promise<number> {
  const label = await textOf(page.getByRole('button', { name: /^Draw all \d+$/ }));
  return Number(label.replace('Draw all ', ''));
}

describe('what a person does in the sheet', () => {
  test('rows typed and pasted into the treatment log are waiting to be drawn, and one button draws them', async () => {
    const pane = await openSample();
    const { keys } = pane;
    const before = await toDraw(pane);
    const row = await rowBelow(pane, 'TreatmentLog');
    await pane.act(({ host }, at) => {
      const person = host.person('pane');
      person.paste(`TreatmentLog!B${at}`, [['2026-11-16', 'J-2031', '', 'mending tears', 3]]);
    }, row);
    await expect.poll(() => toDraw(pane)).toBe(before + 1);

    const requests = await pane.ask((bench) => bench.requests());
    await pane.act(({ host }, at) => {
      const rows = Array.from({ length: 50 }, () => ['2026-11-16', 'J-2031', '', 'mending tears', 1]);
      host.person('pane').paste(`TreatmentLog!B${at}`, rows);
    }, row + 1);
    await expect.poll(() => toDraw(pane)).toBe(before + 51);
    // One reading for all of it.
    await pane.page.waitForTimeout(QUIET);
    expect((await pane.ask((bench) => bench.requests())) - requests).toBeLessThanOrEqual(4);

    const movements = await filledRows(pane, 'Movements');
    await keys.activate({ role: 'button', name: `Draw all ${before + 51}` });
    await pane.says(/entries: taken from/);
    const drawn = new Set((await rowsFrom(pane, 'Movements', movements)).map((each) => each['Entry']));
    expect(drawn.size).toBeGreaterThanOrEqual(51);
    expect((await rowsFrom(pane, 'TreatmentLog', 0)).slice(-51).map((each) => each['Drawn'])).toEqual(
      Array.from({ length: 51 }, () => 'yes'),
    );

    // What it wrote itself tells it nothing new.
    const written = await pane.ask((bench) => bench.requests());
    await pane.page.waitForTimeout(QUIET);
    expect(await pane.ask((bench) => bench.requests())).toBe(written);

    // Undo in the spreadsheet: the figures follow, and nothing is asked.
    expect(await pane.ask(({ host }) => host.person('pane').undo())).toBe(true);
    await expect.poll(async () => (await pane.notices()).join('\n')).toContain('is not drawn yet');
    await pane.page.waitForTimeout(QUIET);
    expect(await pane.page.getByRole('button', { name: /again$/ }).count()).toBe(0);
    await keys.openSection('Stock');
    expect(await stockIn(pane.page)).toEqual(stockInWords(await pane.check()));
    await pane.close();
  });

  test('a count typed over Left is offered as a Count, and a changed extent as the difference', async () => {
    const pane = await openSample();
    const { keys } = pane;
    const left = await cellOf(pane, 'Paste', 'Left', { Lot: 'P-027' });
    await pane.act(({ host }, cell) => host.person('pane').type(cell, 150), left);
    const count = { role: 'button', name: 'Post the count: P-027' } as const;
    await keys.control(count).waitFor();
    const movements = await filledRows(pane, 'Movements');
    await keys.activate(count);
    await pane.says(/^Counted: lot P-027/);
    const [posted] = await rowsFrom(pane, 'Movements', movements);
    expect(posted).toMatchObject({ Kind: 'Count', Lot: 'P-027' });
    const lot = (await pane.check()).stock.lots.find((each) => each.lot.name === 'P-027');
    expect(lot?.left.valueOf()).toBe(150);
    expect(await keys.control(count).count()).toBe(0);

    const last = (await rowsFrom(pane, 'TreatmentLog', 0)).findLast((each) => each['Drawn'] === 'yes');
    const entry = String(last?.['Entry']);
    const less = Number(last?.['Extent']) / 2;
    const extent = await cellOf(pane, 'TreatmentLog', 'Extent', { Entry: entry });
    await pane.act(({ host }, [cell, value]) => host.person('pane').type(cell, value), [
      extent,
      less,
    ] as const);
    const redraw = { role: 'button', name: `Draw the difference: ${entry}` } as const;
    await keys.control(redraw).waitFor();
    await keys.activate(redraw);
    await pane.says(/taken from/);
    const row = (await pane.rows('TreatmentLog')).find((each) => each['Entry'] === entry);
    expect(row).toMatchObject({ Extent: less, 'Drawn for': less, Drawn: 'yes' });
    expect(await keys.control(redraw).count()).toBe(0);
    await pane.close();
  });

  test('the row that is chosen in the sheet stands in the strip, with what can be done from there', async () => {
    const pane = await openSample();
    const { keys, page } = pane;
    const strip = page.getByRole('complementary', { name: 'From the sheet' });
    const choose = async (table: string, header: string, where: Record<string, unknown>): Promise<void> => {
      const cell = await cellOf(pane, table, header, where);
      await pane.act(({ host }, at) => host.person('pane').select(at), cell);
    };
    await choose('Tissue', 'Left', { Lot: 'T-008' });
    await strip.getByText('T-008, kozo tissue 5 g').waitFor();
    await keys.activate({ role: 'button', name: 'Show in stock' }, { back: true });
    await expect.poll(() => keys.isOn({ role: 'heading', name: 'Lot T-008' })).toBe(true);

    await choose('Materials', 'Material', { Material: 'wheat starch' });
    await strip.getByText('Material wheat starch').waitFor();
    await choose('Jobs', 'Object', { Job: 'J-2031' });
    await strip.getByText('Job J-2031, poster, folded, long tears').waitFor();
    await keys.activate({ role: 'button', name: 'Quote this job' }, { back: true });
    await page.getByRole('heading', { name: 'Quote for J-2031' }).waitFor();
    expect(await keys.isOn({ role: 'combobox', name: 'Job' })).toBe(true);

    const [entry] = await rowsFrom(pane, 'TreatmentLog', 0);
    await choose('TreatmentLog', 'Extent', { Entry: entry?.['Entry'] });
    await strip.getByText('Log entry').waitFor();
    await keys.openSection('Log');
    await page.getByRole('heading', { name: `Entry ${String(entry?.['Entry'])}` }).waitFor();

    await choose('Plan', 'Extent', { Line: 'N-01' });
    await strip.getByText('Plan mending tears, 110 cm, J-2031').waitFor();
    await keys.activate({ role: 'button', name: 'Log this treatment' }, { back: true });
    // Only how much is left to look at: Enter there logs.
    await expect.poll(() => keys.isOn({ role: 'textbox', name: 'How much' })).toBe(true);
    expect(await page.getByRole('textbox', { name: 'How much' }).inputValue()).toBe('110');
    expect(await page.getByRole('combobox', { name: 'Treatment' }).inputValue()).toBe('mending tears');

    await pane.act(({ host }) => host.person('pane').select('Movements!Z400'), null);
    await strip.waitFor({ state: 'hidden' });
    await pane.close();
  });
});
