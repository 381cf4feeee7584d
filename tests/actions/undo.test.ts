import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { drawEntries } from '../../src/actions/draw-entries.ts';
import { recentPostings } from '../../src/actions/recent-postings.ts';
import { undoPosting } from '../../src/actions/undo-posting.ts';
import { serialOfDay } from '../../src/core/serial-date.ts';
import { Bench, randomFrom } from '../helpers/bench.ts';
import { date, dayOf, type Literal, type LiteralRow } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

const today = dayOf(TODAY);
const ENTRY = { Entry: 'E-1', Date: date('2026-04-02'), Job: '26-014', Treatment: 'Mend tear', Extent: 6 };

function drawn(literal: Literal = { ...STUDIO, TreatmentLog: [ENTRY] }) {
  const bench = new Bench(literal);
  const { posting } = bench.do((snapshot, random) => drawEntries(snapshot, today, random));
  return { bench, posting: posting ?? '' };
}

function undo(bench: Bench, posting: string) {
  return bench.do((snapshot, random) => undoPosting(snapshot, posting, today, random, 'AK'));
}

function refusal(bench: Bench, posting: string): string {
  const answer = undoPosting(bench.workbook.snapshot(), posting, today, randomFrom(5));
  return answer.ok ? 'not refused' : answer.message;
}

describe('undoing a posting', () => {
  test('reverses every row of it, and the lots and the entry are as before', () => {
    const { bench, posting } = drawn();
    const originals = bench.rows('Movements');
    const undone = undo(bench, ` ${posting.toLowerCase()} `);
    const reversals = bench.rows('Movements').slice(originals.length);
    expect(reversals).toEqual(
      originals.map((row) => ({
        ...row,
        Movement: expect.stringMatching(/^M/),
        Quantity: -Number(row['Quantity']),
        Cost: -Number(row['Cost']),
        Reverses: row['Movement'],
        By: 'AK',
        Posted: serialOfDay(today, 1900),
        Posting: undone.posting,
      })),
    );
    expect(undone.posting).not.toBe(posting);
    expect(bench.rows('TreatmentLog')[0]).not.toHaveProperty('Drawn');
    expect(bench.rows('TreatmentLog')[0]).not.toHaveProperty('Drawn for');
    expect(bench.rows('Tissue')).toMatchObject([
      { Left: 2, Worth: 9 },
      { Left: 10, Worth: 40 },
    ]);
    expect(undone.remarks).toEqual([
      'Entry E-1 stays in the treatment log and is not drawn any more: draw draws it again. If the treatment was not done, delete its row.',
    ]);
  });

  test('and drawing again gives what was there before', () => {
    const { bench, posting } = drawn();
    const before = bench.rows('Movements').map(({ Lot, Quantity, Unit }) => ({ Lot, Quantity, Unit }));
    undo(bench, posting);
    bench.do((snapshot, random) => drawEntries(snapshot, today, random));
    const again = bench
      .rows('Movements')
      .slice(8)
      .map(({ Lot, Quantity, Unit }) => ({ Lot, Quantity, Unit }));
    expect(again).toEqual(before);
    expect(bench.rows('Tissue')).toMatchObject([{ Left: 0 }, { Left: 9 }]);
  });

  test('of two postings of one entry leaves it drawn in part', () => {
    const short: LiteralRow[] = [STUDIO.Tissue[0]];
    const { bench, posting } = drawn({ ...STUDIO, Tissue: short, TreatmentLog: [ENTRY] });
    bench.do(() => ({
      ok: true,
      changes: [
        {
          kind: 'append',
          table: 'Tissue',
          rows: [
            {
              Lot: { kind: 'text', text: 'T-3' },
              Material: { kind: 'text', text: 'Repair tissue 5' },
              Received: { kind: 'day', day: dayOf('2026-04-01') },
              Quantity: { kind: 'number', number: 5 },
              Unit: { kind: 'text', text: 'sheet' },
            },
          ],
        },
      ],
    }));
    bench.do((snapshot, random) => drawEntries(snapshot, today, random));
    const undone = undo(bench, posting);
    expect(bench.rows('TreatmentLog')).toMatchObject([{ Drawn: 'part', 'Drawn for': 6 }]);
    expect(undone.remarks).toEqual([
      'Entry E-1 stays drawn in part, by another posting: draw draws the rest again.',
    ]);
  });
});

describe('undoing what made a lot', () => {
  const row = { Date: date('2026-04-01'), Quantity: 40, Unit: 'g', Posting: 'P-9' };

  test('puts the ingredients back, counts the lot as nothing on its day, and is a reversal itself', () => {
    const make = { ...row, Movement: 'M-1', Kind: 'Make', Lot: 'W-1', Into: 'P-1' };
    const bench = new Bench({ ...STUDIO, Movements: [make] });
    const undone = undo(bench, 'P-9');
    expect(bench.rows('Movements').slice(1)).toMatchObject([
      { Kind: 'Make', Lot: 'W-1', Quantity: -40, Into: 'P-1', Reverses: 'M-1', Posting: undone.posting },
      {
        Kind: 'Count',
        Lot: 'P-1',
        Quantity: -200,
        Date: serialOfDay(dayOf('2026-04-01'), 1900),
        Note: 'not made after all',
        Posting: undone.posting,
      },
    ]);
    expect(bench.rows('Paste')).toMatchObject([
      { Lot: 'P-1', Left: 0, Worth: 0 },
      { Lot: 'W-1', Left: 1, Worth: 12 },
    ]);
    expect(undone.remarks).toEqual(['The row of lot P-1 stays where it is; nothing is left of it.']);
    expect(refusal(bench, 'P-9')).toBe('Posting P-9 has been taken back already.');
    expect(refusal(bench, undone.posting ?? '')).toMatch(
      /took another one back itself, and a reversal is never reversed: make or open it again instead/,
    );
    const [latest, first] = recentPostings(booksOf(bench.workbook.snapshot()).ledger, 2);
    expect([latest?.isReversal, latest?.isDrawnAgain, first?.reversed]).toEqual([true, false, true]);
  });

  test('or split it off: the sheets go back to the lot they came from', () => {
    const split = {
      ...row,
      Movement: 'M-1',
      Kind: 'Count',
      Lot: 'T-2',
      Into: 'T-1',
      Quantity: -2,
      Unit: 'sheet',
    };
    const bench = new Bench({ ...STUDIO, Movements: [split] });
    undo(bench, 'P-9');
    expect(bench.rows('Movements').slice(1)).toMatchObject([
      { Kind: 'Count', Lot: 'T-2', Quantity: 2, Reverses: 'M-1' },
      { Kind: 'Count', Lot: 'T-1', Quantity: -2, Note: 'not opened after all' },
    ]);
    expect(bench.rows('Tissue')).toMatchObject([
      { Lot: 'T-1', Left: 0, Worth: 0 },
      { Lot: 'T-2', Left: 10, Worth: 40 },
    ]);
  });

  test('where the lot’s row is gone, only the ingredients go back', () => {
    const make = { ...row, Movement: 'M-1', Kind: 'Make', Lot: 'W-1', Into: 'P-0' };
    const bench = new Bench({ ...STUDIO, Movements: [make] });
    expect(undo(bench, 'P-9').remarks).toEqual([]);
    expect(bench.rows('Movements')).toHaveLength(2);
  });
});

describe('what can’t be undone is refused, and nothing is changed', () => {
  test('a posting that is not there; the latest are named', () => {
    const { bench, posting } = drawn();
    expect(refusal(bench, 'P-0')).toBe(`No movement has the posting P-0. The latest are ${posting}.`);
    expect(refusal(new Bench(STUDIO), 'P-0')).toBe(
      'No movement has the posting P-0. No movement has a posting yet.',
    );
  });

  test('one that was taken back, or took back itself', () => {
    const { bench, posting } = drawn();
    const second = undo(bench, posting).posting ?? '';
    expect(refusal(bench, posting)).toBe(`Posting ${posting} has been taken back already.`);
    expect(refusal(bench, second)).toBe(
      `Posting ${second} took another one back itself, and a reversal is never reversed: draw the entries again instead.`,
    );
  });

  const MAKE = {
    Movement: 'M-1',
    Date: '2026-04-01',
    Kind: 'Make',
    Lot: 'W-1',
    Quantity: 40,
    Unit: 'g',
    Into: 'P-1',
    Posting: 'P-9',
  };
  test('one that made a lot which has been touched since, by whom', () => {
    const touched = [
      MAKE,
      { ...MAKE, Movement: 'M-2', Kind: 'Use', Lot: 'P-1', Into: null, Posting: 'P-10' },
    ];
    expect(refusal(new Bench({ ...STUDIO, Movements: touched }), 'P-9')).toBe(
      'Lot P-1, which posting P-9 made, has other movements: take back posting P-10 first.',
    );
    const byHand = touched.map((row) => (row.Kind === 'Use' ? { ...row, Posting: null } : row));
    expect(refusal(new Bench({ ...STUDIO, Movements: byHand }), 'P-9')).toMatch(
      /take back movement M-2 first/,
    );
    const laterToo = [MAKE, { ...MAKE, Movement: 'M-2', Posting: 'P-10' }];
    expect(refusal(new Bench({ ...STUDIO, Movements: laterToo }), 'P-9')).toMatch(
      /take back posting P-10 first/,
    );
  });

  test('one of which a movement’s identifier stands in two rows', () => {
    const use = { ...MAKE, Kind: 'Use', Into: null };
    const message = refusal(new Bench({ ...STUDIO, Movements: [use, { ...use, Posting: null }] }), 'P-9');
    expect(message).toBe(
      'Movement M-1 stands in two rows, so a reversing row could mean either: give one of them another identifier.',
    );
  });

  test('a workbook without Movements, or of a newer version', () => {
    const answer = undoPosting(snapshotOf({}), 'P-9', today, randomFrom(1));
    expect(answer).toMatchObject({ ok: false, message: expect.stringMatching(/no table Movements/) });
    const newer = { ...STUDIO, Settings: [{ Setting: 'tables version', Value: 3 }] };
    expect(undoPosting(snapshotOf(newer), 'P-9', today, randomFrom(1))).toMatchObject({ ok: false });
  });
});
