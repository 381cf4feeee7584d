import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, type Day, isoDay } from '../../src/core/day.ts';
import { keyOf } from '../../src/core/identifier.ts';
import type { Ledger } from '../../src/core/ledger.ts';
import type { NoticeCode } from '../../src/core/notice.ts';
import type { EntryRecord, JobStage, MovementRecord, Records } from '../../src/core/records.ts';
import { carriedOver } from './helpers/carried-records.ts';
import { FIRST, runs, SEED, SPAN, someStudio, written } from './helpers/random-studio.ts';
import { saidOn } from './helpers/said.ts';
import { movement } from './helpers/stock-records.ts';
import { draw, ledgerOf, taken } from './helpers/studio-of.ts';
import { entry, job, plan, supplier } from './helpers/work-records.ts';

/** Carried over so long after it all began that anything from nothing to everything may be folded. */
const carriedOn = fc.integer({ min: 5, max: SPAN + 25 }).map((offset) => addDays(FIRST, 364 + offset));
const LATER = [0, 1, 40, 365];
/** What is said of rows that may have been folded goes with them. */
const OF_FOLDED: readonly NoticeCode[] = ['too-early', 'expired-used', 'set-aside-used'];
const stages = fc.constantFrom<JobStage>('Handed back', 'Handed back', 'Declined', 'On the bench');

/** Studios with a log of which a part is drawn, jobs of every stage, batches, plans and figures to reorder at. */
const someYears: fc.Arbitrary<Records> = fc
  .record({
    records: someStudio,
    stages: fc.tuple(stages, stages),
    drawnUpTo: fc.oneof(fc.constant(SPAN), fc.integer({ min: 0, max: SPAN })),
    jobs: fc.infiniteStream(
      fc.constantFrom(...Array.from({ length: 12 }, () => null), 'J1', 'J2', 'STUDIO', 'J9'),
    ),
    into: fc.infiniteStream(fc.nat(60)),
    planned: fc.boolean(),
    lead: fc.nat(20),
  })
  .map(({ records, stages: [first, second], drawnUpTo, jobs, into, planned, lead }) => {
    const lotNames = records.lots.map(({ lot }) => lot);
    const jobOf = new Map<string | null, { job: string | null; into: string | null }>();
    const movements = records.movements.map((row) => {
      const known = row.reverses === null ? undefined : jobOf.get(row.reverses);
      const canGoInto = row.kind === 'Make' || row.kind === 'Count';
      const own = known ?? {
        job: jobs.next().value ?? null,
        into: (canGoInto ? lotNames[into.next().value ?? 0] : null) ?? null,
      };
      jobOf.set(row.movement, own);
      return { ...row, ...own };
    });
    const plain: Records = {
      ...records,
      movements,
      jobs: [job('J1', first), job('J2', second), job('J3', 'Booked')],
      plan: planned ? [plan('P1', 'Lining', 3, { job: 'J3' }), plan('P2', 'Mending', 2, { job: 'J1' })] : [],
      suppliers: [supplier('S1', lead, 2)],
      materials: records.materials.map((each) => ({
        ...each,
        supplier: 'S1',
        serviceLevel: plainNumber(95),
      })),
    };
    return drawn(plain, addDays(FIRST, drawnUpTo));
  });

function plainNumber(value: number): EntryRecord['extent'] {
  return entry(null, '2026-01-01', 'Lining', value).extent;
}

/** The records once the log is drawn up to a day. */
function drawn(records: Records, day: Day): Records {
  const drawing = draw(ledgerOf(records), isoDay(day), `d${day}-`);
  const marks = new Map(drawing.entries.map((each) => [each.entry.record, each]));
  return {
    ...records,
    movements: [...records.movements, ...written(drawing.movements)],
    entries: records.entries.map((row) => {
      const mark = marks.get(row);
      return mark === undefined ? row : { ...row, drawn: mark.drawn, drawnFor: mark.extent };
    }),
  };
}

/** Whether all is said on a day by the one that is said by the other, what is gone with folded rows aside. */
function expectTheSame(one: Records, other: Records, day: Day): void {
  expect(saidOn(other, day, OF_FOLDED)).toEqual(saidOn(one, day, OF_FOLDED));
}

/** What a job's movements are, with what each costs. */
function traceOf(ledger: Ledger, isMeant: (job: string | null) => boolean): string[] {
  return [...ledger.accounts.values()]
    .flatMap(({ postings }) => postings)
    .filter(({ movement: each }) => each.job !== null && isMeant(each.job))
    .map(({ movement: { name, lot, quantity, unit, date, entry: of, into }, cost }) =>
      [name, lot.name, quantity.toFraction(), unit.name, date, of, into, cost].join(' '),
    )
    .toSorted();
}

function openJobs(records: Records): (name: string | null) => boolean {
  const closed = new Set(
    records.jobs
      .filter(({ stage }) => stage === 'Handed back' || stage === 'Declined')
      .map((each) => keyOf(each.job ?? '')),
  );
  return (name) => name !== null && keyOf(name) !== 'studio' && !closed.has(keyOf(name));
}

/** What happens after the year was carried over: movements on any lots, and a log that is drawn. */
const goingOn = fc.record({
  movements: fc.array(
    fc.record({
      lot: fc.nat(9),
      kind: fc.constantFrom('Use', 'Waste', 'Count', 'Put back'),
      after: fc.nat(30),
      amount: fc.integer({ min: 1, max: 20_000 }),
    }),
    { maxLength: 6 },
  ),
  entries: fc.array(
    fc.record({ after: fc.nat(30), of: fc.constantFrom('Lining', 'Mending'), extent: fc.nat(9000) }),
    { maxLength: 4 },
  ),
});

function goneOn(records: Records, day: Day, more: typeof goingOn extends fc.Arbitrary<infer T> ? T : never) {
  const rows = more.movements.flatMap(({ lot, kind, after, amount }, place): MovementRecord[] => {
    const of = records.lots[lot % Math.max(records.lots.length, 1)];
    if (of === undefined) return [];
    const row = movement(`N${place}`, isoDay(addDays(day, after)), kind, of.lot ?? '', `${amount}e-3`, {
      unit: of.unit.name,
    });
    return [row];
  });
  const entries = more.entries.map(({ after, of, extent }, place) =>
    entry(`F${place}`, isoDay(addDays(day, after)), of, `${extent}e-3`, { job: 'J3' }),
  );
  return {
    ...records,
    movements: [...records.movements, ...rows],
    entries: [...records.entries, ...entries],
  };
}

describe(`a year carried over (seed ${SEED})`, () => {
  test('no figure changes, on the day or later, and the lots stay what they are', () => {
    let folded = 0;
    let entriesGone = 0;
    fc.assert(
      fc.property(someYears, carriedOn, (records, day) => {
        const after = carriedOver(records, day);
        for (const later of LATER) expectTheSame(records, after.records, addDays(day, later));
        expect(after.records.lots.map((lot) => ({ ...lot, opened: null }))).toEqual(
          records.lots.map((lot) => ({ ...lot, opened: null })),
        );
        for (const { lot, folded: rows, carried } of after.answer.lots) {
          expect(carried).toMatchObject({ kind: 'Carried', note: 'carried over from old.xlsx', job: null });
          expect(rows.length).toBeGreaterThan(0);
          expect(
            after.records.movements.filter((row) => row.kind === 'Carried' && row.lot === lot.name).length,
          ).toBe(
            1 +
              records.movements.filter(
                (row) =>
                  row.kind === 'Carried' &&
                  row.lot === lot.name &&
                  !rows.some(({ record }) => record === row),
              ).length,
          );
        }
        const counted = after.answer.kept.reduce((sum, { count }) => sum + count, 0);
        const gone = after.answer.lots.reduce((sum, each) => sum + each.folded.length, 0);
        expect(counted + gone).toBe(records.movements.length);
        folded += gone;
        entriesGone += after.answer.entries.length;
      }),
      runs(1500),
    );
    expect(folded).toBeGreaterThan(2000);
    expect(entriesGone).toBeGreaterThan(200);
  });

  test('what each lot has charged, movement by movement from then on, stays the same to the coin', () => {
    fc.assert(
      fc.property(someYears, carriedOn, (records, day) => {
        const before = ledgerOf(records);
        const after = ledgerOf(carriedOver(records, day).records);
        before.studio.lots.forEach((lot, place) => {
          const one = before.accounts.get(lot);
          const same = after.studio.lots[place];
          const other = same === undefined ? undefined : after.accounts.get(same);
          const byName = new Map(one?.postings.map((posting) => [posting.movement.name, posting]));
          for (const posting of other?.postings ?? []) {
            const known = byName.get(posting.movement.name);
            if (known === undefined) continue;
            expect([posting.cost, posting.charged, posting.left.toFraction()]).toEqual([
              known.cost,
              known.charged,
              known.left.toFraction(),
            ]);
          }
          expect(other?.postings.at(-1)?.charged ?? 0n).toBe(one?.postings.at(-1)?.charged ?? 0n);
          expect(other?.postings.reduce((sum, { cost }) => sum + (cost ?? 0n), 0n)).toBe(
            one?.postings.reduce((sum, { cost }) => sum + (cost ?? 0n), 0n),
          );
        });
      }),
      runs(1500),
    );
  });

  test('jobs that are not over answer the same trace, back through what was made for them', () => {
    let traced = 0;
    fc.assert(
      fc.property(someYears, carriedOn, (records, day) => {
        const isOpen = openJobs(records);
        const before = ledgerOf(records);
        const after = ledgerOf(carriedOver(records, day).records);
        const own = traceOf(before, isOpen);
        expect(traceOf(after, isOpen)).toEqual(own);
        traced += own.length;
        const needed = new Set(
          [...before.accounts.values()]
            .filter(
              ({ lot, postings }) =>
                !(postings.at(-1)?.left ?? lot.record.quantity).equals(0) ||
                postings.some(({ movement: { job: of } }) => isOpen(of)),
            )
            .map(({ lot }) => lot.name),
        );
        // What made a lot that is needed is needed itself, and so on.
        const made = [...before.accounts.values()].flatMap(({ postings }) =>
          postings.map((posting) => posting.movement).filter(({ into }) => into !== null),
        );
        for (let size = -1; size !== needed.size; ) {
          size = needed.size;
          for (const { into, lot } of made) if (needed.has(into ?? '')) needed.add(lot.name);
        }
        const intoNeeded = (ledger: Ledger): (string | null)[] =>
          [...ledger.accounts.values()].flatMap(({ postings }) =>
            postings
              .filter(({ movement: { into } }) => into !== null && needed.has(into))
              .map((posting) => posting.movement.name),
          );
        expect(intoNeeded(after)).toEqual(intoNeeded(before));
      }),
      runs(1000),
    );
    expect(traced).toBeGreaterThan(500);
  });

  test('work that goes on draws the same from the same lots at the same cost', () => {
    let drawnLater = 0;
    fc.assert(
      fc.property(someYears, carriedOn, goingOn, (records, day, more) => {
        const carried = carriedOver(records, day).records;
        const [one, other] = [records, carried].map((each) => goneOn(each, day, more));
        if (one === undefined || other === undefined) throw new Error('nothing went on');
        const last = addDays(day, 31);
        const [first, second] = [one, other].map((each) => draw(ledgerOf(each), isoDay(last), 'later-'));
        if (first === undefined || second === undefined) throw new Error('nothing was drawn');
        expect(taken(second)).toEqual(taken(first));
        drawnLater += first.movements.length;
        const [drawnOne, drawnOther] = [drawn(one, last), drawn(other, last)];
        for (const later of [0, 31, 400]) expectTheSame(drawnOne, drawnOther, addDays(day, later));
        const costs = (of: Records): string[] => traceOf(ledgerOf(of), (name) => name === 'J3');
        expect(costs(drawnOther)).toEqual(costs(drawnOne));
      }),
      runs(800),
    );
    expect(drawnLater).toBeGreaterThan(300);
  });

  test('carried over twice is carried over once at the later day', () => {
    let again = 0;
    fc.assert(
      fc.property(someYears, carriedOn, fc.integer({ min: 1, max: 40 }), (records, day, more) => {
        const second = addDays(day, more);
        const once = carriedOver(records, second);
        const first = carriedOver(records, day);
        const twice = carriedOver(first.records, second, 'newer.xlsx');
        for (const later of LATER) expectTheSame(once.records, twice.records, addDays(second, later));
        for (const { carried, folded } of twice.answer.lots) {
          const hadOne = folded.some(({ kind, note }) => kind === 'Carried' && note !== null);
          if (hadOne) again += 1;
          const names = hadOne ? 'old.xlsx, newer.xlsx' : 'newer.xlsx';
          expect(carried.note).toBe(`carried over from ${names}`);
        }
      }),
      runs(800),
    );
    expect(again).toBeGreaterThan(20);
  });
});
