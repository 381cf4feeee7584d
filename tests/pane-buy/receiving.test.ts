import { expect, test } from 'vitest';
import { openOrders } from '../../src/core/open-orders.ts';
import { readReceiving, startReceiving, withAnotherLot, withPart } from '../../src/pane/buy/receive-draft.ts';
import { receiveIt } from '../../src/pane/buy/receiving.ts';
import { dayOf } from '../helpers/literal.ts';
import { booksIn, opened } from '../helpers/opened-session.ts';
import { SHOP, today } from './helpers.ts';

async function started() {
  const { session } = await opened(SHOP);
  const { studio } = booksIn(session).ledger;
  const [open = expect.unreachable()] = openOrders(studio, today);
  return { session, open, draft: startReceiving(open, studio, today) };
}

test('the form begins with all that is still to come, today', async () => {
  const { draft, open } = await started();
  expect(open.daysLate).toBe(3);
  expect(draft).toMatchObject({
    order: 'D-1',
    received: '2026-04-03',
    parts: [{ material: 'Wheat starch', line: '1', packWords: '1 kg', packs: '2', expected: '2' }],
  });
  expect(readReceiving(draft)).toMatchObject({
    problems: [],
    request: { order: 'D-1', received: today, carriage: null, by: null, lines: [{ amount: 'all to come' }] },
  });
});

test('a line that came in two lots becomes two, with the supplier’s lots, dates and carriage', async () => {
  const { session, draft } = await started();
  let now = withAnotherLot(draft, '0');
  expect(now.parts.map(({ key, packs }) => [key, packs])).toEqual([
    ['0', '2'],
    ['0.1', ''],
  ]);
  now = withPart(now, '0', 'packs', '1');
  now = withPart(now, '0', 'supplierLot', 'S 7');
  now = withPart(now, '0.1', 'packs', '0.5');
  now = withPart(now, '0.1', 'useBy', '2027-01-31');
  const { request, problems } = readReceiving({ ...now, carriage: '3', by: 'A.' });
  expect(problems).toEqual([]);
  const done = await receiveIt(session, request ?? expect.unreachable());
  expect(done).toMatchObject({ kind: 'done' });
  if (done.kind !== 'done') return;
  expect(done.sentence).toMatch(
    /^Received of order D-1: 1 kg of Wheat starch as lot \S+ and 0.5 kg of Wheat starch as lot \S+; still to come: 500 g of Wheat starch\.$/,
  );
  const lots = booksIn(session).ledger.studio.lots.filter(({ record }) => record.order === 'D-1');
  expect(lots.map(({ record }) => [record.supplierLot, record.useBy, record.cost?.valueOf()])).toEqual([
    ['S 7', null, 16],
    [null, dayOf('2027-01-31'), 8],
  ]);
});

test('what is wrong is told by its field', async () => {
  const { draft } = await started();
  const wrong = withPart(withPart(draft, '0', 'packs', 'two'), '0', 'useBy', '2026-02-30');
  expect(readReceiving({ ...wrong, received: '', carriage: '-1' })).toEqual({
    request: null,
    problems: [
      { field: 'received', message: 'Give the day on which it came.' },
      { field: 'carriage', message: '-1 is below 0: a number from 0 on is right.' },
      {
        field: 'packs of 0',
        message: 'two can’t be read as a number: a plain number is right, such as 12.5.',
      },
      { field: 'useBy of 0', message: 'Give a day of the calendar, or none.' },
    ],
  });
  const nothing = withPart(draft, '0', 'packs', ' ');
  expect(readReceiving(nothing)).toEqual({
    request: null,
    problems: [{ field: 'packs of 0', message: 'Say how many packs came: nothing is told of any line.' }],
  });
});
