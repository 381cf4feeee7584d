import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { drawEntries } from '../../src/actions/draw-entries.ts';
import { parseDay } from '../../src/core/day.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { WorkbookDescription } from '../../src/office-host/workbook-description.ts';
import type { WorkbookSnapshot } from '../../src/workbook/port.ts';
import { randomFrom } from '../helpers/bench.ts';
import {
  type AddIn,
  append,
  describeSnapshot,
  number,
  opened,
  plain,
  readSnapshot,
  set,
  text,
  valuesOf,
  writtenSnapshot,
} from './office-bench.ts';

const DEMO = join(import.meta.dirname, '../../sample-workbooks/demo-studio.xlsx');
const LIMIT = 5_000_000;

/** What a piece of work costs: its round trips, and the largest request and answer. */
async function costOf<T>(
  { statistics }: AddIn,
  work: () => Promise<T>,
): Promise<{ result: T; requests: number; sent: number; received: number; largest: number }> {
  const before = statistics.requests;
  const from = statistics.requestBytes.length;
  const result = await work();
  const sent = statistics.requestBytes.slice(from);
  const received = statistics.responseBytes.slice(from);
  const sum = (all: readonly number[]): number => all.reduce((total, each) => total + each, 0);
  return {
    result,
    requests: statistics.requests - before,
    sent: sum(sent),
    received: sum(received),
    largest: Math.max(...sent, ...received),
  };
}

/** A table of lots with a note of some length in each row. */
function lots(rows: number, note = 'n', formula?: string): WorkbookDescription {
  const columns = ['Lot', 'Quantity', 'Note', ...(formula === undefined ? [] : [{ name: 'Twice', formula }])];
  const body = Array.from({ length: rows }, (_, row) => [`L-${row}`, row, `${note}${row}`]);
  return { sheets: [{ name: 'Stock', tables: [{ name: 'Lots', at: 'A1', columns, rows: body }] }] };
}

const newLots = (count: number, note = 'new') =>
  append(
    'Lots',
    ...Array.from({ length: count }, (_, row) => ({
      Lot: text(`N-${row}`),
      Quantity: number(row + 0.5),
      Note: text(`${note}${row}`),
    })),
  );

describe('round trips', () => {
  it('are three to read the demo studio, then two, and three for a posting, as there are formulas', async () => {
    const file = openXlsx(readFileSync(DEMO)).snapshot();
    const add = opened(describeSnapshot(file));
    const first = await costOf(add, () => readSnapshot(add.live));
    const sizes = (snapshot: WorkbookSnapshot): unknown =>
      snapshot.tables.map(({ name, rowCount, columns }) => [name, rowCount, columns.length]);
    expect(sizes(first.result)).toEqual(sizes(file));
    const again = await costOf(add, () => readSnapshot(add.live));
    const today = parseDay('2026-11-16');
    if (today === null) throw new Error('no day');
    const drawn = drawEntries(first.result, today, randomFrom(1));
    if (!drawn.ok) throw new Error(drawn.message);
    const writing = await costOf(add, () => add.live.write(drawn.changes, again.result));
    expect(plain(writtenSnapshot(writing.result))).toEqual(plain(await readSnapshot(add.live)));
    expect(drawn.changes.length).toBeGreaterThan(5);
    expect([first.requests, again.requests, writing.requests]).toEqual([3, 2, 3]);
    expect(Math.max(first.largest, writing.largest)).toBeLessThan(LIMIT);
  });

  it('are as many for 5,000 rows as for 10, appended or set', async () => {
    const costs: number[][] = [];
    for (const count of [10, 5000]) {
      const add = opened(lots(3));
      const basis = await readSnapshot(add.live);
      const appended = await costOf(add, () => add.live.write([newLots(count)], basis));
      const then = writtenSnapshot(appended.result);
      expect(valuesOf(then, 'Lots', 'Lot')).toHaveLength(count + 3);
      const sets = Array.from({ length: count }, (_, row) => set('Lots', row, 'Quantity', number(-row)));
      const changed = await costOf(add, () => add.live.write(sets, then));
      const reading = await costOf(add, () => readSnapshot(add.live));
      expect(plain(writtenSnapshot(changed.result))).toEqual(plain(reading.result));
      expect(valuesOf(reading.result, 'Lots', 'Quantity').at(count - 1)).toBe(1 - count);
      costs.push([appended.requests, changed.requests, reading.requests]);
    }
    expect(costs).toEqual([
      [2, 2, 2],
      [2, 2, 2],
    ]);
  });

  it('are one more for each further 4 MB to read, and none is larger than the program takes', async () => {
    const add = opened(lots(20_000, 'a note of some length, as people write them at the bench '.repeat(3)));
    const first = await costOf(add, () => readSnapshot(add.live));
    const again = await costOf(add, () => readSnapshot(add.live));
    expect(valuesOf(again.result, 'Lots', 'Quantity').at(-1)).toBe(19_999);
    expect(plain(again.result)).toEqual(plain(first.result));
    expect(again.largest).toBeLessThan(LIMIT);
    expect(again.received).toBeGreaterThan(2 * 4_000_000);
    expect(again.requests).toBe(1 + Math.ceil(again.received / 4_000_000));
  });

  it('read in smaller blocks what the program does not answer at once', async () => {
    const description = lots(300, 'x'.repeat(2000));
    const add = opened(description, { limits: { responseBytes: 200_000 } });
    const reading = await costOf(add, () => readSnapshot(add.live));
    expect(valuesOf(reading.result, 'Lots', 'Note')).toEqual(
      Array.from({ length: 300 }, (_, row) => `${'x'.repeat(2000)}${row}`),
    );
    const plainly = opened(lots(1, 'x'.repeat(30_000)), { limits: { responseBytes: 20_000 } });
    const outcome = await plainly.live.read();
    expect(outcome).toMatchObject({ kind: 'failed', message: expect.stringMatching(/Shorten its longest/) });
  });

  it('are several where more than 4 MB is to be written, the rows staying in their order', async () => {
    const add = opened(lots(2));
    const basis = await readSnapshot(add.live);
    const count = 4000;
    const writing = await costOf(add, () => add.live.write([newLots(count, 'y'.repeat(1500))], basis));
    const written = writtenSnapshot(writing.result);
    expect(valuesOf(written, 'Lots', 'Lot').slice(2)).toEqual(
      Array.from({ length: count }, (_, row) => `N-${row}`),
    );
    expect(plain(written)).toEqual(plain(await readSnapshot(add.live)));
    expect(writing.sent).toBeGreaterThan(6_000_000);
    expect(writing.largest).toBeLessThan(LIMIT);
    expect(writing.requests).toBeGreaterThan(2);
  });
});
