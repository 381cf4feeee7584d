import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { call } from '../helpers/fake-terminal.ts';
import { STUDIO } from '../helpers/studio.ts';
import { fileOf, rowsByHeader } from '../helpers/xlsx.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const MEND = ['--job', '26-014', '--treatment', 'Mend tear', '--extent', '6'];

interface Ended {
  readonly code: number | string | null | undefined;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the program as a person does, in a process of its own. */
function run(words: readonly string[]): Promise<Ended> {
  return new Promise((done) => {
    const options = { cwd: ROOT, env: { ...process.env, NO_COLOR: '1' } };
    execFile('npx', ['tsx', 'src/command-line/jarleaf.ts', ...words], options, (error, stdout, stderr) => {
      done({ code: error === null ? 0 : error.code, stdout, stderr });
    });
  });
}

describe('in a process of its own', () => {
  test('answers go to standard output, messages to standard error, and the exit code tells', async () => {
    const file = await fileOf(
      { ...STUDIO, Tissue: [...STUDIO.Tissue, { Lot: 'T-9', Material: 'nothing' }] },
      'my bench ä.xlsx',
    );
    const checked = await run(['check', file, '--json', '--on', '2026-04-03']);
    expect({ code: checked.code, stderr: checked.stderr }).toEqual({ code: 1, stderr: '' });
    expect(JSON.parse(checked.stdout)).toMatchObject({ asOf: '2026-04-03', currency: 'EUR' });

    const logged = await run(['log', file, ...MEND, '--on', '2026-04-03', '--by', '=AK']);
    expect({ code: logged.code, stderr: logged.stderr }).toEqual({ code: 0, stderr: '' });
    expect(logged.stdout).toMatch(/^Entry E\w{8}: Mend tear, 6 tear, job 26-014, 3 Apr 2026: drawn\.\n/);
    expect(logged.stdout).toMatch(new RegExp(`Saved to ${file}\\.\n$`));

    const refused = await run(['log', file, ...MEND.slice(0, 4)]);
    expect(refused).toEqual({
      code: 2,
      stdout: '',
      stderr: 'jarleaf log needs --extent. See jarleaf log --help.\n',
    });
  });
});

describe('from the first check to a quote that is kept', () => {
  test('an independent reader finds the figures that were answered', async () => {
    const file = await fileOf(STUDIO);
    const ask = async (...words: string[]) => {
      const { code, out, err } = await call([...words, '--json']);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      return JSON.parse(out);
    };
    const rows = async (tab: string) => rowsByHeader(new Uint8Array(await readFile(file)), tab);

    await ask('check', file);
    const first = await ask('log', file, ...MEND, '--notes', '=1+1');
    const undone = await ask('undo', file, '--posting', first.posting);
    const second = await ask('log', file, ...MEND);
    const drawn = await ask('draw', file);
    const quote = await ask('quote', file, '--job', '26-015');
    const kept = await ask('quote', file, '--job', '26-015', '--freeze');
    const { lots } = await ask('check', file);
    expect({ ...kept, notices: [] }).toEqual({ ...quote, notices: [] });

    const written = [...first.movements, ...undone.movements, ...second.movements, ...drawn.movements];
    expect(
      (await rows('Movements')).map((row) => [
        row['Movement'],
        row['Kind'],
        row['Lot'],
        row['Quantity'],
        row['Unit'],
        row['Job'],
        row['Entry'],
      ]),
    ).toEqual(
      written.map(({ movement, kind, lot, quantity, unit, job, entry }) => [
        movement,
        kind,
        lot,
        quantity,
        unit,
        job,
        entry,
      ]),
    );
    const entries = await rows('TreatmentLog');
    expect(entries.map((row) => [row['Entry'], row['Notes'], row['Drawn'], row['Drawn for']])).toEqual([
      [first.entries[0].entry, '=1+1', 'yes', 6],
      [second.entries[0].entry, null, 'yes', 6],
    ]);
    expect(entries[0]?.['Date']).toEqual(new Date(Date.UTC(2026, 3, 3)));

    // Both mends stand: 3 sheets and 30 g each, of which the first two sheets come from T-1.
    const figures = [...(await rows('Tissue')), ...(await rows('Paste')), ...(await rows('ReleasePaper'))]
      .filter((row) => row['Left'] !== null)
      .map((row) => [row['Lot'], row['Left'], row['Left as written'], Number(row['Worth']).toFixed(2)]);
    expect(figures).toEqual(
      lots
        .filter(({ lot }: { lot: string }) => lot !== 'W-1')
        .map(({ lot, left, worth }: { lot: string; left: number; worth: string }) => [
          lot,
          left,
          left,
          worth,
        ]),
    );
    expect(figures.map(([lot, left]) => [lot, left])).toEqual([
      ['T-1', 0],
      ['T-2', 6],
      ['P-1', 140],
      ['R-1', 3.8],
    ]);

    const [head] = await rows('Quotes');
    for (const [header, key] of Object.entries({
      Consumables: 'consumables',
      Markup: 'markup',
      'Bench time': 'benchTime',
      Tax: 'tax',
      Total: 'total',
    })) {
      expect(Number(head?.[header]).toFixed(2)).toBe(quote[key]);
    }
    const lines = await rows('QuoteLines');
    expect(
      lines.map((row) => [
        row['Item'],
        row['Material'],
        row['Quantity'],
        row['Unit'],
        Number(row['Amount']).toFixed(2),
      ]),
    ).toEqual(
      quote.lines.map((line: Record<string, unknown>) => [
        line['item'],
        line['material'],
        line['quantity'],
        line['unit'],
        line['amount'],
      ]),
    );
  });
});
