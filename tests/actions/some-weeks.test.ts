import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { addDays } from '../../src/core/day.ts';
import { dayOfSerial, serialOfDay } from '../../src/core/serial-date.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { someWeeks, Weeks } from './helpers/bench-acts.ts';
import { BENCH_STUDIO } from './helpers/bench-studio.ts';
import { plainBook, plainGoodUntil, plainLeft, plainMoney } from './helpers/plain-book.ts';

/** In milliseconds: each run goes through weeks. */
const UNHURRIED = 240_000;
/** Left is rounded to six decimals where it is written; the pencil keeps all of a use's share of a sheet. */
const A_MILLIONTH = 1e-6;

/**
 * Weeks of making, pouring, logging, opening, pressing, washing, counting, throwing away and taking back. After each
 * act a bookkeeper with a pencil finds the same in every lot, and every cent that was ever paid. What changes an
 * earlier day (a posting taken back, a count posted late) may move a cent between what follows it in a lot, while what
 * a batch or a container cost stays frozen: then a cent may be off for each movement that made one.
 */
test(
  'after every act of some weeks the pencil finds the same in every lot, and every cent',
  () => {
    const done = new Map<string, number>();
    fc.assert(
      fc.property(someWeeks, fc.nat(20), (acts, back) => {
        const weeks = new Weeks(snapshotOf(BENCH_STUDIO));
        for (const act of acts) {
          weeks.do(act);
          const money = plainMoney(plainBook(weeks.snapshot));
          const off = Number(money.found - money.bought);
          expect(Math.abs(off), `after ${act.kind}`).toBeLessThanOrEqual(
            weeks.hasGoneBack ? money.passedOn : 0,
          );
        }
        for (const day of [weeks.today, addDays(weeks.today, -back)]) {
          const book = plainBook(weeks.snapshot);
          const { stock, notices } = checkWorkbook(weeks.snapshot, day);
          expect(notices.filter(({ code }) => code === 'unreadable' || code === 'unknown-reference')).toEqual(
            [],
          );
          const serial = serialOfDay(day, 1900);
          for (const { lot, left, goodUntil } of stock.lots) {
            const row = book.lots.find((each) => each['Lot'] === lot.name);
            if (row === undefined) throw new Error(`the pencil has no lot ${lot.name}`);
            expect(Math.abs(left.valueOf() - plainLeft(book, row, serial)), lot.name).toBeLessThan(
              2 * A_MILLIONTH,
            );
            const until = plainGoodUntil(book, row, serial);
            expect(goodUntil, lot.name).toBe(until === null ? null : dayOfSerial(until, 1900));
          }
        }
        for (const [kind, times] of weeks.done) done.set(kind, (done.get(kind) ?? 0) + times);
      }),
      { seed: 20_261_125, numRuns: 500 },
    );
    // Every kind of act was not only refused.
    for (const kind of [
      'make',
      'log',
      'open',
      'retire',
      'wet',
      'back',
      'discard',
      'count',
      'post counts',
      'empty',
      'undo',
    ]) {
      expect(done.get(kind) ?? 0, kind).toBeGreaterThan(5);
    }
  },
  UNHURRIED,
);
