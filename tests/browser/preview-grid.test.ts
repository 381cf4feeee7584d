import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { drawEntries } from '../../src/actions/draw-entries.ts';
import { addDays, isoDay, spokenDay } from '../../src/core/day.ts';
import { quantityNumber } from '../../src/core/exact-number.ts';
import type { Severity } from '../../src/core/notice.ts';
import { seededRandom } from '../../src/core/seeded-random.ts';
import { spokenNumber } from '../../src/core/wording.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { PreviewWindow } from '../../src/preview/page/preview-window.ts';
import type { WorkbookSnapshot } from '../../src/workbook/port.ts';
import { withChanges } from '../../src/workbook/with-changes.ts';
import { PreviewPage } from './helpers/preview-page.ts';
import { MODES } from './helpers/preview-site.ts';
import { sampleSnapshot, TODAY } from './helpers/studio-in-node.ts';

const SAMPLE = sampleSnapshot('demo-studio.xlsx');
const LOG = tableOf(SAMPLE, 'TreatmentLog');
const TISSUE = tableOf(SAMPLE, 'Tissue');
/** The sheet row right below the log. */
const BELOW_LOG = LOG.firstRow + LOG.rowCount;
const UNDRAWN = checkWorkbook(SAMPLE, TODAY).notices.filter(({ mend }) => mend?.kind === 'draw').length;
const PASTED = 50;
/** Longer than the pane waits before it moves the focus, in milliseconds. */
const FRAMES = 200;

function tableOf({ tables }: WorkbookSnapshot, name: string) {
  const table = tables.find((each) => each.name === name);
  if (table === undefined) throw new Error(`The sample has no table ${name}`);
  return table;
}

function columnOf(table: typeof LOG, header: string): number {
  return table.firstColumn + table.columns.findIndex((each) => each.header === header);
}

/** What is left of a material, as a cell shows the number. */
function leftOf(snapshot: WorkbookSnapshot, name: string): number {
  const found = checkWorkbook(snapshot, TODAY).stock.materials.find(({ material }) => material.name === name);
  if (found?.left == null) throw new Error(`Of ${name} nothing is counted`);
  return Number(spokenNumber(found.left).replaceAll(',', ''));
}

async function noticesOf(preview: PreviewPage): Promise<string[]> {
  const texts = await preview.frame.locator('.panel .notice > p').allTextContents();
  return texts.map((text) => text.replace(/^[^:]+: /, '')).toSorted();
}

const BEFORE = checkWorkbook(SAMPLE, TODAY)
  .notices.map(({ message }) => message)
  .toSorted();

describe.each(MODES)('grid and pane, %s', (mode) => {
  let preview: PreviewPage;
  beforeAll(async () => {
    preview = await PreviewPage.open(mode);
  });
  afterEach(async ({ task }) => {
    if (task.result?.state !== 'fail') return;
    // What failed half way would make the others fail too.
    await preview.close();
    preview = await PreviewPage.open(mode);
  });
  afterAll(() => preview.close());

  const undoAll = async (): Promise<void> => {
    await preview.goTo('bar');
    const undo = { role: 'button', name: 'Undo' } as const;
    await preview.keys.tabTo(undo);
    while ((await preview.keys.control(undo).getAttribute('aria-disabled')) === 'false') {
      await preview.keys.press('Enter');
    }
    expect(await preview.keys.isOn(undo)).toBe(true);
  };
  const size = (): Promise<string | null> => preview.page.locator('.status-size').textContent();
  const drawAll = (count: number) => preview.frame.getByRole('button', { name: `Draw all ${count}` });

  test('a row typed below the log, and fifty pasted, make it longer; the pane says they are not drawn yet', async () => {
    const { page, frame } = preview;
    await drawAll(UNDRAWN).waitFor();
    await preview.goToCell('TreatmentLog', BELOW_LOG, 1);
    await preview.typeAcross('', '2026-11-16', 'J-2031', '', 'mending tears', '5');
    expect(await size()).toContain(`TreatmentLog: ${LOG.rowCount + 1} rows`);
    await frame.getByText('mending tears of 16 Nov 2026 for J-2031 (5 cm) is not drawn yet.').waitFor();
    await preview.keys.press('ArrowDown', 'Home');
    const line = '\t2026-11-16\tJ-2032\t\tmending tears\t1';
    await preview.paste(Array.from({ length: PASTED }, () => line).join('\n'));
    await preview.says(`${PASTED * 6} cells pasted.`);
    expect(await size()).toContain(`TreatmentLog: ${LOG.rowCount + 1 + PASTED} rows`);
    await drawAll(UNDRAWN + 1 + PASTED).waitFor();
    expect(await page.locator('.toolbar-unsaved').textContent()).toBe('not saved');

    await undoAll();
    await drawAll(UNDRAWN).waitFor();
    // Of several steps taken back, the pane may still be reading the last.
    await expect.poll(() => noticesOf(preview)).toEqual(BEFORE);
    expect(await page.locator('.toolbar-unsaved').textContent()).toBe('');
    expect(await size()).toContain(`TreatmentLog: ${LOG.rowCount} rows`);
  });

  test('what is typed over Left is offered as a count, and counts when it is posted', async () => {
    const { frame } = preview;
    const row = tableOf(SAMPLE, 'Tissue').columns[0]?.values.indexOf('T-008') ?? -1;
    await preview.goToCell('Tissue', TISSUE.firstRow + row, columnOf(TISSUE, 'Left'));
    await preview.keys.press('4', '.', '5', 'Enter');
    const offered = frame.locator('.notice').filter({ hasText: 'T-008' });
    await offered.getByRole('button', { name: 'Post the count: T-008' }).waitFor();
    await preview.goTo('pane');
    await preview.paneKeys.openSection('Today');
    await preview.paneKeys.activate({ role: 'button', name: 'Post the count: T-008' }, { most: 80 });
    // She goes on in the cells meanwhile: what has gone from the pane does not call her back.
    await preview.goTo('cells');
    await preview.paneSays(/T-008/);
    await offered.waitFor({ state: 'detached' });
    await preview.page.waitForTimeout(FRAMES);
    expect(await preview.keys.isOn({ role: 'grid', name: /./ })).toBe(true);
    const { bytes } = await preview.save();
    const { lots } = checkWorkbook(openXlsx(bytes).snapshot(), TODAY).stock;
    const counted = lots.find(({ lot }) => lot.name === 'T-008')?.left ?? expect.unreachable();
    expect(quantityNumber(counted)).toBe(4.5);
    expect(await preview.page.locator('.toolbar-unsaved').textContent()).toBe('');
    await undoAll();
    // What was saved is not what was opened.
    expect(await preview.page.locator('.toolbar-unsaved').textContent()).toBe('not saved');
    await expect.poll(() => noticesOf(preview)).toEqual(BEFORE);
  });

  test('what is chosen in the cells is named in the pane, and a notice leads to its cell', async () => {
    const { frame, page } = preview;
    const strip = frame.locator('.from-sheet');
    await preview.goToCell('Tissue', TISSUE.firstRow, 1);
    await strip.getByText('T-001').waitFor();
    await preview.keys.press('ArrowDown');
    await strip.getByText('T-002').waitFor();
    await preview.keys.press('Shift+ArrowDown', 'Shift+ArrowDown');
    await strip.getByText('T-004').waitFor();
    await preview.goToCell('TreatmentLog', BELOW_LOG - 1, 1);
    await strip.getByText('testing, STUDIO').waitFor();

    const placed = checkWorkbook(SAMPLE, TODAY).notices.find(({ code }) => code === 'overdrawn');
    await preview.goTo('pane');
    await preview.paneKeys.openSection('Today');
    const link = { role: 'button', name: `${placed?.address ?? ''}, show this cell` } as const;
    await preview.paneKeys.activate(link, { most: 60 });
    await page.getByRole('tab', { name: placed?.cell?.tab ?? '', selected: true }).waitFor();
    expect(await preview.activeCell()).toEqual({ row: placed?.cell?.row, column: placed?.cell?.column });
    expect(await preview.paneKeys.isOn(link)).toBe(true);
  });

  test('a function of ours calculates in a cell and follows postings; undoing one in the grid asks nothing', async () => {
    const { frame, page } = preview;
    const drawn = drawEntries(SAMPLE, TODAY, seededRandom(1), null, null);
    if (!drawn.ok) throw new Error(drawn.message);
    const after = leftOf(withChanges(SAMPLE, drawn.changes), 'grated eraser');
    const before = leftOf(SAMPLE, 'grated eraser');
    expect(after).not.toBe(before);
    await preview.goToCell('My overview', 8, 3);
    await preview.keys.press('ArrowDown', 'ArrowDown', 'ArrowDown');
    await page.keyboard.type('=JARLEAF.LEFT("grated eraser")');
    await preview.keys.press('Enter', 'ArrowUp');
    const shown = async () => Number(await preview.activeText());
    await expect.poll(shown).toBe(before);
    expect(await page.locator('.line-field').inputValue()).toBe('=JARLEAF.LEFT("grated eraser")');

    await preview.goTo('pane');
    await preview.paneKeys.openSection('Today');
    await preview.paneKeys.activate({ role: 'button', name: `Draw all ${UNDRAWN}` });
    await preview.paneSays(/taken from/);
    await expect.poll(shown).toBe(after);

    await preview.goTo('cells');
    await preview.keys.press('Control+z');
    await expect.poll(shown).toBe(before);
    await expect.poll(() => noticesOf(preview)).toEqual(BEFORE);
    expect(await frame.locator('.banner').count()).toBe(0);
    await preview.keys.press('Control+z');
    await expect.poll(() => preview.activeText()).toBe('');
  });

  test('another day gives other figures, and no day in between while it is typed', async () => {
    const { frame, page } = preview;
    const day = addDays(TODAY, 14);
    await preview.goTo('bar');
    await preview.keys.tabTo({ role: 'textbox', name: 'Today is' }, { most: 12 });
    const [year = '', month = '', date = ''] = isoDay(day).split('-');
    const told = await page.evaluateHandle(() => {
      const days: string[] = [];
      (window as Window & PreviewWindow).jarleaf?.onToday((each) => days.push(each));
      return days;
    });
    await page.keyboard.type(`${month}${date}${year}`);
    await frame.getByRole('heading', { name: spokenDay(day) }).waitFor();
    const days = await told.jsonValue();
    expect(days.at(-1)).toBe(isoDay(day));
    expect(days.filter((each) => !each.startsWith(year))).toEqual([]);
    const then = checkWorkbook(SAMPLE, day).notices;
    const count = (severity: Severity): number => then.filter((each) => each.severity === severity).length;
    expect(count('warn')).not.toBe(
      checkWorkbook(SAMPLE, TODAY).notices.filter((each) => each.severity === 'warn').length,
    );
    await frame
      .getByText(`${count('stop')} to mend first, ${count('warn')} warnings, ${count('note')} notes.`)
      .waitFor();
    // Of the many that have gone off the pane shows a few until all are asked for.
    expect(then.map(({ message }) => message)).toEqual(expect.arrayContaining(await noticesOf(preview)));
  });
});
