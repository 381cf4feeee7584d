import { chmod, mkdir, readFile, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { call } from '../helpers/fake-terminal.ts';
import type { Literal } from '../helpers/literal.ts';
import { STUDIO } from '../helpers/studio.ts';
import { fileOf, folderForTest } from '../helpers/xlsx.ts';

const MEND = ['--job', '26-014', '--treatment', 'Mend tear', '--extent', '6'];
const VERBS = ['check', 'log', 'draw', 'undo', 'quote'];

/** Runs a call that must be refused, on a file that must stay as it is; gives the sentence. */
async function refusal(verb: string, words: readonly string[], literal: Literal = STUDIO): Promise<string> {
  const file = await fileOf(literal);
  const before = await readFile(file);
  const { code, out, err } = await call([verb, file, ...words]);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(await readFile(file)).toEqual(before);
  return err;
}

describe('help', () => {
  test.each([[], ['--help'], ['-h'], ['help'], ['help', 'nothing']])(
    '%j prints the overview',
    async (...words) => {
      const { code, out, err } = await call(words);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      for (const verb of VERBS) expect(out).toContain(`  ${verb} FILE`);
      expect(out).toContain("follow the supplier's safety data sheet");
    },
  );

  test.each(VERBS)('of %s names every option that it takes, on lines that fit', async (verb) => {
    const { code, out } = await call([verb, '--help']);
    expect(code).toBe(0);
    expect(out).toMatch(new RegExp(`^Usage: jarleaf ${verb} FILE`));
    for (const option of ['--on', '--json', '--help']) expect(out).toContain(option);
    expect((await call([verb, 'file.xlsx', '-h'])).out).toBe(out);
    expect((await call(['help', verb])).out).toBe(out);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(120);
  });
});

describe('calls that can’t be understood end with 2', () => {
  test.each<[string[], string]>([
    [
      ['chek', 'a.xlsx'],
      'There is no verb chek. Did you mean check? The verbs are check, log, draw, undo, quote, plan, make, buy, receive, bath, open, retest, discard, reuse, lot, count, closing, disposal, carry and upgrade.',
    ],
    [['check'], 'Name the workbook: jarleaf check FILE. A name with spaces goes in quotes.'],
    [
      ['check', 'a.xlsx', 'b.xlsx'],
      'Name one workbook, not a.xlsx and b.xlsx: jarleaf check FILE. A name with spaces goes in quotes.',
    ],
    [
      ['check', 'a.xlsx', '--lot'],
      'jarleaf check has no option --lot. Did you mean --lots? See jarleaf check --help.',
    ],
    [['check', 'a.xlsx', '--out', 'b.xlsx'], 'jarleaf check has no option --out. See jarleaf check --help.'],
    [['check', 'a.xlsx', '-x'], 'jarleaf check has no option -x. See jarleaf check --help.'],
    [['check', 'a.xlsx', '--json=yes'], '--json takes no value. See jarleaf check --help.'],
    [['check', 'a.xlsx', '--on'], '--on needs a value. See jarleaf check --help.'],
    [['check', 'a.xlsx', '--on', ''], '--on needs a value. See jarleaf check --help.'],
    [
      ['check', 'a.xlsx', '--on', '2026-04-01', '--on', '2026-04-02'],
      '--on is given twice. See jarleaf check --help.',
    ],
    [
      ['log', 'a.xlsx', '--extent', '-5'],
      '--extent needs a value; one that begins with a dash is written --extent=-5. See jarleaf log --help.',
    ],
  ])('%j', async (words, message) => {
    expect(await call(words)).toEqual({ code: 2, out: '', err: message });
  });

  test.each<[string, string[], string]>([
    ['check', ['--on', '3.4.2026'], '--on holds “3.4.2026”: a day is right, written like 2026-04-03.'],
    ['check', ['--on', '2026-02-30'], '--on holds “2026-02-30”: a day is right, written like 2026-04-03.'],
    ['check', ['--on', '0026-04-03'], '--on holds “0026-04-03”: a day is right, written like 2026-04-03.'],
    ['log', MEND.slice(2), 'jarleaf log needs --job. See jarleaf log --help.'],
    ['log', MEND.slice(0, 4), 'jarleaf log needs --extent. See jarleaf log --help.'],
    [
      'log',
      [...MEND.slice(0, 2), ...MEND.slice(4)],
      'jarleaf log needs --treatment. See jarleaf log --help.',
    ],
    [
      'log',
      [...MEND.slice(0, 5), '1,5'],
      '--extent holds “1,5”: a plain number above 0 is right, such as 12.5.',
    ],
    ['log', [...MEND.slice(0, 5), '0'], '--extent holds “0”: a plain number above 0 is right, such as 12.5.'],
    [
      'log',
      [...MEND.slice(0, 4), '--extent=-5'],
      '--extent holds “-5”: a plain number above 0 is right, such as 12.5.',
    ],
    [
      'log',
      [...MEND, '--minutes', 'ten'],
      '--minutes holds “ten”: a plain number 0 or more is right, such as 12.5.',
    ],
    ['log', [...MEND, '--date', 'today'], '--date holds “today”: a day is right, written like 2026-04-03.'],
    [
      'log',
      [...MEND, '--use', 'paste'],
      '--use holds “paste”: write it like "wheat starch paste=12.5 g" or "wheat starch paste=12.5 g@P-014".',
    ],
    [
      'log',
      [...MEND, '--use', 'Wheat starch paste=1,5 g'],
      '--use holds “Wheat starch paste=1,5 g”: write it like "wheat starch paste=12.5 g" or "wheat starch paste=12.5 g@P-014".',
    ],
    [
      'log',
      [...MEND, '--use', 'Wheat starch paste=5 g', '--use', '=5 g'],
      '--use holds “=5 g”: write it like "wheat starch paste=12.5 g" or "wheat starch paste=12.5 g@P-014".',
    ],
    ['undo', [], 'jarleaf undo needs --posting. See jarleaf undo --help.'],
    ['undo', ['--posting', 'P-1'], 'No movement has the posting P-1. No movement has a posting yet.'],
    ['quote', [], 'jarleaf quote needs --job. See jarleaf quote --help.'],
    [
      'quote',
      ['--job', '26-015', '--out', 'b.xlsx'],
      '--out goes with --freeze: without it nothing is saved.',
    ],
    ['quote', ['--job', '26-15'], 'There is no job called 26-15 in Jobs. Did you mean 26-015 or 26-014?'],
    [
      'quote',
      ['--job', '26-014', '--freeze'],
      'Job 26-014 has no row in Plan, so there is nothing to put into a quote.',
    ],
    [
      'log',
      ['--job', '26-14', ...MEND.slice(2)],
      'There is no job called 26-14 in Jobs. Did you mean 26-014 or 26-015?',
    ],
    [
      'log',
      [...MEND, '--item', 'Z'],
      'There is no item of job 26-014 called Z in Items. Add it to Items first.',
    ],
  ])('%s %j', async (verb, words, message) => {
    expect(await refusal(verb, words)).toBe(message);
  });

  test('a unit that is none is told, with those that are', async () => {
    expect(await refusal('log', [...MEND, '--use', 'Wheat starch paste=5 spoons@P-1'])).toMatch(
      /^--use holds the unit “spoons”: a unit is right, one of mg, g, kg, .*use\.$/,
    );
  });

  test.each(['5 g@P-1', '5g@P-1', '5.0  g @ p-1 ', '0.005 kg@P-1', '5e0 g@P-1'])(
    'an amount may be written %j',
    async (amount) => {
      const file = await fileOf(STUDIO);
      const { code, out } = await call([
        'log',
        file,
        ...MEND,
        '--use',
        ` wheat starch PASTE = ${amount}`,
        '--json',
      ]);
      expect(code).toBe(0);
      const { movements } = JSON.parse(out) as {
        movements: { lot: string; quantity: number; unit: string }[];
      };
      const used = movements.find(({ lot }) => lot === 'P-1');
      expect(used?.unit === 'kg' ? used.quantity * 1000 : used?.quantity).toBe(5);
    },
  );
});

describe('files that can’t be used end with 2', () => {
  test('one that is not there, a folder, one that is no workbook', async () => {
    const folder = await folderForTest();
    const text = join(folder, 'notes.xlsx');
    await writeFile(text, 'not a workbook');
    const err = async (path: string) => (await call(['check', path])).err;
    expect(await err(join(folder, 'none.xlsx'))).toMatch(
      /^There is no file .*none\.xlsx\. Check its name and folder\.$/,
    );
    expect(await err(folder)).toMatch(/ is a folder\. Name the \.xlsx file in it\.$/);
    expect(await err(text)).not.toBe('');
    for (const path of [join(folder, 'none.xlsx'), folder, text]) {
      expect(await call(['check', path])).toMatchObject({ code: 2, out: '' });
    }
  });

  test('one that is open in a spreadsheet program is read, and not written', async () => {
    const file = await fileOf(STUDIO);
    const before = await readFile(file);
    await writeFile(join(dirname(file), `~$${basename(file)}`), '');
    expect((await call(['check', file])).code).toBe(0);
    const { code, out, err } = await call(['log', file, ...MEND]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/is open in a spreadsheet program .* Close it there and try again; .* delete .*\.$/);
    expect(await readFile(file)).toEqual(before);
  });

  test('a target of another kind, in no folder, or write-protected', async () => {
    const file = await fileOf(STUDIO);
    const folder = dirname(file);
    const taken = join(folder, 'old.xlsx');
    await writeFile(taken, 'mine');
    await chmod(taken, 0o444);
    await mkdir(join(folder, 'sub.xlsx'));
    const err = async (out: string) => {
      const answer = await call(['log', file, ...MEND, '--out', out]);
      expect(answer).toMatchObject({ code: 2, out: '' });
      return answer.err;
    };
    expect(await err(join(folder, 'copy.csv'))).toMatch(/must end in \.xlsx; copy\.csv doesn't\.$/);
    expect(await err(join(folder, 'none', 'copy.xlsx'))).toMatch(/^There is no folder /);
    expect(await err(taken)).toMatch(/write-protected/);
    expect(await err(join(folder, 'sub.xlsx'))).toMatch(/is a folder/);
    expect(await readFile(taken, 'utf8')).toBe('mine');
  });

  test('tables of a newer version are checked and quoted, and nothing is written', async () => {
    const newer = { ...STUDIO, Settings: [{ Setting: 'tables version', Value: 3 }] };
    for (const [verb, ...words] of [
      ['log', ...MEND],
      ['draw'],
      ['undo', '--posting', 'P'],
      ['quote', '--job', '26-015', '--freeze'],
    ]) {
      expect(await refusal(verb ?? '', words, newer)).toMatch(/^This workbook has tables of version 3;/);
    }
    const file = await fileOf(newer);
    expect((await call(['check', file])).code).toBe(0);
    expect((await call(['quote', file, '--job', '26-015'])).code).toBe(0);
  });
});
