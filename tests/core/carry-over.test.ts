import { describe, expect, test } from 'vitest';
import { carriedOver } from './helpers/carried-records.ts';
import { DAY, folded, kept, paste, use } from './helpers/folded-paste.ts';
import { saidOn } from './helpers/said.ts';
import { lot, movement } from './helpers/stock-records.ts';
import { on } from './helpers/studio-of.ts';

describe('how far a lot is folded', () => {
  test('to the last day before the 365 that end with the day, which stay', () => {
    const records = paste([
      use('M1', '2024-02-01', 5),
      use('M2', '2025-01-01', 6),
      use('M3', '2025-01-02', 7),
    ]);
    expect(folded(records)).toEqual(['A 11 g 2025-01-01', 'M3']);
    expect(kept(records)).toEqual({ recent: 1 });
  });

  test('up to the first movement of an open job, with all that come after it', () => {
    const records = paste([
      use('M1', '2024-02-01', 5, 'over'),
      use('M2', '2024-02-02', 6, 'open'),
      use('M3', '2024-02-03', 7),
    ]);
    expect(folded(records)).toEqual(['A 5 g 2024-02-01', 'M2', 'M3']);
    expect(kept(records)).toEqual({ 'open job': 1, behind: 1 });
  });

  test('not into a day of which a movement stays: its place among those of the day would be luck', () => {
    const records = paste([
      use('M1', '2024-02-01', 5),
      use('M2', '2024-02-02', 6),
      use('M3', '2024-02-02', 7, 'open'),
    ]);
    expect(folded(records)).toEqual(['A 5 g 2024-02-01', 'M2', 'M3']);
    expect(kept(records)).toEqual({ 'open job': 1, exact: 1 });
  });

  test('a job that nobody knows stays open; STUDIO and what is nobody’s do not', () => {
    expect(
      folded(paste([use('M1', '2024-02-01', 5, 'studio'), use('M2', '2024-02-02', 6, 'nowhere')])),
    ).toEqual(['A 5 g 2024-02-01', 'M2']);
  });

  test('a reversal goes with its row, and stays with it', () => {
    const reversal = movement('M3', '2025-03-01', 'Use', 'A', -6, { reverses: 'M2' });
    const records = paste([use('M1', '2024-02-01', 5), use('M2', '2024-02-02', 6), reversal]);
    expect(folded(records)).toEqual(['A 5 g 2024-02-01', 'M2', 'M3']);
    expect(kept(records)).toEqual({ recent: 1, reversal: 1 });
    const early = movement('M3', '2024-03-01', 'Use', 'A', -6, { reverses: 'M2' });
    expect(folded(paste([use('M1', '2024-02-01', 5), use('M2', '2024-02-02', 6), early]))).toEqual([
      'A 5 g 2024-03-01',
    ]);
  });

  test('back to where one movement costs what they did: a reversal may leave a coin that no share has', () => {
    const records = paste(
      [
        use('M1', '2024-02-01', 1),
        movement('M2', '2024-02-02', 'Put back', 'A', 1),
        use('M3', '2024-02-03', 1),
        movement('M4', '2024-02-04', 'Put back', 'A', -1, { reverses: 'M2' }),
      ],
      { lots: [lot('A', 'Paste', '2024-01-01', 2, { cost: '0.01' })] },
    );
    // All four have charged 2 coins of 1. Without M3 and M4 a reversal would be torn from its row.
    expect(folded(records)).toEqual(['A 1 g 2024-02-01', 'M2', 'M3', 'M4']);
    expect(kept(records)).toMatchObject({ reversal: 1 });
  });

  test('in the lot’s unit where that holds it exactly, else in one that does', () => {
    const oz = (name: string, day: string, quantity: number) =>
      movement(name, day, 'Use', 'A', quantity, { unit: 'oz' });
    expect(folded(paste([oz('M1', '2024-02-01', 1), oz('M2', '2024-02-02', 0.5)]))).toEqual([
      'A 1.5 oz 2024-02-02',
    ]);
    const mixed = paste([oz('M1', '2024-02-01', 1), use('M2', '2024-02-02', 3)]);
    expect(folded(mixed)).toEqual(['A 1 oz 2024-02-01', 'M2']);
    expect(kept(mixed)).toEqual({ exact: 1 });
  });

  test('in a unit that is rounded as coarsely, where that decides whether a later rest is nothing', () => {
    const records = paste([movement('M1', '2024-02-01', 'Use', 'A', '0.050001', { unit: 'kg' })]);
    expect(folded(records)).toEqual(['A 0.050001 kg 2024-02-01']);
    const emptied = movement('N1', '2026-02-01', 'Use', 'A', '49.9993');
    const [one, other] = [records, carriedOver(records, DAY).records].map((each) =>
      saidOn({ ...each, movements: [...each.movements, emptied] }, on('2026-03-01')),
    );
    expect(other).toEqual(one);
    expect(one?.[0]).toMatch(/^A 0 /);
  });

  test('what was put back and counted is told by the sign; nothing drawn in all is a Carried of 0', () => {
    const records = paste([use('M1', '2024-02-01', 5), movement('M2', '2024-02-02', 'Count', 'A', 8)]);
    expect(folded(records)).toEqual(['A -3 g 2024-02-02']);
    const back = movement('M2', '2024-02-02', 'Put back', 'A', 5);
    expect(folded(paste([use('M1', '2024-02-01', 5), back]))).toEqual(['A 0 g 2024-02-02']);
  });
});
