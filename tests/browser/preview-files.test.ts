import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { type Day, parseDay, spokenDay } from '../../src/core/day.ts';
import { FileRefused, openXlsx } from '../../src/files/xlsx-workbook.ts';
import { MACHINE_DAY, PreviewPage } from './helpers/preview-page.ts';
import { MODES } from './helpers/preview-site.ts';
import { SAMPLE_DAY, sampleBytes, TODAY } from './helpers/studio-in-node.ts';

const SAMPLE = sampleBytes('demo-studio.xlsx');
const LATER = dayNamed(MACHINE_DAY);
const OVERVIEW = 'My overview';
const HOURS = /(<c r="C5"[^>]*><f>ROUND\([^<]*<\/f>)<\/c>/;

function dayNamed(text: string): Day {
  const day = parseDay(text);
  if (day === null) throw new Error(`${text} is no day`);
  return day;
}

/** The sample with the result of a formula in it, as a spreadsheet program leaves it. */
function withResult(result: string): Uint8Array {
  const parts = unzipSync(SAMPLE);
  const found = Object.entries(parts).find(
    ([name, bytes]) => name.startsWith('xl/worksheets/') && HOURS.test(strFromU8(bytes)),
  );
  if (found === undefined) throw new Error(`The sample has no formula in C5 of ${OVERVIEW}`);
  const [name, bytes] = found;
  return zipSync({ ...parts, [name]: strToU8(strFromU8(bytes).replace(HOURS, `$1<v>${result}</v></c>`)) });
}

/** What is said of bytes that are no workbook. */
function refusalOf(bytes: Uint8Array): string {
  try {
    openXlsx(bytes);
  } catch (error) {
    if (error instanceof FileRefused) return error.message;
    throw error;
  }
  throw new Error('The bytes are a workbook');
}

async function noticesOf({ frame }: PreviewPage): Promise<string[]> {
  // Of a kind with many the first few are shown, and a button for all.
  const all = frame.locator('.panel').getByRole('button', { name: /^Show all \d+: / });
  while ((await all.count()) > 0) await all.first().press('Enter');
  const texts = await frame.locator('.panel .notice > p').allTextContents();
  return texts.map((text) => text.replace(/^[^:]+: /, '')).toSorted();
}

function messages(bytes: Uint8Array, day: Day): string[] {
  return checkWorkbook(openXlsx(bytes).snapshot(), day)
    .notices.map(({ message }) => message)
    .toSorted();
}

describe.each(MODES)('files in the preview, %s', (mode) => {
  let preview: PreviewPage;
  beforeAll(async () => {
    preview = await PreviewPage.open(mode);
  });
  afterAll(() => preview.close());

  const name = () => preview.page.locator('.toolbar-name').textContent();

  test.each([
    ['a text', new TextEncoder().encode('Lot,Material\n')],
    ['half a workbook', SAMPLE.slice(0, SAMPLE.length / 2)],
    ['no bytes', new Uint8Array()],
  ])('%s is refused in words, and the workbook that is open stays', async (_, bytes) => {
    await preview.openFile('wrong.xlsx', bytes);
    const alert = preview.page.locator('.status-news [role=alert]');
    await expect.poll(() => alert.textContent()).toBe(`wrong.xlsx was not opened. ${refusalOf(bytes)}`);
    expect(await name()).toBe('demo-studio.xlsx');
    expect(await noticesOf(preview)).toEqual(messages(SAMPLE, TODAY));
  });

  test('another file takes the place of the first, on the day of the machine; the pane works on it', async () => {
    const { page } = preview;
    const bytes = withResult('12.5');
    await preview.openFile('mine.xlsx', bytes);
    await preview.says('mine.xlsx is open.');
    await preview.paneIsOpen();
    await preview.frame.getByRole('heading', { name: spokenDay(LATER) }).waitFor();
    expect(await noticesOf(preview)).toEqual(messages(bytes, LATER));

    // Results that the file holds are shown; where it holds none, none is made up.
    await preview.goToCell(OVERVIEW, 5, 3);
    expect(await preview.activeText()).toBe('12.5');
    expect(await page.locator('.line-hint').textContent()).toContain('The result that stands in the file');
    await preview.keys.press('ArrowLeft');
    expect(await preview.activeText()).toBe('=…');
    expect(await page.locator('.line-hint').textContent()).toContain('Not worked out here');

    await preview.goTo('pane');
    await preview.paneKeys.openSection('Today');
    await preview.paneKeys.activate({ role: 'button', name: /^Draw all \d+$/ });
    await preview.paneSays(/taken from/);
    const saved = await preview.save();
    expect(saved.name).toBe('mine.xlsx');
    expect(messages(saved.bytes, LATER)).toEqual(await noticesOf(preview));
    expect(messages(saved.bytes, LATER)).not.toEqual(messages(bytes, LATER));
  });

  test('a workbook with other tabs follows; what its cells say reaches the pane', async () => {
    const { page } = preview;
    await preview.openFile('new.xlsx', sampleBytes('starter.xlsx'));
    await preview.says('new.xlsx is open.');
    await preview.paneIsOpen();
    const tabs = openXlsx(sampleBytes('starter.xlsx')).tabs();
    expect(await page.getByRole('tab').allTextContents()).toEqual(tabs.map((each) => each.name));
    const { firstRow = 0 } =
      openXlsx(sampleBytes('starter.xlsx'))
        .snapshot()
        .tables.find((each) => each.name === 'Materials') ?? {};
    await preview.goToCell('Materials', firstRow, 1);
    await preview.frame
      .locator('.from-sheet')
      .getByText(await preview.activeText())
      .waitFor();
  });

  test('what is not saved is asked about before it is lost, and kept by Escape', async () => {
    const { page, keys } = preview;
    await preview.goTo('cells');
    await keys.press('Control+Home');
    await page.keyboard.type('Mine');
    await keys.press('Enter');
    await preview.goTo('bar');
    const again = { role: 'button', name: 'Start again' } as const;
    await keys.activate(again);
    const dialog = page.getByRole('dialog', { name: 'There are changes that were not saved' });
    await dialog.waitFor();
    expect(await keys.isOn({ role: 'button', name: 'Keep working' })).toBe(true);
    await keys.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    expect(await keys.isOn(again)).toBe(true);
    expect(await name()).toBe('new.xlsxnot saved');

    const closing = page.waitForEvent('dialog');
    await page.close({ runBeforeUnload: true });
    const asked = await closing;
    expect(asked.type()).toBe('beforeunload');
    await asked.dismiss();

    await keys.press('Enter');
    await dialog.waitFor();
    await keys.press('Tab', 'Enter');
    await preview.says('demo-studio.xlsx is open.');
    await preview.paneIsOpen();
    await preview.frame.getByRole('heading', { name: spokenDay(dayNamed(SAMPLE_DAY)) }).waitFor();
    expect(await name()).toBe('demo-studio.xlsx');
    expect(await noticesOf(preview)).toEqual(messages(SAMPLE, TODAY));
    // Nothing of before is left: the very bytes of the sample.
    expect(Buffer.from((await preview.save()).bytes).equals(SAMPLE)).toBe(true);
  });
});
