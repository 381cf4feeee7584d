import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { logTreatment } from '../../src/actions/log-treatment.ts';
import { bringBack, retireSheet, setWet } from '../../src/actions/reuse-lot.ts';
import { undoPosting } from '../../src/actions/undo-posting.ts';
import { exact } from '../../src/core/exact-number.ts';
import { leftOn, stateOn, worthOn } from '../../src/core/lot-account.ts';
import { unitNamed } from '../../src/core/unit.ts';
import { maxUses, usesLeft } from '../../src/core/uses.ts';
import { Bench } from '../helpers/bench.ts';
import { Desk } from '../helpers/desk.ts';
import { date, dayOf, formula, type Literal, type LiteralRow } from '../helpers/literal.ts';

const TODAY = dayOf('2026-04-03');
const SERIAL = 25_569;
const USE_UNIT = unitNamed('use');
const BLOTTERS: LiteralRow = {
  Lot: 'R-1',
  Material: 'blotter',
  Received: date('2026-03-01'),
  Quantity: 5,
  Unit: 'sheet',
  Cost: 20,
};

function literal(lot: LiteralRow = {}, more: Literal = {}): Literal {
  return {
    Materials: [
      {
        Material: 'blotter',
        Kind: 'Release paper',
        'Stock unit': 'sheet',
        'Uses per unit': 10,
      },
      {
        Material: 'coated web',
        Description: 'Siliconised polyester',
        Kind: 'Release paper',
        'Stock unit': 'sheet',
        'Uses per unit': 10,
      },
      { Material: 'board', Kind: 'Housing', 'Stock unit': 'sheet' },
    ],
    ReleasePaper: [
      { ...BLOTTERS, ...lot },
      { ...BLOTTERS, Lot: 'S-1', Material: 'coated web' },
      { ...BLOTTERS, Lot: 'B-1', Material: 'board' },
    ],
    Movements: [use('M-1', 'R-1', 23), use('M-2', 'S-1', 23), { ...use('M-3', 'B-1', 2), Unit: 'sheet' }],
    TreatmentLog: [],
    Treatments: [{ Treatment: 'press', 'Extent unit': 'leaf' }],
    UsageRates: [{ Treatment: 'press', Material: 'blotter', 'Quantity per extent': 0.5, Unit: 'use' }],
    Jobs: [{ Job: 'J-1', Stage: 'On the bench' }],
    Settings: [{ Setting: 'currency', Value: 'EUR' }],
    ...more,
  };
}

function use(name: string, lot: string, quantity: number): LiteralRow {
  return {
    Movement: name,
    Date: date('2026-03-10'),
    Kind: 'Use',
    Lot: lot,
    Quantity: quantity,
    Unit: 'use',
    Job: 'J-1',
  };
}

type Snapshot = Parameters<typeof setWet>[0];
type Random = Parameters<typeof setWet>[3];
const number = (value: number | null) => (value === null ? null : exact(value));

const retire =
  (presses: number | null, lot = 'R-1', on = '2026-04-01') =>
  (snapshot: Snapshot, random: Random) =>
    retireSheet(snapshot, { lot, presses: number(presses), date: dayOf(on), by: 'AK' }, TODAY, random);

const wet =
  (sheets: number | null = null, lot = 'R-1', on = '2026-04-01') =>
  (snapshot: Snapshot, random: Random) =>
    setWet(snapshot, { lot, sheets: number(sheets), date: dayOf(on), by: 'AK' }, TODAY, random);

const back =
  (many: number | null, lot = 'R-1', how: 'dried' | 'washed' = 'washed', on = '2026-04-02') =>
  (snapshot: Snapshot, random: Random) =>
    bringBack(snapshot, { lot, uses: number(many), how, date: dayOf(on), by: 'AK' }, TODAY, random);

function uses(desk: Desk, name = 'R-1', day = TODAY): string | undefined {
  return usesLeft(desk.account(name), day)?.toString();
}

describe('a sheet retired early', () => {
  test('is Waste of the uses it would still have had', () => {
    const bench = new Bench(literal());
    bench.do(retire(4));
    expect(bench.rows('Movements').at(-1)).toMatchObject({
      Kind: 'Waste',
      Lot: 'R-1',
      Quantity: 6,
      Unit: 'use',
      Cost: 2.4,
      Note: 'sheet retired, after 4 presses',
    });
    expect(bench.rows('Movements').at(-1)).not.toHaveProperty('Job');
    // 50 uses less 23 less 6 are 21, or 2.1 sheets; 20.00 × 21 ÷ 50 is 8.40.
    expect(bench.rows('ReleasePaper')[0]).toMatchObject({ Left: 2.1, Worth: 8.4 });
  });

  test('of unknown presses has done half of its uses, and that is said', () => {
    const desk = new Desk(literal({ 'Uses per unit': 7 }));
    const { drawing, remarks } = desk.do(retire(null));
    expect(drawing.movements.map(({ quantity, note }) => [quantity.toString(), note])).toEqual([
      ['4', 'sheet retired, 3 presses taken for done, half of its uses'],
    ]);
    expect(remarks).toEqual([
      'Nobody said how many presses the sheet has done, so half of its uses are taken for done: 4 uses are written off.',
    ]);
  });

  test('is never more than is left', () => {
    const desk = new Desk(literal({}, { Movements: [use('M-1', 'R-1', 46)] }));
    const { drawing, remarks } = desk.do(retire(1));
    expect(drawing.movements[0]?.quantity.toString()).toBe('4');
    expect(remarks[0]).toContain('but only 4 uses are left of lot R-1');
    expect(worthOn(desk.account('R-1'), TODAY)).toBe(0n);
    expect(desk.refusal(retire(1))).toBe('No use is left of lot R-1 to write off.');
  });

  test.each<[string, number | null, string, string]>([
    ['that has done them all', 10, 'R-1', 'none is left to write off'],
    ['with half a press', 2.5, 'R-1', "2.5 can't be"],
    ['of what is used once', 1, 'B-1', 'board is used once'],
  ])('is refused for one %s', (_name, presses, lot, message) => {
    expect(new Desk(literal()).refusal(retire(presses, lot))).toContain(message);
  });
});

describe('what is wet', () => {
  test('is set aside from a day on, and not drawn meanwhile', () => {
    const bench = new Bench(literal());
    bench.do(wet());
    expect(bench.rows('ReleasePaper')[0]).toMatchObject({
      State: 'Set aside',
      'State since': dayOf('2026-04-01') + SERIAL,
    });
    const logged = bench.do((snapshot, random) =>
      logTreatment(snapshot, pressed('2026-04-02'), TODAY, random),
    );
    expect(logged.drawing.shortfalls.map(({ missing }) => missing.toString())).toEqual(['2']);
    const before = bench.do((snapshot, random) =>
      logTreatment(snapshot, pressed('2026-03-31'), TODAY, random),
    );
    expect(before.drawing.movements.map(({ quantity }) => quantity.toString())).toEqual(['2']);
    expect(checkWorkbook(bench.workbook.snapshot(), TODAY).notices.map(({ code }) => code)).not.toContain(
      'set-aside-used',
    );
  });

  const pressed = (on: string) => ({
    job: 'J-1',
    item: null,
    treatment: 'press',
    extent: exact(3),
    date: dayOf(on),
    minutes: null,
    by: null,
    notes: null,
    asUsed: [],
  });

  test('of some sheets only, these become a lot of their own', () => {
    const desk = new Desk(literal());
    const { wet: child } = desk.do(wet(2));
    expect([uses(desk), uses(desk, child.name)]).toEqual(['7', '20']);
    const own = desk.account(child.name);
    expect([stateOn(own, TODAY), stateOn(desk.account('R-1'), TODAY)]).toEqual(['Set aside', 'Usable']);
    expect(child.record.stateSince).toBe(dayOf('2026-04-01'));
    expect(child.record.opened).toBe(dayOf('2026-03-10'));
    expect((worthOn(own, TODAY) ?? 0n) + (worthOn(desk.account('R-1'), TODAY) ?? 0n)).toBe(1080n);
    desk.do(back(null, child.name, 'dried'));
    expect(stateOn(desk.account(child.name), TODAY)).toBe('Usable');
  });

  test.each<[string, Parameters<typeof wet>, LiteralRow, string]>([
    [
      'wet already',
      [null],
      { State: 'Set aside', 'State since': date('2026-03-30') },
      'set aside since 30 Mar 2026 already',
    ],
    ['discarded', [null], { State: 'Discarded' }, 'was discarded'],
    ['with fewer sheets left', [4], {}, 'Only 2.7 sheet are left'],
    ['with a formula in State', [null], { State: formula(null) }, 'A formula stands in State'],
  ])('is refused for a lot %s', (_name, given, lot, message) => {
    const text = new Desk(literal(lot)).refusal(wet(...given));
    expect(text.replace('sheets', 'sheet')).toContain(message);
  });

  test('without State since is set aside on every day, and that is said', () => {
    const without = { ReleasePaper: { rows: [BLOTTERS], without: ['State since'] } };
    const desk = new Desk(literal({}, without));
    expect(desk.do(wet()).remarks[0]).toContain('has no column State since');
    expect(stateOn(desk.account('R-1'), dayOf('2026-03-02'))).toBe('Set aside');
  });
});

describe('what is dry or washed', () => {
  test('is in use again with uses put back, never above what it came with', () => {
    const bench = new Bench(literal({ State: 'Set aside', 'State since': date('2026-04-01') }));
    bench.do(back(20));
    const row = bench.rows('ReleasePaper')[0];
    expect(row).not.toHaveProperty('State');
    expect(row).not.toHaveProperty('State since');
    expect(row).toMatchObject({ Left: 4.7, Worth: 18.8 });
    expect(bench.rows('Movements').at(-1)).toMatchObject({
      Kind: 'Put back',
      Quantity: 20,
      Unit: 'use',
      Cost: -8,
      Note: 'washed',
    });
    const desk = new Desk(literal());
    expect(desk.refusal(back(24))).toBe(
      'Lot R-1 had 50 uses when it came: at most 23 uses can be given back.',
    );
    desk.do(back(23));
    expect(uses(desk)).toBe('50');
    expect(desk.refusal(back(1))).toBe(
      'Lot R-1 had 50 uses when it came, and has them all: none can be given back.',
    );
  });

  test('counts what comes later too: no later day goes above either', () => {
    const later = [
      use('M-1', 'R-1', 23),
      { ...use('M-9', 'R-1', 20), Kind: 'Put back', Date: date('2026-04-03') },
    ];
    expect(new Desk(literal({}, { Movements: later })).refusal(back(4))).toContain('at most 3 uses');
  });

  test('silicone gets nothing back, yet dries', () => {
    const aside = { ReleasePaper: [{ ...BLOTTERS, Lot: 'S-1', Material: 'coated web', State: 'Set aside' }] };
    const desk = new Desk(literal({}, aside));
    expect(desk.refusal(back(3, 'S-1'))).toBe(
      'coated web is coated with silicone, by what Materials says of it: its coating wears off, and neither drying nor ' +
        'washing gives uses back.',
    );
    const dried = desk.do(back(null, 'S-1', 'dried'));
    expect([dried.posting, dried.drawing.movements]).toEqual([null, []]);
    expect(stateOn(desk.account('S-1'), TODAY)).toBe('Usable');
  });

  test.each<[string, Parameters<typeof back>, LiteralRow, string]>([
    ['nothing to do', [null], {}, 'is not set aside: there is nothing to bring back'],
    ['half a use', [1.5], {}, "1.5 can't be given back"],
    ['what is used once', [1, 'B-1'], {}, 'board is used once'],
    [
      'a day before it was wet',
      [null],
      { State: 'Set aside', 'State since': date('2026-04-03') },
      'only since 3 Apr 2026',
    ],
    ['a discarded lot', [1], { State: 'Discarded' }, 'was discarded'],
  ])('is refused for %s', (_name, given, lot, message) => {
    expect(new Desk(literal(lot)).refusal(back(...given))).toContain(message);
  });
});

describe('sheets and uses', () => {
  const step = fc.record({
    act: fc.constantFrom('press', 'retire', 'wet', 'part', 'back', 'undo'),
    number: fc.integer({ min: 1, max: 12 }),
    lot: fc.nat(5),
  });

  test('agree after any presses, retirements, wetting and washing, and cost and uses are conserved', () => {
    let done = 0;
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 8 }), fc.nat(999), (steps, seed) => {
        const desk = new Desk(literal({}, { Movements: [] }), seed);
        const names = ['R-1'];
        // Written apart: the uses of each lot in whole numbers and tenths of a sheet.
        const left = new Map([['R-1', 50]]);
        const had = new Map([['R-1', 50]]);
        const postings: { readonly posting: string; readonly lot: string; readonly change: number }[] = [];
        for (const { act, number: n, lot: place } of steps) {
          const name = names[place % names.length] ?? 'R-1';
          const stands = left.get(name) ?? 0;
          if (act === 'undo') {
            const last = postings.pop();
            if (last === undefined) continue;
            desk.do((snapshot, random) => undoPosting(snapshot, last.posting, TODAY, random));
            left.set(last.lot, (left.get(last.lot) ?? 0) - last.change);
            done += 1;
            continue;
          }
          const answer =
            act === 'press'
              ? desk.try((snapshot, random) => logTreatment(snapshot, used(name, n), TODAY, random))
              : act === 'retire'
                ? desk.try(retire(n, name, '2026-04-03'))
                : act === 'back'
                  ? desk.try(back(n, name, 'washed', '2026-04-03'))
                  : desk.try(wet(act === 'wet' ? null : 1, name, '2026-04-03'));
          if (act === 'retire') expect(answer.ok).toBe(n < 10 && stands > 0);
          if (act === 'back') expect(answer.ok).toBe(stands + n <= (had.get(name) ?? 0));
          if (!answer.ok || answer.posting === null) continue;
          done += 1;
          const change =
            act === 'press'
              ? -Math.min(n, stands)
              : act === 'retire'
                ? -Math.min(10 - n, stands)
                : act === 'back'
                  ? n
                  : -10;
          left.set(name, stands + change);
          if (act === 'wet' || act === 'part') {
            const child = desk.ledger.studio.lots.at(-1)?.name ?? '';
            expect(stands).toBeGreaterThan(10);
            names.push(child);
            left.set(child, 10);
            had.set(child, 10);
            postings.length = 0;
          } else postings.push({ posting: answer.posting, lot: name, change });
        }
        for (const name of names) {
          const own = desk.account(name);
          const expected = left.get(name) ?? 0;
          expect(usesLeft(own, TODAY)?.toString()).toBe(String(expected));
          expect(leftOn(own, TODAY).mul(10).toString()).toBe(String(expected));
          expect(maxUses(own.lot)?.toString()).toBe(String(had.get(name)));
        }
        // What was bought is what is still there and what was charged, splits aside.
        const accounts = names.map((name) => desk.account(name));
        const worth = accounts.reduce((total, own) => total + (worthOn(own, TODAY) ?? 0n), 0n);
        const charged = accounts
          .flatMap(({ postings: own }) => own)
          .filter(({ movement }) => movement.kind !== 'Count')
          .reduce((total, { cost }) => total + (cost ?? 0n), 0n);
        expect(worth + charged).toBe(2000n);
      }),
      { seed: 20_260_404, numRuns: 60 },
    );
    expect(done).toBeGreaterThan(80);
  });

  /** So many presses with one lot, as a person would enter them. */
  const used = (lot: string, presses: number) => ({
    job: 'J-1',
    item: null,
    treatment: 'press',
    extent: exact(1),
    date: TODAY,
    minutes: null,
    by: null,
    notes: null,
    asUsed: [{ material: 'blotter', quantity: exact(presses), unit: USE_UNIT, lot }],
  });
});
