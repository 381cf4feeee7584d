import { describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { discardExpired, expiredLots } from '../../src/actions/discard-expired.ts';
import { type LotRetest, retestLot } from '../../src/actions/retest-lot.ts';
import { undoPosting } from '../../src/actions/undo-posting.ts';
import { dailyDemand } from '../../src/core/demand.ts';
import { disposalsIn } from '../../src/core/disposals.ts';
import { exact } from '../../src/core/exact-number.ts';
import { goodUntilReason, isExpiredOn } from '../../src/core/life.ts';
import { leftOn, worthOn } from '../../src/core/lot-account.ts';
import { Bench } from '../helpers/bench.ts';
import { Desk } from '../helpers/desk.ts';
import { date, dayOf, formula, type Literal, type LiteralRow } from '../helpers/literal.ts';

const TODAY = dayOf('2026-04-03');
const SERIAL = 25_569;

const LOTS: LiteralRow[] = [
  {
    Lot: 'P-1',
    Material: 'paste',
    Received: date('2026-03-20'),
    Quantity: 300,
    Unit: 'g',
    Cost: 4,
    Recipe: 'thick',
  },
  { Lot: 'P-2', Material: 'paste', Received: date('2026-04-02'), Quantity: 300, Unit: 'g', Recipe: 'thick' },
  {
    Lot: 'X-1',
    Material: 'peroxide',
    Received: date('2026-01-10'),
    Quantity: 500,
    Unit: 'ml',
    Cost: 9,
    'Use by': date('2026-04-02'),
  },
  {
    Lot: 'X-2',
    Material: 'peroxide',
    Received: date('2025-01-10'),
    Quantity: 100,
    Unit: 'ml',
    'Use by': date('2026-01-31'),
  },
  {
    Lot: 'X-3',
    Material: 'peroxide',
    Received: date('2025-01-10'),
    Quantity: 100,
    Unit: 'ml',
    Cost: 1,
    'Use by': date('2026-01-31'),
    State: 'Discarded',
  },
];

function literal(more: Literal = {}): Literal {
  return {
    Materials: [
      { Material: 'paste', Kind: 'Paste', 'Stock unit': 'g', 'pH low': 6, 'pH high': 8 },
      { Material: 'peroxide', Kind: 'Buffer', 'Stock unit': 'ml', Disposal: 'dilute, see sheet' },
    ],
    Paste: LOTS,
    Recipes: [{ Recipe: 'thick', Makes: 'paste', Yield: 300, Unit: 'g', 'Life days': 7 }],
    Movements: [
      {
        Movement: 'M-1',
        Date: date('2026-03-21'),
        Kind: 'Use',
        Lot: 'P-1',
        Quantity: 100,
        Unit: 'g',
        Job: 'J-1',
      },
    ],
    Jobs: [{ Job: 'J-1', Stage: 'On the bench' }],
    Settings: [{ Setting: 'currency', Value: 'EUR' }],
    ...more,
  };
}

type Snapshot = Parameters<typeof retestLot>[0];
type Random = Parameters<typeof retestLot>[3];

const retest =
  (more: Partial<LotRetest> = {}) =>
  (snapshot: Snapshot, random: Random) =>
    retestLot(
      snapshot,
      {
        lot: 'P-1',
        on: dayOf('2026-04-01'),
        until: dayOf('2026-04-20'),
        by: 'R. L.',
        ph: null,
        ...more,
      },
      TODAY,
      random,
    );

const discard =
  (lots: readonly string[] | null = null) =>
  (snapshot: Snapshot, random: Random) =>
    discardExpired(snapshot, lots, TODAY, random, 'AK');

describe('testing whether a lot is still good', () => {
  test('writes the test into the row, and Good until follows', () => {
    const bench = new Bench(literal());
    const answer = bench.do(retest({ ph: exact(7.2) }));
    expect(bench.rows('Paste')[0]).toMatchObject({
      Retested: dayOf('2026-04-01') + SERIAL,
      'Retested until': dayOf('2026-04-20') + SERIAL,
      'Retested by': 'R. L.',
      pH: 7.2,
      'Good until': dayOf('2026-04-20') + SERIAL,
    });
    expect(bench.rows('Movements')).toHaveLength(1);
    expect(answer.posting).toBe(null);
    expect(answer.remarks).toEqual(['Lot P-1 is good until 20 Apr 2026 (retested 1 Apr 2026 by R. L.).']);
  });

  test('is reached on its day only: the day before, the lot had expired', () => {
    const desk = new Desk(literal());
    desk.do(retest());
    const own = desk.account('P-1');
    expect(isExpiredOn(own, dayOf('2026-03-31'))).toBe(true);
    expect(isExpiredOn(own, dayOf('2026-04-01'))).toBe(false);
    const codes = (day: string) =>
      checkWorkbook(desk.snapshot, dayOf(day))
        .notices.filter(({ subject }) => subject === 'P-1')
        .map(({ code, message }) => `${code} ${message.split(';')[0] ?? ''}`);
    expect(codes('2026-03-31')).toEqual([
      'expired Lot P-1 (paste) was good until 27 Mar 2026 (made 20 Mar 2026, keeps 7 days)',
    ]);
    expect(codes('2026-04-20')).toEqual([
      'expiring Lot P-1 (paste) is good until today (retested 1 Apr 2026 by R. L.)',
    ]);
  });

  test('says when something that began later ends sooner', () => {
    const opened = literal({
      Materials: [{ Material: 'peroxide', Kind: 'Buffer', 'Stock unit': 'ml', 'Life opened days': 3 }],
      Paste: [{ ...LOTS[2], Opened: date('2026-04-03') }],
    });
    expect(new Desk(opened).do(retest({ lot: 'X-1' })).remarks).toEqual([
      'Lot X-1 is good until 6 Apr 2026 only (opened 3 Apr 2026, keeps 3 days): that begins after the test, and ends ' +
        'before 20 Apr 2026.',
    ]);
  });

  test('outside the pH that the material should have, is noticed at the cell', () => {
    const desk = new Desk(literal());
    desk.do(retest({ ph: exact(8.4) }));
    const { notices } = checkWorkbook(desk.snapshot, TODAY);
    expect(notices.filter(({ code }) => code === 'ph-outside')).toMatchObject([
      { severity: 'warn', subject: 'P-1', address: expect.stringMatching(/^Paste!/) },
    ]);
  });

  test.each<[string, Partial<LotRetest>, string]>([
    ['a day after today', { on: dayOf('2026-04-04') }, 'is 4 Apr 2026, after today'],
    ['a day before the lot came', { on: dayOf('2026-03-19') }, 'came in only on 20 Mar 2026'],
    ['an end before the test', { until: dayOf('2026-03-31') }, 'throw it away or set it aside instead'],
    ['no name', { by: '  ' }, 'needs the name of the person'],
    ['a pH that can’t be', { ph: exact(14.5) }, "A pH of 14.5 can't be"],
    ['a discarded lot', { lot: 'X-3' }, 'Lot X-3 is discarded.'],
    ['another name', { lot: 'P-9' }, 'There is no lot called P-9 in the stock tables.'],
  ])('is refused for %s', (_name, more, message) => {
    expect(new Desk(literal()).refusal(retest(more))).toContain(message);
  });

  test('is refused without its columns, and leaves a formula alone', () => {
    const without = { Paste: { rows: LOTS, without: ['Retested', 'Retested by'] } };
    expect(new Desk(literal(without)).refusal(retest())).toBe(
      'The table Paste has no columns Retested and Retested by, where this must be written: add them, or bring the ' +
        'tables up to date with upgrade.',
    );
    const own = { Paste: [{ ...LOTS[0], pH: formula(7) }] };
    const answer = new Desk(literal(own)).do(retest({ ph: exact(7.2) }));
    expect(answer.remarks[0]).toBe(
      'A formula stands in pH of lot P-1 and is left alone: what belongs there is not kept.',
    );
    expect(answer.changes.some((change) => change.kind === 'set' && change.column === 'pH')).toBe(false);
    const until = { Paste: [{ ...LOTS[0], 'Retested until': formula(null) }] };
    expect(new Desk(literal(until)).refusal(retest())).toContain(
      'A formula stands in Retested until of lot P-1',
    );
  });
});

describe('throwing away what has expired', () => {
  test('lists what has gone off with its reason, worth and rule, and nothing else', () => {
    const { ledger } = new Desk(literal());
    const listed = expiredLots(ledger, TODAY).map(({ lot, left, reason, worth, disposal }) =>
      [lot.name, left.toString(), reason, worth, disposal].join(' | '),
    );
    expect(listed).toEqual([
      'X-2 | 100 | printed date |  | dilute, see sheet',
      'P-1 | 200 | made 20 Mar 2026, keeps 7 days | 267 | ',
      'X-1 | 500 | printed date | 900 | dilute, see sheet',
    ]);
    expect(expiredLots(ledger, dayOf('2026-04-02')).map(({ lot }) => lot.name)).toEqual(['X-2', 'P-1']);
  });

  test('is Waste of nobody’s job, under one posting, with the reason', () => {
    const bench = new Bench(literal());
    const { posting, discarded } = bench.do(discard());
    expect(discarded.map(({ lot }) => lot.name)).toEqual(['X-2', 'P-1', 'X-1']);
    const wastes = bench.rows('Movements').slice(1);
    expect(
      wastes.map(({ Kind, Lot, Quantity, Cost, Note, Posting }) => [
        Kind,
        Lot,
        Quantity,
        Cost,
        Note,
        Posting,
      ]),
    ).toEqual([
      ['Waste', 'X-2', 100, undefined, 'gone off: printed date', posting],
      ['Waste', 'P-1', 200, 2.67, 'gone off: made 20 Mar 2026, keeps 7 days', posting],
      ['Waste', 'X-1', 500, 9, 'gone off: printed date', posting],
    ]);
    expect(wastes.every((row) => row['Job'] === undefined && row['Entry'] === undefined)).toBe(true);
    expect(bench.rows('Paste').map(({ Lot, Left, Worth }) => [Lot, Left, Worth])).toEqual([
      ['P-1', 0, 0],
      ['P-2', undefined, undefined],
      ['X-1', 0, 0],
      ['X-2', 0, undefined],
      ['X-3', undefined, undefined],
    ]);
    expect(bench.do(discard())).toMatchObject({ posting: null, discarded: [], changes: [] });
  });

  // IAS 2 (Inventories), paragraph 16 (a): abnormal amounts of wasted materials are excluded from the cost of
  // inventories and are expensed when they arise; paragraph 9 (lower of cost and net realisable value) is left to
  // the accountant. Read second-hand, in a summary.
  test('falls on no job, and nothing is written down before it is thrown away', () => {
    const desk = new Desk(literal());
    expect(worthOn(desk.account('X-1'), TODAY)).toBe(900n);
    desk.do(discard());
    const { jobWaste, studioLoss } = disposalsIn(desk.ledger, 2026);
    // 2.67 of paste and 9.00 of peroxide, and 1.00 of what was discarded by its state is of no known year.
    expect([jobWaste, studioLoss]).toEqual([0n, 1167n]);
    const ofJob = [...desk.ledger.accounts.values()]
      .flatMap(({ postings }) => postings)
      .filter(({ movement }) => movement.job !== null)
      .reduce((total, { cost }) => total + (cost ?? 0n), 0n);
    expect(ofJob).toBe(133n);
  });

  test('is no demand, and undoing it gives every figure back', () => {
    const desk = new Desk(literal());
    const figures = () =>
      ['P-1', 'P-2', 'X-1', 'X-2', 'X-3'].map((name) => {
        const own = desk.account(name);
        const days = [dayOf('2026-03-25'), TODAY, dayOf('2026-06-01')];
        return days.map((day) => [
          leftOn(own, day).toFraction(),
          worthOn(own, day),
          goodUntilReason(own, day),
        ]);
      });
    const before = figures();
    const demand = () => dailyDemand(desk.ledger, desk.account('P-1').lot.material, TODAY);
    const demanded = demand();
    const { posting } = desk.do(discard());
    expect(demand()).toEqual(demanded);
    expect(demanded.reduce((total, each) => total + each, 0)).toBe(100);
    expect(figures()).not.toEqual(before);
    desk.do((snapshot, random) => undoPosting(snapshot, posting ?? '', TODAY, random));
    expect(figures()).toEqual(before);
  });

  test('may be told which lots, each of which must have expired', () => {
    const desk = new Desk(literal());
    expect(desk.refusal(discard(['P-2']))).toBe(
      'Lot P-2 is good until 9 Apr 2026 (made 2 Apr 2026, keeps 7 days), so it has not expired; left in it: 300 g. ' +
        'If it is to go all the same, enter a Waste in Movements.',
    );
    expect(desk.refusal(discard(['X-3']))).toBe('Nothing is left of lot X-3 to throw away.');
    expect(desk.refusal(discard(['P-9']))).toContain('There is no lot called P-9');
    expect(desk.do(discard(['x-1', 'X-1'])).discarded.map(({ lot }) => lot.name)).toEqual(['X-1']);
    expect(leftOn(desk.account('P-1'), TODAY).toString()).toBe('200');
  });

  test('leaves a row alone that bears another’s identifier', () => {
    const twin = { Paste: [...LOTS, { ...LOTS[2], Quantity: 50 }] };
    const desk = new Desk(literal(twin));
    const answer = desk.do(discard());
    expect(answer.discarded.map(({ left }) => left.toString())).toEqual(['100', '200', '500']);
    expect(answer.remarks[0]).toContain('Lot X-1 stands in two rows');
  });
});
