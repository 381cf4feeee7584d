import { copyFile, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { PROJECT_PATHS } from '../../src/build/project-paths.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import { call } from '../helpers/fake-terminal.ts';
import { figuresOf } from './helpers/figures.ts';
import { increasingRandom } from './helpers/increasing-random.ts';
import { fillIn } from './helpers/log-form.ts';
import { PreviewPage } from './helpers/preview-page.ts';
import { MODES } from './helpers/preview-site.ts';
import { stockInWords } from './helpers/stock-words.ts';
import { SAMPLE_DAY, TODAY } from './helpers/studio-in-node.ts';

/** Every key is pressed as a person does: milliseconds that the whole way may take on a busy machine. */
const A_LONG_WAY = 180_000;

/** What of the session is done in turn; after each of them page and command line are compared. */
const STEPS = ['logged', 'undone', 'drawn', 'quoted'] as const;
type Step = (typeof STEPS)[number];

let folder = '';
const fromCommandLine = new Map<Step, Uint8Array>();

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'jarleaf-preview-'));
  const file = join(folder, 'bench.xlsx');
  await copyFile(join(PROJECT_PATHS.root, 'sample-workbooks/demo-studio.xlsx'), file);
  const random = increasingRandom();
  const ask = async (step: Step, ...words: readonly string[]) => {
    const [verb = '', ...options] = words;
    const answer = await call([verb, file, ...options, '--on', SAMPLE_DAY, '--json'], { random });
    expect(answer).toMatchObject({ err: '' });
    fromCommandLine.set(step, await readFile(file));
    return JSON.parse(answer.out) as { readonly posting: string };
  };
  const mend = ['--job', 'J-2031', '--treatment', 'mending tears', '--extent', '30'];
  const { posting } = await ask('logged', 'log', ...mend);
  await ask('undone', 'undo', '--posting', posting);
  await ask('drawn', 'draw');
  await ask('quoted', 'quote', '--job', 'J-2031', '--freeze');
});
afterAll(() => rm(folder, { recursive: true }));

function commandLineAt(step: Step): Uint8Array {
  const bytes = fromCommandLine.get(step);
  if (bytes === undefined) throw new Error(`The command line has not come to ${step}`);
  return bytes;
}

describe.each(MODES)('the session of the README in the preview, by keyboard, %s', (mode) => {
  test(
    'gives the figures of the command line after every step, and in the file that is saved',
    async () => {
      const preview = await PreviewPage.open(mode, { increasing: true });
      const { frame } = preview;
      const keys = preview.paneKeys;
      /** Saves what the page holds now and compares it with the command line's file. */
      const agrees = async (step: Step): Promise<void> => {
        const { name, bytes } = await preview.save();
        expect(name).toBe('demo-studio.xlsx');
        expect(figuresOf(bytes)).toEqual(figuresOf(commandLineAt(step)));
        // What the pane shows of the stock is what the file says that was saved.
        await preview.goTo('pane');
        await keys.openSection('Stock');
        const check = checkWorkbook(openXlsx(bytes).snapshot(), TODAY);
        expect(await preview.stock()).toEqual(stockInWords(check));
      };

      await preview.goTo('pane');
      const sample = openXlsx(await readFile(join(PROJECT_PATHS.root, 'sample-workbooks/demo-studio.xlsx')));
      const before = checkWorkbook(sample.snapshot(), TODAY);
      const shown = await frame.locator('.panel .notice > p').allTextContents();
      expect(shown.map((text) => text.replace(/^[^:]+: /, '')).toSorted()).toEqual(
        before.notices.map(({ message }) => message).toSorted(),
      );
      await keys.openSection('Stock');
      expect(await preview.stock()).toEqual(stockInWords(before));

      await keys.openSection('Log');
      await fillIn({ keys }, { job: 'J-2031', treatment: 'mending tears', extent: '30' });
      const takes = frame.locator('.log-takes > li');
      await expect
        .poll(async () => (await takes.allTextContents()).join(' '))
        .toMatch(/T-002.*T-008.*P-027/s);
      await keys.press('Enter');
      await preview.paneSays('Mending tears, 30 cm, for J-2031: taken from');
      await agrees('logged');

      await keys.openSection('Log');
      await keys.activate({ role: 'button', name: /^Undo: Mending tears/ }, { most: 60 });
      await preview.paneSays('Taken back: 3 movements');
      await agrees('undone');

      await keys.openSection('Today');
      await keys.activate({ role: 'button', name: 'Draw all 6' });
      await preview.paneSays(/entries.*taken from/);
      await agrees('drawn');

      await keys.openSection('Quote');
      await keys.fill('Job', 'J-2031', 'combobox');
      await keys.press('Enter');
      await frame.getByRole('heading', { name: 'Quote for J-2031' }).waitFor();
      const total = await frame.getByRole('table', { name: 'Sums' }).locator('tfoot td').textContent();
      await keys.activate({ role: 'button', name: 'Write down as version 1' });
      await preview.paneSays(/^Written down: quote .*, version 1, for J-2031/);
      await agrees('quoted');
      expect(figuresOf((await preview.save()).bytes).quotes.at(-1)).toMatchObject({ Total: Number(total) });
      await preview.close();
    },
    A_LONG_WAY,
  );
});
