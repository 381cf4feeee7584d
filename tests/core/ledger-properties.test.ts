import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { accountIn, openLedger, post } from '../../src/core/ledger.ts';
import { leftOn, worthOn } from '../../src/core/lot-account.ts';
import type { Records } from '../../src/core/records.ts';
import { dayAfter, FIRST, LAST, runs, SEED, SPAN, someStudio } from './helpers/random-studio.ts';
import { saidOn } from './helpers/said.ts';
import { draw, ledgerOf, recordsOf, taken } from './helpers/studio-of.ts';

const someDay = fc.integer({ min: 0, max: SPAN + 6 });

function said(records: Records, offset: number): string {
  return saidOn(records, dayAfter(offset)).join('\n');
}

describe(`costs add up (seed ${SEED})`, () => {
  test('what the movements of a lot cost and what it is worth are its cost, to the coin, on every day', () => {
    let usedUp = 0;
    fc.assert(
      fc.property(someStudio, fc.boolean(), (records, drawn) => {
        const opened = ledgerOf(records);
        const ledger = drawn ? draw(opened, isoDay(LAST)).ledger : opened;
        for (const account of ledger.accounts.values()) {
          if (account.cost === null) continue;
          for (let offset = 0; offset <= SPAN + 6; offset += 3) {
            const day = dayAfter(offset);
            const charged = account.postings
              .filter(({ movement }) => movement.day <= day)
              .reduce((total, { cost }) => total + (cost ?? 0n), 0n);
            expect(charged + (worthOn(account, day) ?? 0n)).toBe(account.cost);
          }
          for (const { movement, left, charged, cost } of account.postings) {
            if (movement.reverses === null && left.equals(0)) {
              expect(charged).toBe(account.cost);
              usedUp += 1;
            }
            const { reverses } = movement;
            if (reverses === null) continue;
            const original = account.postings.find((posting) => posting.movement === reverses);
            expect(cost).toBe(-(original?.cost ?? 0n));
          }
        }
      }),
      runs(2000),
    );
    expect(usedUp).toBeGreaterThan(50);
  });

  test('a lot without a cost has none anywhere', () => {
    fc.assert(
      fc.property(someStudio, (records) => {
        for (const account of ledgerOf(records).accounts.values()) {
          const hasCost = account.lot.record.cost !== null;
          expect(worthOn(account, LAST) !== null).toBe(hasCost);
          expect(account.postings.every(({ cost }) => (cost !== null) === hasCost)).toBe(true);
        }
      }),
      runs(500),
    );
  });
});

describe(`what the order of rows and days changes (seed ${SEED})`, () => {
  test('the order of rows never matters', () => {
    const shuffled = (records: Records) =>
      fc.record({
        lots: fc.shuffledSubarray([...records.lots], { minLength: records.lots.length }),
        movements: fc.shuffledSubarray([...records.movements], { minLength: records.movements.length }),
        entries: fc.shuffledSubarray([...records.entries], { minLength: records.entries.length }),
        materials: fc.shuffledSubarray([...records.materials], { minLength: records.materials.length }),
        treatments: fc.shuffledSubarray([...records.treatments], { minLength: records.treatments.length }),
        jobs: fc.shuffledSubarray([...records.jobs], { minLength: records.jobs.length }),
        recipes: fc.shuffledSubarray([...records.recipes], { minLength: records.recipes.length }),
      });
    const both = someStudio.chain((records) =>
      fc.tuple(
        fc.constant(records),
        shuffled(records).map((some) => ({ ...records, ...some })),
      ),
    );
    fc.assert(
      fc.property(both, someDay, ([records, other], offset) => {
        expect(said(other, offset)).toBe(said(records, offset));
        const day = isoDay(dayAfter(offset));
        expect(taken(draw(ledgerOf(other), day))).toEqual(taken(draw(ledgerOf(records), day)));
      }),
      runs(1000),
    );
  });

  test('as of a day is what the rows dated up to it say', () => {
    fc.assert(
      fc.property(someStudio, fc.integer({ min: 0, max: SPAN }), (records, offset) => {
        const day = dayAfter(offset);
        const upToDay = recordsOf({
          ...records,
          movements: records.movements.filter(({ date }) => date <= day),
          entries: records.entries.filter(({ date }) => date <= day),
        });
        const withoutLater = recordsOf({
          ...upToDay,
          lots: records.lots.filter(({ received }) => received <= day),
          movements: upToDay.movements.filter(
            ({ lot }) => (records.lots.find((each) => each.lot === lot)?.received ?? FIRST) <= day,
          ),
        });
        expect(said(upToDay, offset)).toBe(said(records, offset));
        const later = said(upToDay, offset).split('\n');
        expect(
          said(withoutLater, offset)
            .split('\n')
            .every((line) => later.includes(line)),
        ).toBe(true);
      }),
      runs(1000),
    );
  });

  test('posting one by one gives what opening with all movements gives', () => {
    const split = fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 15, maxLength: 15 });
    fc.assert(
      fc.property(someStudio, split, fc.infiniteStream(fc.nat()), (records, sizes, order) => {
        const opened = ledgerOf(records);
        const all = [...opened.accounts.values()]
          .flatMap(({ postings }) => postings.map(({ movement }) => movement))
          .map((movement) => ({ movement, at: order.next().value }))
          .toSorted((a, b) => a.at - b.at)
          .map(({ movement }) => movement);
        let ledger = openLedger(opened.studio, []);
        for (const size of sizes) ledger = post(ledger, all.splice(0, size));
        ledger = post(ledger, all);
        for (const lot of opened.studio.lots) {
          expect(accountIn(ledger, lot)).toEqual(accountIn(opened, lot));
          expect(leftOn(accountIn(ledger, lot), LAST)).toEqual(leftOn(accountIn(opened, lot), LAST));
        }
        expect(ledger.lotsOfEntry).toEqual(opened.lotsOfEntry);
      }),
      runs(1000),
    );
  });
});
