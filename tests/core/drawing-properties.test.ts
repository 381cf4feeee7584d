import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, type Day, isoDay } from '../../src/core/day.ts';
import { drawEntry } from '../../src/core/draw.ts';
import { compareEntries, entryStatus } from '../../src/core/entry-needs.ts';
import type { Exact } from '../../src/core/exact-number.ts';
import { accountIn, type Ledger, post } from '../../src/core/ledger.ts';
import { type LotAccount, leftOn, smallestLeftFrom, worthOn } from '../../src/core/lot-account.ts';
import type { Records } from '../../src/core/records.ts';
import { reverse } from '../../src/core/undo.ts';
import { plainStock } from './helpers/plain-simulation.ts';
import { dayAfter, FIRST, LAST, runs, SEED, SPAN, someStudio, written } from './helpers/random-studio.ts';
import { lot as lotOf, qty } from './helpers/stock-records.ts';
import { draw, ledgerOf, numbered, recordsOf, taken } from './helpers/studio-of.ts';

const END = isoDay(LAST);
const DAYS: readonly Day[] = Array.from({ length: SPAN + 6 }, (_, offset) => dayAfter(offset));

/** What a drawing wrote, as rows among those that were there, entries marked as drawn. */
function saved(records: Records, drawing: ReturnType<typeof draw>): Records {
  return recordsOf({
    ...records,
    movements: [...records.movements, ...written(drawing.movements)],
    entries: records.entries.map((record) => {
      const drawn = drawing.entries.find(({ entry }) => entry.record === record);
      return drawn === undefined ? record : { ...record, drawn: drawn.drawn, drawnFor: drawn.extent };
    }),
  });
}

/** What stands drawn for each entry of each material, in each unit of its rates. */
function drawnPerEntry(ledger: Ledger): Map<string, Exact> {
  const totals = new Map<string, Exact>();
  for (const { postings } of ledger.accounts.values()) {
    for (const { movement } of postings) {
      if (movement.entry === null) continue;
      const key = `${movement.entry} ${movement.lot.material.name} ${movement.unit.name}`;
      totals.set(key, (totals.get(key) ?? qty(0)).add(movement.quantity));
    }
  }
  return totals;
}

/**
 * By how much a reversal may miss what its movement cost, as the cost depends on its place among others: a coin, and
 * the cost of what emptying a lot rounds.
 */
function coinsPerReversal({ cost, lot, postings }: LotAccount): number {
  const roundings = postings.map(({ movement }) => movement.rounding.valueOf());
  return 1 + 2 * Math.ceil((Number(cost ?? 0n) * Math.max(...roundings, 0)) / lot.record.quantity.valueOf());
}

describe(`drawing (seed ${SEED})`, () => {
  test('drawing twice draws once, also after saving and opening again', () => {
    let moved = 0;
    fc.assert(
      fc.property(someStudio, (records) => {
        const first = draw(ledgerOf(records), END);
        moved += first.movements.length;
        const again = draw(first.ledger, END, 'again');
        expect(again.movements).toEqual([]);
        expect(taken(again)).toEqual(taken({ ...first, movements: [] }));
        const reopened = draw(ledgerOf(saved(records, first)), END, 'again');
        expect(reopened.movements).toEqual([]);
      }),
      runs(1500),
    );
    expect(moved).toBeGreaterThan(500);
  });

  test('undoing and drawing again takes the same, and leaves the same on every day', () => {
    fc.assert(
      fc.property(someStudio, (records) => {
        const before = ledgerOf(records);
        const first = draw(before, END);
        const undone = reverse(first.ledger, first.movements, LAST, numbered('undo'));
        const again = draw(undone.ledger, END, 'zz');
        expect(taken(again)).toEqual(taken(first));
        for (const account of first.ledger.accounts.values()) {
          const { lot } = account;
          const reversals = undone.movements.filter((movement) => movement.lot === lot).length;
          for (const day of DAYS) {
            expect(leftOn(accountIn(undone.ledger, lot), day)).toEqual(leftOn(accountIn(before, lot), day));
            expect(leftOn(accountIn(again.ledger, lot), day)).toEqual(leftOn(account, day));
            const away = Number(
              (worthOn(accountIn(again.ledger, lot), day) ?? 0n) - (worthOn(account, day) ?? 0n),
            );
            expect(Math.abs(away)).toBeLessThanOrEqual(reversals * coinsPerReversal(account));
          }
          const nextDay = addDays(LAST, 10);
          const use = first.movements.find((movement) => movement.lot === lot);
          if (use === undefined) continue;
          const later = { ...use, name: 'later', date: nextDay, day: nextDay, entry: null };
          const healed = [again.ledger, first.ledger].map((ledger) =>
            worthOn(accountIn(post(ledger, [later]), lot), nextDay),
          );
          expect(healed[0]).toBe(healed[1]);
        }
      }),
      runs(1000),
    );
  });

  test('nothing is drawn by rule from a lot that may not be used on that day, nor more than is left later', () => {
    let checked = 0;
    fc.assert(
      fc.property(someStudio, (records) => {
        const drawing = draw(ledgerOf(records), END);
        let rows = records;
        for (const movement of drawing.movements) {
          const plain = plainStock(rows, movement.date).find(({ lot: name }) => name === movement.lot.name);
          expect(plain?.usable, `${movement.lot.name} on ${isoDay(movement.date)}`).toBe(true);
          const account = accountIn(drawing.ledger, movement.lot);
          expect(smallestLeftFrom(account, movement.date).compare(0)).toBeGreaterThanOrEqual(0);
          rows = recordsOf({ ...rows, movements: [...rows.movements, ...written([movement])] });
          checked += 1;
        }
      }),
      runs(1500),
    );
    expect(checked).toBeGreaterThan(500);
  });

  test('a shortfall is said only where no lot that may be used has anything left for it', () => {
    fc.assert(
      fc.property(someStudio, (records) => {
        const ledger = ledgerOf(records);
        const due = ledger.studio.entries.toSorted(compareEntries);
        const newIdentifier = numbered();
        let after = ledger;
        for (const entry of due) {
          if (entryStatus(after, entry, LAST) !== 'not drawn') continue;
          const drawing = drawEntry(after, entry, LAST, newIdentifier);
          after = drawing.ledger;
          for (const { material, unit } of drawing.shortfalls) {
            const rates = entry.treatment.rates.filter((rate) => rate.material === material);
            if (rates.some(({ record }) => record.whole === true)) continue;
            for (const of of after.studio.lotsOfMaterial.get(material) ?? []) {
              const rows = recordsOf({ ...records, movements: allWritten(after) });
              const plain = plainStock(rows, entry.record.date).find(({ lot: name }) => name === of.name);
              if (plain?.usable !== true) continue;
              const rest = smallestLeftFrom(accountIn(after, of), entry.record.date);
              const factor = of.converter.factor(of.record.unit, unit);
              const inUnit = rest.mul(factor ?? 0).valueOf();
              expect(inUnit).toBeLessThanOrEqual(1e-6);
            }
          }
        }
      }),
      runs(500),
    );
  });

  test('drawing in one go is drawing entry by entry', () => {
    fc.assert(
      fc.property(someStudio, (records) => {
        const ledger = ledgerOf(records);
        const newIdentifier = numbered();
        let after = ledger;
        for (const entry of ledger.studio.entries.toSorted(compareEntries)) {
          if (entryStatus(after, entry, LAST) !== 'not drawn') continue;
          after = drawEntry(after, entry, LAST, newIdentifier).ledger;
        }
        const all = draw(ledger, END);
        expect(all.ledger.partEntries).toEqual(after.partEntries);
        for (const of of ledger.studio.lots) {
          expect(accountIn(all.ledger, of)).toEqual(accountIn(after, of));
        }
      }),
      runs(500),
    );
  });

  test('a part drawn and the rest when stock has come is, in all, what drawing at once takes', () => {
    const plenty = [lotOf('plenty', 'Paste', isoDay(FIRST), 10_000_000), tissue('ream')];
    let completed = 0;
    fc.assert(
      fc.property(someStudio, (records) => {
        const first = draw(ledgerOf(records), END);
        const partly = first.entries.filter(({ drawn }) => drawn === 'part').length;
        const stocked = saved(records, first);
        const usable = {
          lots: [...records.lots, ...plenty],
          materials: records.materials.map((each) => ({
            ...each,
            lifeSealedDays: null,
            lifeOpenedDays: null,
          })),
        };
        const then = draw(ledgerOf({ ...stocked, ...usable }), END, 'rest');
        expect(then.shortfalls).toEqual([]);
        expect(then.entries.every(({ drawn }) => drawn === 'yes')).toBe(true);
        expect(then.entries.length).toBeGreaterThanOrEqual(partly);
        completed += partly;
        const atOnce = draw(ledgerOf({ ...records, ...usable }), END);
        const inTurn = drawnPerEntry(then.ledger);
        for (const [key, quantity] of drawnPerEntry(atOnce.ledger)) {
          expect(inTurn.get(key)?.toString(), key).toBe(quantity.toString());
        }
        expect(inTurn.size).toBe(drawnPerEntry(atOnce.ledger).size);
      }),
      runs(1000),
    );
    expect(completed).toBeGreaterThan(300);
  });
});

function allWritten(ledger: Ledger): Records['movements'] {
  return written(
    [...ledger.accounts.values()].flatMap(({ postings }) => postings.map(({ movement }) => movement)),
  );
}

function tissue(name: string): Records['lots'][number] {
  return lotOf(name, 'Tissue', isoDay(FIRST), 1_000_000, { unit: 'sheet' });
}
