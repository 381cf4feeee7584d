import { describe, expect, test } from 'vitest';
import { KEPT_BECAUSE } from '../../src/core/carry-over.ts';
import type { CountRecord, MovementRecord } from '../../src/core/records.ts';
import { carriedOver } from './helpers/carried-records.ts';
import { DAY, folded, kept, paste, use } from './helpers/folded-paste.ts';
import { lot, material, movement, qty, recipe, rowOf, unit } from './helpers/stock-records.ts';
import { on } from './helpers/studio-of.ts';
import { entry, rate, treatment } from './helpers/work-records.ts';

describe('what the new workbook must still answer', () => {
  const rates = [rate('Line', 'Paste', 5)];

  test('an entry goes only when all its movements do, and they only with it', () => {
    const lots = [lot('A', 'Paste', '2024-01-01', 100), lot('B', 'Paste', '2024-01-01', 100)];
    const records = paste(
      [
        use('M1', '2024-02-01', 5, 'over', 'E1'),
        movement('M2', '2024-02-01', 'Use', 'B', 5, { job: 'over', entry: 'E1' }),
        movement('M0', '2024-01-20', 'Use', 'B', 5, { job: 'open' }),
        use('M3', '2024-01-30', 1),
      ],
      {
        lots,
        treatments: [treatment('Line')],
        usageRates: rates,
        entries: [entry('E1', '2024-02-01', 'Line', 2, { job: 'over', drawn: 'yes', drawnFor: 2 })],
      },
    );
    expect(folded(records)).toEqual(['A 1 g 2024-01-30', 'M0', 'M1', 'M2']);
    expect(kept(records)).toEqual({ 'open job': 1, entry: 1, behind: 1 });
    expect(carriedOver(records, DAY).answer.entries).toEqual([]);
  });

  test('an entry drawn in part, one changed since, and one still to be drawn stay, with what they rest on', () => {
    const of = (more: Parameters<typeof entry>[4]) =>
      paste(
        [use('M0', '2024-01-20', 1), use('M1', '2024-02-01', 5, 'over', 'E1'), use('M2', '2024-03-01', 1)],
        {
          treatments: [treatment('Line')],
          usageRates: rates,
          entries: [entry('E1', '2024-02-01', 'Line', 1, { job: 'over', ...more })],
        },
      );
    expect(folded(of({ drawn: 'yes', drawnFor: 1 }))).toEqual(['A 7 g 2024-03-01']);
    expect(folded(of({ drawn: 'part', drawnFor: 2 }))).toEqual(['A 1 g 2024-01-20', 'M1', 'M2']);
    expect(folded(of({ drawn: 'yes', drawnFor: 2 }))).toEqual(['A 1 g 2024-01-20', 'M1', 'M2']);
    const waiting = paste([use('M0', '2024-01-20', 1), use('M2', '2024-03-01', 1)], {
      treatments: [treatment('Line')],
      usageRates: rates,
      entries: [entry('E1', '2024-02-01', 'Line', 1, { job: 'over' })],
    });
    expect(folded(waiting)).toEqual(['A 1 g 2024-01-20', 'M2']);
    expect(kept(waiting)).toEqual({ 'entry to draw': 1 });
  });

  test('entries that share a fixed quantity stay together, or another would take it anew', () => {
    const sharing = (per: 'day' | 'entry') =>
      paste(
        [
          movement('M1', '2024-02-01', 'Use', 'B', 25, { job: 'over', entry: 'E1' }),
          use('M2', '2024-02-01', 5, 'open', 'E2'),
        ],
        {
          lots: [lot('A', 'Paste', '2024-01-01', 100), lot('B', 'Paste', '2024-01-01', 100)],
          treatments: [treatment('Line')],
          usageRates: [rate('Line', 'Paste', 5, { fixed: 20, per })],
          entries: [
            entry('E1', '2024-02-01', 'Line', 1, { job: 'over', drawn: 'yes', drawnFor: 1 }),
            entry('E2', '2024-02-01', 'Line', 1, { job: 'open', drawn: 'yes', drawnFor: 1 }),
          ],
        },
      );
    expect(folded(sharing('day'))).toEqual(['M1', 'M2']);
    expect(folded(sharing('entry'))).toEqual(['B 25 g 2024-02-01', 'M2']);
  });

  test('a count that is not posted keeps the days from the one before it', () => {
    const count: CountRecord = {
      count: 'C1',
      stocktake: 'S',
      lot: 'A',
      countedOn: on('2024-02-03'),
      quantity: qty(90),
      unit: unit('g'),
      gross: null,
      leftThen: qty(94),
      leftDayBefore: qty(94),
      by: null,
      posting: null,
      note: null,
      ...rowOf('Counts'),
    };
    const movements = [use('M1', '2024-02-01', 5), use('M2', '2024-02-02', 1), use('M3', '2024-02-04', 1)];
    expect(folded(paste(movements, { counts: [count] }))).toEqual(['A 5 g 2024-02-01', 'M2', 'M3']);
    expect(folded(paste(movements, { counts: [{ ...count, posting: 'P1' }] }))).toEqual(['A 7 g 2024-02-04']);
  });

  test('what made a lot that is still in use stays, and what made that, to any depth', () => {
    const into = (name: string, day: string, of: string, made: string) => ({
      ...movement(name, day, 'Make', of, 10),
      into: made,
    });
    const chain = (last: MovementRecord) =>
      paste([into('M1', '2024-02-01', 'A', 'B'), into('M2', '2024-02-02', 'B', 'C'), last], {
        lots: ['A', 'B', 'C'].map((name, place) =>
          lot(name, 'Paste', `2024-02-0${place === 0 ? 1 : place}`, name === 'A' ? 100 : 10),
        ),
      });
    const waste = movement('M3', '2024-03-01', 'Waste', 'C', 10);
    expect(folded(chain(waste))).toEqual(['A 10 g 2024-02-01', 'B 10 g 2024-02-02', 'C 10 g 2024-03-01']);
    expect(folded(chain({ ...waste, quantity: qty(9) }))).toEqual(['C 9 g 2024-03-01', 'M1', 'M2']);
    expect(folded(chain({ ...waste, job: 'open' }))).toEqual(['M1', 'M2', 'M3']);
  });

  test('who used a bath that is still good', () => {
    const bath = (life: number) =>
      paste([use('M1', '2024-02-01', 5, 'over')], {
        recipes: [recipe('R', 'Paste', 100, { life })],
        lots: [lot('A', 'Paste', '2024-01-01', 100, { recipe: 'R', opened: '2024-01-01' })],
      });
    expect(folded(bath(3000))).toEqual(['M1']);
    expect(kept(bath(3000))).toEqual({ bath: 1 });
    expect(folded(bath(30))).toEqual(['A 5 g 2024-02-01']);
  });

  test('since when a lot is open, which its folded use told', () => {
    const records = paste([use('M1', '2024-02-01', 5), use('M2', '2024-03-01', 5)], {
      materials: [material('Paste', 'g', { lifeOpenedDays: 800 })],
    });
    const { answer, records: carried } = carriedOver(records, DAY);
    expect(answer.lots.map(({ opened }) => opened)).toEqual([on('2024-02-01')]);
    expect(carried.lots[0]?.opened).toBe(on('2024-02-01'));
    folded(records);
    const reversed = movement('M3', '2024-03-05', 'Use', 'A', -5, { reverses: 'M1' });
    expect(
      carriedOver({ ...records, movements: [...records.movements, reversed] }, DAY).answer.lots,
    ).toMatchObject([{ opened: on('2024-03-01') }]);
    const written = { ...records, lots: [lot('A', 'Paste', '2024-01-01', 100, { opened: '2024-01-05' })] };
    expect(carriedOver(written, DAY).answer.lots).toMatchObject([{ opened: null }]);
  });

  test('every reason is said in words of its own', () => {
    const words = Object.values(KEPT_BECAUSE);
    expect(new Set(words).size).toBe(words.length);
  });
});
