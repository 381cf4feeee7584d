import { describe, expect, test } from 'vitest';
import { differencesOf } from '../../src/core/stocktake-differences.ts';
import {
  type CountRow,
  countSheet,
  isCounted,
  nextToCount,
  rowsOf,
} from '../../src/pane/stocktake/count-sheet.ts';
import { askedLot, askForLot, type CountedPlace, lotTaken } from '../../src/pane/stocktake/count-state.ts';
import { differenceWords, sumWords } from '../../src/pane/stocktake/count-words.ts';
import { enteredFor, keepCount, postCounted, type Way } from '../../src/pane/stocktake/counting.ts';
import type { Session } from '../../src/session/session.ts';
import { booksIn, leftOf, opened, today } from '../helpers/opened-session.ts';
import { figuresOf, SHELVES } from './helpers.ts';

const ALL: CountedPlace = { kind: 'all' };

function sheetIn(session: Session, place: CountedPlace = ALL, besides: readonly string[] = []) {
  return countSheet(booksIn(session), place, besides);
}

function enter(session: Session, lot: string, text: string, way: Way = 'count', place = ALL) {
  return enteredFor(figuresOf(session, lot).lot, text, way, place, booksIn(session));
}

async function count(session: Session, lot: string, text: string, way: Way = 'count', place = ALL) {
  const entered = enter(session, lot, text, way, place);
  if (entered.kind !== 'count') throw new Error(JSON.stringify(entered));
  const done = await keepCount(session, entered.request, booksIn(session));
  if (done.kind !== 'done') throw new Error(done.message);
  return done.sentence;
}

function names(rows: readonly CountRow[]): string[] {
  return rows.map(({ lot }) => lot.name);
}

describe('the list of a stocktake', () => {
  test('goes by place in walking order; one place can be chosen, and what else is found there comes behind', async () => {
    const { session } = await opened(SHELVES);
    const { groups, places } = sheetIn(session);
    expect(places).toEqual(['Drawer', 'Fridge', null]);
    expect(groups.map(({ title }) => title)).toEqual(['Drawer', 'Fridge', 'No place is known']);
    const drawer = sheetIn(session, { kind: 'one', place: 'Drawer' }, ['p-1', 'g-1']);
    expect(drawer.groups.map(({ title, rows }) => [title, names(rows)])).toEqual([
      ['Drawer', ['R-2', 'G-1']],
      ['Found besides', ['P-1']],
    ]);
  });

  test('the next lot is the next one that is not counted, from the top again behind the last', async () => {
    const { session } = await opened(SHELVES);
    const rows = rowsOf(sheetIn(session, { kind: 'one', place: 'Drawer' }));
    const [first = rows[0], second] = rows;
    if (first === undefined || second === undefined) throw new Error('two lots are in the drawer');
    expect(nextToCount(rows, first.key, new Set())).toBe(second.key);
    expect(nextToCount(rows, second.key, new Set())).toBe(first.key);
    expect(nextToCount(rows, second.key, new Set([first.key]))).toBeNull();
    await count(session, first.lot.name, '3');
    const after = rowsOf(sheetIn(session, { kind: 'one', place: 'Drawer' }));
    expect(after.map(isCounted)).toEqual([true, false]);
    expect(nextToCount(after, second.key, new Set())).toBeNull();
  });
});

describe('what is entered', () => {
  test('is a count, another lot that was scanned, nothing, or wrong', async () => {
    const { session } = await opened(SHELVES);
    expect(enter(session, 'R-2', '3').kind).toBe('count');
    expect(enter(session, 'R-2', ' ').kind).toBe('blank');
    expect(enter(session, 'R-2', 'g-1')).toMatchObject({ kind: 'lot', lot: { name: 'G-1' } });
    expect(enter(session, 'R-2', 'three')).toMatchObject({ kind: 'wrong' });
    expect(enter(session, 'G-1', '100', 'weigh')).toMatchObject({ kind: 'wrong' });
  });

  test('a lot that was scanned outside of all fields is asked for; a code that names none is not', async () => {
    const { session } = await opened(SHELVES);
    const { studio } = booksIn(session).ledger;
    expect(askForLot(studio, 'X-9')).toBe(false);
    expect(askedLot.value).toBeNull();
    expect(askForLot(studio, 'g-1')).toBe(true);
    expect(askedLot.value).toBe('G-1');
    lotTaken();
  });
});

test('what was counted is kept until it is posted, however often the workbook is read anew; then exactly what was counted is left', async () => {
  const { session } = await opened(SHELVES);
  const drawer: CountedPlace = { kind: 'one', place: 'Drawer' };
  expect(await count(session, 'R-2', '3', 'count', drawer)).toBe(
    'Counted: lot R-2, 3 sheets, 0.4 sheets less than expected, worth 0.80 EUR.',
  );
  expect(await count(session, 'G-1', '262.4', 'weigh', drawer)).toBe('Counted: lot G-1, 150 g, as expected.');
  expect(await count(session, 'P-1', '210', 'count', drawer)).toMatch(/10 g more than expected/);
  // Nothing of it counts yet.
  expect(leftOf(session, 'R-2')).toBe(3.4);
  const { stocktake } = sheetIn(session);
  expect(stocktake).toBe('2026-04-03 Drawer');

  await session.readAgain();
  const sheet = sheetIn(session);
  const { settings, ledger } = booksIn(session);
  expect(sheet.differences).toEqual(differencesOf(ledger, today, stocktake ?? '').differences);
  expect(sheet.differences.map((each) => differenceWords(each, settings.currency))).toEqual([
    '0.4 sheets less than expected, worth 0.80 EUR',
    'as expected',
    '10 g more than expected, worth 0.13 EUR',
  ]);
  expect(sumWords(sheet.differences, settings.currency)).toBe('2 lots, a loss of 0.67 EUR');

  const stale = await postCounted(session, stocktake ?? '', sheet.differences.slice(1), booksIn(session));
  expect(stale.kind).toBe('look again');
  const done = await postCounted(session, stocktake ?? '', sheet.differences, booksIn(session));
  expect(done).toMatchObject({
    kind: 'done',
    sentence: 'Posted: stocktake 2026-04-03 Drawer, 2 lots, a loss of 0.67 EUR.',
  });
  expect(['R-2', 'G-1', 'P-1'].map((lot) => leftOf(session, lot))).toEqual([3, 150, 210]);
  expect(sheetIn(session).stocktake).toBeNull();
  const posting = done.kind === 'done' ? (done.posting ?? '') : '';
  await session.undo(posting);
  expect(leftOf(session, 'R-2')).toBe(3.4);
});
