import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emptyBath, keepBath } from '../../src/actions/bath.ts';
import { booksOf } from '../../src/actions/books.ts';
import { undoPosting } from '../../src/actions/undo-posting.ts';
import { bathShares } from '../../src/core/bath.ts';
import { decimal, ratio, sum } from '../../src/core/exact-number.ts';
import { costOfJob } from '../../src/core/job-cost.ts';
import { lot as lotRecord, material, movement } from '../core/helpers/stock-records.ts';
import { account, ledgerOf } from '../core/helpers/studio-of.ts';
import { Bench, randomFrom } from '../helpers/bench.ts';
import { date, dayOf, type Literal, type LiteralRow } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';

const today = dayOf('2026-04-05');

function use(name: string, quantity: number, job: string | null, more: LiteralRow = {}): LiteralRow {
  const row = {
    Movement: name,
    Date: date('2026-04-02'),
    Kind: 'Use',
    Lot: 'B-1',
    Unit: 'ml',
    Posting: 'P-1',
  };
  return { ...row, Quantity: quantity, Job: job, ...more };
}

function studio(movements: readonly LiteralRow[], lot: LiteralRow = {}): Literal {
  return {
    Materials: [{ Material: 'Limewater', Kind: 'Buffer', 'Stock unit': 'ml' }],
    Buffers: [
      {
        Lot: 'B-1',
        Material: 'Limewater',
        Received: date('2026-04-01'),
        Quantity: 1000,
        Unit: 'ml',
        Cost: 10,
        ...lot,
      },
    ],
    Movements: movements,
    Jobs: ['J-1', 'J-2'].map((job) => ({ Job: job, Stage: 'On the bench' })),
    Items: [{ Job: 'J-2', Item: 'A' }],
    Settings: [{ Setting: 'currency', Value: 'EUR' }],
  };
}

function empty(bench: Bench, on = today) {
  return bench.do((snapshot, random) =>
    emptyBath(snapshot, { lot: 'b-1', date: on, by: 'AK' }, today, random),
  );
}

function wasted(bench: Bench) {
  return bench
    .rows('Movements')
    .filter(({ Kind }) => Kind === 'Waste')
    .map((row) => [row['Job'] ?? null, row['Item'] ?? null, row['Quantity'], row['Cost']]);
}

function refused(movements: readonly LiteralRow[], lot: LiteralRow = {}, on = today): string {
  const request = { lot: 'B-1', date: on, by: null };
  const answer = emptyBath(snapshotOf(studio(movements, lot)), request, today, randomFrom(1));
  return answer.ok ? 'not refused' : answer.message;
}

describe('emptying a bath', () => {
  test('what is left falls on the jobs and items that used it, by how much each did', () => {
    const bench = new Bench(
      studio([
        use('M-1', 300, 'J-1'),
        use('M-2', 100, 'J-2', { Item: 'A' }),
        use('M-3', 100, 'j-1'),
        use('M-4', 50, 'J-2'),
        use('M-5', -50, 'J-2', { Reverses: 'M-4' }),
      ]),
    );
    const written = empty(bench);
    // 500 ml are left, worth 5.00; J-1 used 400 ml, item A of J-2 100 ml.
    expect(wasted(bench)).toEqual([
      ['J-1', null, 400, expect.any(Number)],
      ['J-2', 'A', 100, expect.any(Number)],
    ]);
    expect(wasted(bench).map(([, , , cost]) => cost)).toEqual([4, 1]);
    expect(bench.rows('Buffers')).toMatchObject([{ Left: 0, Worth: 0 }]);
    expect(written.remarks).toEqual([]);
    expect(bench.rows('Movements').at(-1)).toMatchObject({
      By: 'AK',
      Posting: written.posting,
      Note: 'bath emptied',
    });
  });

  test('a normal waste is the job’s cost, an abnormal one is not', () => {
    // IAS 2 paragraph 16(a): abnormal amounts of wasted materials are no cost of the work; read second-hand.
    const costs = (lot: LiteralRow) => {
      const bench = new Bench(studio([use('M-1', 400, 'J-1')], lot));
      empty(bench);
      const { ledger } = booksOf(bench.workbook.snapshot());
      return { job: costOfJob(ledger, 'J-1', today).cost, rows: wasted(bench) };
    };
    expect(costs({})).toEqual({ job: 1000n, rows: [['J-1', null, 600, 6]] });
    expect(costs({ 'Use by': date('2026-04-04') })).toEqual({ job: 400n, rows: [[null, null, 600, 6]] });
  });

  test('no job used it: it is the studio’s loss; some of it: as much of it', () => {
    const unused = new Bench(studio([]));
    expect(empty(unused).remarks).toEqual(['No job used it, so what is thrown away is the studio’s loss.']);
    expect(wasted(unused)).toEqual([[null, null, 1000, 10]]);
    const half = new Bench(studio([use('M-1', 100, 'J-1'), use('M-2', 100, null)]));
    expect(empty(half).remarks).toEqual([
      'A part of it was used for no job, so as much of what is thrown away is the studio’s loss.',
    ]);
    expect(wasted(half).map(([job, , quantity]) => [job, quantity])).toEqual([
      ['J-1', 400],
      [null, 400],
    ]);
  });

  test('it is one posting, and can be taken back', () => {
    const bench = new Bench(studio([use('M-1', 300, 'J-1'), use('M-2', 100, 'J-2')]));
    const { posting } = empty(bench);
    bench.do((snapshot, random) => undoPosting(snapshot, posting ?? '', today, random));
    expect(bench.rows('Buffers')).toMatchObject([{ Left: 600, Worth: 6 }]);
  });

  test('whatever was used, the shares are what is left, exactly, and nearly in proportion', () => {
    const amounts = fc.array(fc.integer({ min: 1, max: 9_999_999 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(amounts, fc.integer({ min: 1, max: 10_000_000 }), (millionths, leftMillionths) => {
        const used = millionths.map((each) => ratio(each, 1_000_000));
        const left = ratio(leftMillionths, 1_000_000);
        const total = sum(used);
        const ledger = ledgerOf({
          materials: [material('Bath', 'ml')],
          lots: [lotRecord('B', 'Bath', '2026-04-01', total.add(left).toString(), { unit: 'ml' })],
          movements: used.map((quantity, place) =>
            movement(`M${place}`, '2026-04-02', 'Use', 'B', quantity.toString(), {
              unit: 'ml',
              job: `J-${place}`,
            }),
          ),
        });
        const shares = bathShares(account(ledger, 'B'), left);
        expect(sum(shares.map(({ quantity }) => quantity)).equals(left)).toBe(true);
        for (const { job, quantity } of shares) {
          const own = used[Number(job?.slice(2))] ?? ratio(0, 1);
          const off = quantity.sub(left.mul(own).div(total)).abs();
          expect(off.compare(ratio(used.length, 1_000_000)) <= 0).toBe(true);
          expect(quantity.compare(0) > 0).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('can’t be done where nothing is left, it was used since, or is not there', () => {
    expect(refused([use('M-1', 1000, 'J-1')])).toBe('Nothing is left of lot B-1.');
    expect(refused([use('M-1', 1200, 'J-1')])).toBe(
      'Of lot B-1 200 ml more were used than recorded: count it or mend its movements first.',
    );
    expect(refused([use('M-1', 10, 'J-1')], {}, dayOf('2026-04-01'))).toBe(
      "Lot B-1 has a movement on 2 Apr 2026, so it wasn't emptied on 1 Apr 2026: give that day or a later one.",
    );
    expect(refused([], {}, dayOf('2026-04-06'))).toMatch(/after today/);
    expect(refused([], {}, dayOf('2026-03-31'))).toMatch(/came in only on 1 Apr 2026/);
    const answer = emptyBath(
      snapshotOf(studio([])),
      { lot: 'B-2', date: today, by: null },
      today,
      randomFrom(1),
    );
    expect(answer).toMatchObject({
      message: 'There is no lot called B-2 in the stock tables. Did you mean B-1?',
    });
  });
});

describe('keeping a bath', () => {
  const keep = (literal: Literal, ph: string | null) =>
    keepBath(
      snapshotOf(literal),
      { lot: 'B-1', ph: ph === null ? null : decimal(ph), by: null },
      today,
      randomFrom(1),
    );

  test('writes its pH and nothing else', () => {
    const bench = new Bench(studio([use('M-1', 100, 'J-1')]));
    const before = bench.rows('Movements');
    const kept = bench.do((snapshot, random) =>
      keepBath(snapshot, { lot: 'B-1', ph: decimal('11.8'), by: null }, today, random),
    );
    expect(kept.remarks).toEqual(['900 ml of lot B-1 are kept, at pH 11.8.']);
    expect(bench.rows('Buffers')[0]).toMatchObject({ pH: 11.8 });
    expect(bench.rows('Movements')).toEqual(before);
  });

  test('without a pH nothing is written', () => {
    expect(keep(studio([]), null)).toMatchObject({
      changes: [],
      remarks: ['1000 ml of lot B-1 are kept; no pH was given.'],
    });
  });

  test('what can’t be is refused', () => {
    expect(keep(studio([]), '15')).toMatchObject({ message: "A pH of 15 can't be: 0 to 14 is right." });
    expect(keep(studio([use('M-1', 1000, 'J-1')]), '11')).toMatchObject({
      message: 'Nothing is left of lot B-1 that could be kept.',
    });
    const { Buffers, ...rest } = studio([]);
    const literal = { ...rest, Buffers: { rows: Buffers as readonly LiteralRow[], without: ['pH'] } };
    expect(keep(literal, '11')).toMatchObject({ ok: false, message: expect.stringMatching(/pH/) });
  });
});
