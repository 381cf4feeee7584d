import { describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { quantityNumber } from '../../src/core/exact-number.ts';
import { copyOfFile } from '../../src/files/copy-of-file.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import { Session } from '../../src/session/session.ts';
import type { WorkbookSnapshot } from '../../src/workbook/port.ts';
import type { CopyWorkbook, HandOverOutcome } from '../../src/workbook/workbook-copy.ts';
import { randomFrom } from '../helpers/bench.ts';
import { dayOf } from '../helpers/literal.ts';
import { MemoryWorkbook } from '../helpers/memory-workbook.ts';
import { xlsxOf } from '../helpers/xlsx.ts';
import { YEARS } from '../helpers/years.ts';

const DAY = dayOf('2026-02-01');
const FILE = xlsxOf(YEARS);

interface Given {
  readonly bytes?: Uint8Array;
  readonly name?: string | null;
  readonly handed?: (name: string) => HandOverOutcome;
  readonly copy?: CopyWorkbook;
}

/** A session over the years, and what was handed over. */
async function session({
  bytes = FILE,
  name = 'bench 2025.xlsx',
  handed = (called) => ({ kind: 'saved', name: called }),
  copy,
}: Given = {}) {
  const made: { readonly name: string; readonly bytes: Uint8Array }[] = [];
  const workbook = new MemoryWorkbook(openXlsx(FILE).snapshot());
  const opened = new Session({
    workbook,
    today: () => DAY,
    random: randomFrom(7),
    wait: () => Promise.resolve(),
    starter: () => Promise.resolve([]),
    copy:
      copy ??
      (() =>
        Promise.resolve(
          copyOfFile(bytes, name, (saved, called) => {
            made.push({ name: called, bytes: saved });
            return Promise.resolve(handed(called));
          }),
        )),
  });
  await opened.start();
  return { opened, workbook, made };
}

function figures(snapshot: WorkbookSnapshot) {
  const { stock, notices } = checkWorkbook(snapshot, DAY);
  return {
    lots: stock.lots.map(({ lot, left, goodUntil, worth }) => [
      lot.name,
      quantityNumber(left),
      goodUntil,
      worth,
    ]),
    notices: notices.map(({ message }) => message),
  };
}

describe('carrying over to a new workbook', () => {
  test('the new one gives the figures of the old one, which stays as it is', async () => {
    const { opened, workbook, made } = await session();
    const before = workbook.snapshot;
    const done = await opened.carryOver(DAY);
    expect(done).toMatchObject({
      kind: 'done',
      sentence: 'Carried over to 1 Feb 2026: the new workbook is saved as bench 2025 from 2026-02-01.xlsx.',
      posting: null,
    });
    expect(done.kind === 'done' && done.remarks[0]).toBe(
      '8 movements of 4 lots folded into 4 Carried movements; 2 entries of the treatment log left behind.',
    );
    expect(done.kind === 'done' && done.remarks[1]).toContain('Keep bench 2025.xlsx with the records');
    expect([workbook.writes, workbook.snapshot]).toEqual([[], before]);
    const fresh = openXlsx(made[0]?.bytes ?? new Uint8Array()).snapshot();
    expect(figures(fresh)).toEqual(figures(before));
    const movements = (snapshot: WorkbookSnapshot) =>
      snapshot.tables.find(({ name }) => name === 'Movements')?.rowCount ?? 0;
    expect(movements(before) - movements(fresh)).toBe(8 - 4);
    const notes = fresh.tables
      .find(({ name }) => name === 'Movements')
      ?.columns.find(({ header }) => header === 'Note')
      ?.values.filter((value) => String(value).includes('bench 2025.xlsx'));
    expect(notes).toHaveLength(4);
  });

  test('where the program opens it, she is told to save it there', async () => {
    const { opened } = await session({ handed: () => ({ kind: 'opened' }) });
    expect(await opened.carryOver(DAY)).toMatchObject({
      kind: 'done',
      sentence:
        'Carried over to 1 Feb 2026: the new workbook is open in a window of its own. Save it there under a new name.',
    });
  });

  test('a workbook without a name is to be saved first', async () => {
    const { opened, made } = await session({ name: null });
    expect(await opened.carryOver(DAY)).toMatchObject({
      kind: 'refused',
      message: expect.stringMatching(/no name yet\. Save it first/),
    });
    expect(made).toEqual([]);
  });

  test.each([
    ['lacks a movement', (rows: readonly object[]) => rows.slice(1)],
    ['holds one more', (rows: readonly object[]) => [...rows, { ...rows[0], Movement: 'M-more' }]],
  ])('a file that %s of the open workbook is not used', async (_, change) => {
    const bytes = xlsxOf({ ...YEARS, Movements: change(YEARS.Movements) as typeof YEARS.Movements });
    const { opened, made } = await session({ bytes });
    expect(await opened.carryOver(DAY)).toMatchObject({
      kind: 'refused',
      message: expect.stringContaining('does not hold the same log entries and movements'),
    });
    expect(made).toEqual([]);
  });

  test('what stands in the way of copying or of handing over is said', async () => {
    const failing = await session({
      copy: () => Promise.resolve({ kind: 'failed', message: 'No file is handed out.' }),
    });
    expect(await failing.opened.carryOver(DAY)).toEqual({
      kind: 'refused',
      message: 'No file is handed out.',
    });
    const cancelled = await session({ handed: () => ({ kind: 'cancelled' }) });
    expect(await cancelled.opened.carryOver(DAY)).toEqual({
      kind: 'refused',
      message: 'No place was chosen for the new workbook, so nothing was saved.',
    });
    const full = await session({ handed: () => ({ kind: 'failed', message: 'The disk is full.' }) });
    expect(await full.opened.carryOver(DAY)).toEqual({ kind: 'refused', message: 'The disk is full.' });
    expect(copyOfFile(FILE.slice(0, 100), 'half.xlsx', () => Promise.resolve({ kind: 'cancelled' }))).toEqual(
      { kind: 'failed', message: expect.stringMatching(/\w/) },
    );
  });
});
