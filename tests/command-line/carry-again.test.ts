import { readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ask, rowsOfFile } from '../helpers/ask.ts';
import { call } from '../helpers/fake-terminal.ts';
import { date } from '../helpers/literal.ts';
import { fileOf } from '../helpers/xlsx.ts';
import { YEARS } from '../helpers/years.ts';

const DAY = ['--on', '2026-02-01'];

describe('carry', () => {
  test('once the job is over the next year folds all, and both old files stand in the notes', async () => {
    const file = await fileOf(
      { ...YEARS, Jobs: YEARS.Jobs.map((row) => ({ ...row, Stage: 'Handed back' })) },
      'a.xlsx',
    );
    const [second, third] = ['b.xlsx', 'c.xlsx'].map((name) => join(dirname(file), name));
    if (second === undefined || third === undefined) throw new Error('two names are needed');
    await ask(['carry', file, '--on', '2025-04-01', '--out', second]);
    await ask(['carry', second, '--on', '2027-02-01', '--out', third]);
    const once = join(dirname(file), 'once.xlsx');
    await ask(['carry', file, '--on', '2027-02-01', '--out', once]);
    const [twice, straight] = await Promise.all(
      [third, once].map((each) => ask(['check', each, '--on', '2027-02-01'])),
    );
    expect({ ...twice, notices: [] }).toEqual({ ...straight, notices: [] });
    const noteOf = async (lot: string) =>
      (await rowsOfFile(third, 'Movements')).filter((row) => row['Lot'] === lot).map((row) => row['Note']);
    expect(await noteOf('T-1')).toEqual(['carried over from a.xlsx, b.xlsx']);
    expect(await noteOf('P-1')).toEqual(['carried over from a.xlsx']);
    const undone = (await rowsOfFile(third, 'Movements')).map((row) => String(row['Posting'])).at(-1) ?? '';
    const { code, err } = await call(['undo', third, '--posting', undone]);
    expect([code, err]).toEqual([2, expect.stringContaining('in the old workbook only')]);
  });

  test('what must be mended first stays, and what goes with folded rows is said', async () => {
    const file = await fileOf({
      ...YEARS,
      Movements: [
        ...YEARS.Movements,
        { ...YEARS.Movements[1], Movement: 'M-20', Date: date('2023-12-01'), Entry: null, Job: null },
        { ...YEARS.Movements[1], Movement: 'M-21', Lot: 'B-1', Unit: 'ml', Entry: 'E-99', Job: null },
      ],
    });
    const answer = await ask(['carry', file, ...DAY, '--out', join(dirname(file), 'new.xlsx')]);
    expect(answer.kept).toContainEqual({ count: 1, why: 'with something to be mended first' });
    expect(answer.kept).toContainEqual({ count: 1, why: 'after one of these in the same lot' });
    expect(answer.gone.map(({ code, subject }: Record<string, unknown>) => [code, subject])).toEqual([
      ['too-early', 'M-20'],
    ]);
  });

  test.each<[string, (file: string) => readonly string[], RegExp]>([
    ['no --out', () => DAY, /^jarleaf carry needs --out/],
    ['no --on', (file) => ['--out', join(dirname(file), 'new.xlsx')], /^jarleaf carry needs --on/],
    ['the same file', (file) => [...DAY, '--out', file], /is there already\. Choose another name/],
    [
      'a file that is there',
      (file) => [...DAY, '--out', join(dirname(file), 'there.xlsx')],
      /is there already/,
    ],
  ])('is refused with 2 and changes nothing: %s', async (_, words, message) => {
    const file = await fileOf(YEARS);
    await writeFile(join(dirname(file), 'there.xlsx'), 'kept');
    const before = await readFile(file);
    const { code, out, err } = await call(['carry', file, ...words(file)]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
    expect(await readFile(file)).toEqual(before);
    expect(await readFile(join(dirname(file), 'there.xlsx'), 'utf8')).toBe('kept');
  });

  test('a workbook whose Movements has no Note is refused, as the old file could not be named', async () => {
    const file = await fileOf({ ...YEARS, Movements: { rows: YEARS.Movements, without: ['Note'] } });
    const { code, err } = await call(['carry', file, ...DAY, '--out', join(dirname(file), 'new.xlsx')]);
    expect([code, err]).toEqual([2, expect.stringContaining('no column Note')]);
  });
});
