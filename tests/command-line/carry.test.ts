import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ask, rowsOfFile } from '../helpers/ask.ts';
import { call } from '../helpers/fake-terminal.ts';
import { fileOf } from '../helpers/xlsx.ts';
import { YEARS } from '../helpers/years.ts';

const DAY = ['--on', '2026-02-01'];

describe('carry', () => {
  test('writes a new workbook in which every figure is what it was, and leaves the old one alone', async () => {
    const file = await fileOf(YEARS, 'bench 2025.xlsx');
    const target = join(dirname(file), 'bench 2026.xlsx');
    const before = await readFile(file);
    const answer = await ask(['carry', file, ...DAY, '--out', target, '--by', 'AK']);
    expect(await readFile(file)).toEqual(before);
    expect(answer).toMatchObject({
      asOf: '2026-02-01',
      from: 'bench 2025.xlsx',
      folded: 8,
      entriesLeftBehind: 2,
      kept: [
        { count: 1, why: 'of the last 365 days, on which the reorder figures rest' },
        { count: 2, why: 'of jobs that are not handed back or declined' },
        { count: 1, why: 'into lots that are still in use' },
      ],
      gone: [],
    });
    const brief = answer.lots.map(
      ({ lot, folded, date: day, quantity, unit, cost, opened }: Record<string, unknown>) => [
        lot,
        folded,
        day,
        quantity,
        unit,
        cost,
        opened,
      ],
    );
    expect(brief).toEqual([
      ['T-1', 4, '2024-03-05', 0.375, 'sheet', '1.50', '2024-02-03'],
      ['W-1', 1, '2024-02-01', 40, 'g', '0.80', '2024-02-01'],
      ['P-1', 2, '2024-02-07', 200, 'g', '1.00', '2024-02-03'],
      ['B-1', 1, '2024-09-01', 0.1, 'l', null, null],
    ]);
    for (const day of ['2026-02-01', '2026-02-02', '2026-12-31', '2028-06-30']) {
      const [old, fresh] = await Promise.all([file, target].map((each) => ask(['check', each, '--on', day])));
      expect(fresh.lots).toEqual(old.lots);
      expect(fresh.materials).toEqual(old.materials);
      const said = ({ notices }: { notices: Record<string, unknown>[] }) =>
        notices.map(({ code, subject, message }) => [code, subject, message]);
      expect(said(fresh)).toEqual(said(old));
      const quotes = [file, target].map((each) => ask(['quote', each, '--job', '24-003', '--on', day]));
      const [oldQuote, freshQuote] = await Promise.all(quotes);
      expect({ ...freshQuote, notices: [] }).toEqual({ ...oldQuote, notices: [] });
    }
  });

  test('as an independent reader finds it: lots as they were, one Carried each, the open job whole', async () => {
    const file = await fileOf(YEARS, 'old.xlsx');
    const target = join(dirname(file), 'new.xlsx');
    const { code, out } = await call(['carry', file, ...DAY, '--out', target]);
    expect(code).toBe(0);
    expect(out).toContain(
      '8 movements of 4 lots folded into 4 Carried movements; 2 entries of the treatment log left behind.',
    );
    expect(out).toContain(`Saved to ${target}.`);
    expect(out.replaceAll('\n', ' ')).toContain(`Keep ${file} with the records of the jobs`);
    const movements = await rowsOfFile(target, 'Movements');
    expect(
      movements.map((row) => [row['Kind'], row['Lot'], row['Quantity'], row['Unit'], row['Cost']]),
    ).toEqual([
      ['Make', 'W-1', 40, 'g', null],
      ['Use', 'P-2', 50, 'g', null],
      ['Use', 'T-1', 0.5, 'sheet', null],
      ['Use', 'T-1', 1, 'sheet', null],
      ['Carried', 'T-1', 0.375, 'sheet', 1.5],
      ['Carried', 'W-1', 40, 'g', 0.8],
      ['Carried', 'P-1', 200, 'g', 1],
      ['Carried', 'B-1', 0.1, 'l', null],
    ]);
    const carried = movements.filter((row) => row['Kind'] === 'Carried');
    for (const row of carried) expect(row['Note']).toBe('carried over from old.xlsx');
    expect(new Set(carried.map((row) => row['Posting'])).size).toBe(1);
    expect((await rowsOfFile(target, 'TreatmentLog')).map((row) => row['Entry'])).toEqual(['E-3', 'E-4']);
    for (const tab of ['Tissue', 'Paste', 'Buffers']) {
      const [old, fresh] = await Promise.all([file, target].map((each) => rowsOfFile(each, tab)));
      expect(fresh?.map((row) => ({ ...row, Opened: null }))).toEqual(
        old?.map((row) => ({ ...row, Opened: null })),
      );
    }
    for (const tab of ['Jobs', 'Plan', 'Materials', 'Settings']) {
      expect(await rowsOfFile(target, tab)).toEqual(await rowsOfFile(file, tab));
    }
  });

  test('goes on the same in both: what is drawn later comes from the same lots at the same cost', async () => {
    const file = await fileOf(YEARS);
    const target = join(dirname(file), 'new.xlsx');
    await ask(['carry', file, ...DAY, '--out', target]);
    const mend = ['--job', '24-003', '--treatment', 'Mend', '--extent', '3', '--on', '2026-03-01'];
    const [old, fresh] = await Promise.all([file, target].map((each) => ask(['log', each, ...mend], 1)));
    const brief = ({
      movements,
      shortfalls,
    }: {
      movements: Record<string, unknown>[];
      shortfalls: unknown[];
    }) => [movements.map(({ lot, quantity, unit, cost }) => [lot, quantity, unit, cost]), shortfalls.length];
    expect(brief(fresh)).toEqual(brief(old));
    const again = join(dirname(file), 'newest.xlsx');
    const twice = await ask(['carry', target, '--on', '2027-06-01', '--out', again]);
    // The job is still on the bench, and a movement that was carried over is not carried over alone.
    expect(twice.folded).toBe(0);
    expect(twice.kept).toContainEqual({ count: 4, why: 'carried over before, with nothing to add' });
    expect(twice.kept).toContainEqual({ count: 1, why: 'after one of these in the same lot' });
  });
});
