import { describe, expect, test } from 'vitest';
import { recentPostings } from '../../src/actions/recent-postings.ts';
import type { Day } from '../../src/core/day.ts';
import { serialOfDay } from '../../src/core/serial-date.ts';
import type { Change, WorkbookSnapshot } from '../../src/workbook/port.ts';
import { withChanges } from '../../src/workbook/with-changes.ts';
import { date, type Literal } from '../helpers/literal.ts';
import type { MemoryWorkbook } from '../helpers/memory-workbook.ts';
import { booksIn, leftOf, logged, MEND, opened, planIn, settled, today } from '../helpers/opened-session.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

const typed = { Date: date(TODAY), Job: '26-014', Treatment: 'Mend tear', Extent: 1 };

function withLog(...rows: Exclude<Literal[string], { rows: unknown }>): WorkbookSnapshot {
  return snapshotOf({ ...STUDIO, TreatmentLog: rows });
}

function columnOf({ snapshot }: MemoryWorkbook, table: string, header: string) {
  return snapshot.tables
    .find(({ name }) => name === table)
    ?.columns.find((column) => column.header === header)?.values;
}

/** The next write gets only as far as the first rows that it appends. */
function breakOff(workbook: MemoryWorkbook, rows: number): void {
  workbook.nextWrites.push((changes: readonly Change[]) => {
    workbook.snapshot = withChanges(
      workbook.snapshot,
      changes.flatMap((change) =>
        change.kind === 'append' ? [{ ...change, rows: change.rows.slice(0, rows) }] : [],
      ),
    );
    return { kind: 'half', snapshot: workbook.snapshot, message: 'Only a part was written.' };
  });
}

describe('rows that are shown and have moved', () => {
  test('an entry is drawn by its identifier, not what stands in its row by now', async () => {
    const { workbook, session } = await opened({ ...STUDIO, TreatmentLog: [{ Entry: 'E-5', ...typed }] });
    const entry = booksIn(session).ledger.studio.entries[0];
    if (entry === undefined) throw new Error('no entry');
    workbook.change('other', withLog({ ...typed, Extent: 2 }, { Entry: 'E-5', ...typed }));
    await session.draw([entry]);
    expect(columnOf(workbook, 'TreatmentLog', 'Drawn')).toEqual([null, 'yes']);
  });

  test('a count on the second of two rows with one identifier is refused, and takes nothing from the first', async () => {
    const [first] = STUDIO.Tissue;
    const twin = { ...first, Lot: 't-1', Quantity: 10, Left: 7, 'Left as written': 10 };
    const { workbook, session } = await opened({ ...STUDIO, Tissue: [...STUDIO.Tissue, twin] });
    const notice = booksIn(session).notices.find(({ code }) => code === 'count-differs');
    if (notice?.mend?.kind !== 'post count') throw new Error('no way to mend it');
    expect(await session.postCount(notice.mend.lot)).toMatchObject({
      kind: 'refused',
      message: expect.stringContaining('stands in two rows'),
    });
    expect([workbook.writes.length, leftOf(session, 'T-1')]).toEqual([0, 2]);
  });
});

describe('rows that vanish by somebody else’s change', () => {
  test('are missed where their identifier was typed as a number', async () => {
    const { workbook, session } = await opened({ ...STUDIO, TreatmentLog: [{ Entry: 301, ...typed }] });
    workbook.change('other', withLog());
    await settled(session);
    expect(session.view.questions).toEqual([{ kind: 'rows gone', movements: 0, entries: 1 }]);
    await session.writeAgain();
    expect(columnOf(workbook, 'TreatmentLog', 'Entry')).toEqual([301]);
    expect(session.view.questions).toEqual([]);
  });

  test('and are not missed any more once they are back', async () => {
    const { workbook, session } = await opened();
    await logged(session);
    const whole = workbook.snapshot;
    workbook.change('other', snapshotOf(STUDIO));
    await settled(session);
    expect(session.view.questions).toHaveLength(1);
    workbook.change('other', whole);
    await settled(session);
    expect(session.view.questions).toEqual([]);
  });
});

describe('what was written in part', () => {
  test('an entry whose drawing is finished says that it is drawn', async () => {
    const { workbook, session } = await opened({
      ...STUDIO,
      TreatmentLog: [{ Entry: 'E-5', ...typed, Extent: 6 }],
    });
    breakOff(workbook, 2);
    await session.draw('all');
    const [question] = session.view.questions;
    if (question?.kind !== 'half') throw new Error('no question about the half');
    await session.finish(question.posting);
    expect(columnOf(workbook, 'TreatmentLog', 'Drawn')).toEqual(['yes']);
    expect(columnOf(workbook, 'TreatmentLog', 'Drawn for')).toEqual([6]);
  });

  test('an entry whose drawing anew is finished is drawn for what it says now', async () => {
    const { workbook, session } = await opened();
    await logged(session);
    workbook.change(
      'person',
      withChanges(workbook.snapshot, [
        { kind: 'set', table: 'TreatmentLog', row: 0, column: 'Extent', cell: { kind: 'number', number: 2 } },
      ]),
    );
    await settled(session);
    const notice = booksIn(session).notices.find(({ code }) => code === 'entry-changed');
    if (notice?.mend?.kind !== 'redraw') throw new Error('no way to mend it');
    breakOff(workbook, 2);
    await session.redraw(notice.mend.entry);
    const [question] = session.view.questions;
    if (question?.kind !== 'half') throw new Error('no question about the half');
    await session.finish(question.posting);
    expect(columnOf(workbook, 'TreatmentLog', 'Drawn for')).toEqual([2]);
    expect(booksIn(session).notices.some(({ code }) => code === 'entry-changed')).toBe(false);
  });

  test('a quote that broke off is told, and nobody offers to finish what can’t be', async () => {
    const { workbook, session } = await opened();
    workbook.nextWrites.push((changes) => {
      workbook.snapshot = withChanges(
        workbook.snapshot,
        changes.filter((change) => change.table === 'Quotes'),
      );
      return { kind: 'half', snapshot: workbook.snapshot, message: 'Quotes, row 2, stands still.' };
    });
    expect(await session.freeze('26-015')).toEqual({
      kind: 'refused',
      message: 'Quotes, row 2, stands still.',
    });
    expect(session.view.questions).toEqual([]);
  });
});

test('on a new day nothing is written by the figures of the day before', async () => {
  let day: Day = today;
  const { workbook, session } = await opened(STUDIO, () => day);
  const shown = planIn(session);
  day = (today + 1) as Day;
  expect(await session.log(MEND, shown)).toMatchObject({ kind: 'done' });
  expect(booksIn(session).today).toBe(day);
  const posted = new Set(columnOf(workbook, 'Movements', 'Posted'));
  expect(posted).toEqual(new Set([serialOfDay(day, workbook.snapshot.dateSystem)]));
});

test('drawing again says what changes, not as if all of it cost the difference', async () => {
  const { workbook, session } = await opened();
  await logged(session);
  workbook.change(
    'person',
    withChanges(workbook.snapshot, [
      { kind: 'set', table: 'TreatmentLog', row: 0, column: 'Extent', cell: { kind: 'number', number: 2 } },
    ]),
  );
  await settled(session);
  const notice = booksIn(session).notices.find(({ code }) => code === 'entry-changed');
  if (notice?.mend?.kind !== 'redraw') throw new Error('no way to mend it');
  // 15.78 stood before; 1 sheet of 4.50, 10 g of 2.50 for 200 g, 2 of 50 uses of 20.00 are taken now.
  expect(await session.redraw(notice.mend.entry)).toMatchObject({
    sentence:
      'Mend tear, 2 tear, for 26-014, drawn again: what was drawn before is put back, and taken from T-1, P-1 and R-1. ' +
      'The difference is EUR -10.34.',
  });
  const [again, first] = recentPostings(booksIn(session).ledger, 2);
  expect([again?.isDrawnAgain, again?.reversed, first?.isDrawnAgain, first?.reversed]).toEqual([
    true,
    false,
    false,
    true,
  ]);
});

test('what several entries lack of one material is added up', async () => {
  const { session } = await opened({
    ...STUDIO,
    TreatmentLog: [
      { Entry: 'E-1', ...typed, Extent: 50 },
      { Entry: 'E-2', ...typed, Extent: 4 },
    ],
  });
  // 250 g and 20 g of paste are wanted and 200 g are there; 25 and 2 sheets of tissue, and 12 are there; 54 of 50 uses.
  expect(await session.draw('all')).toMatchObject({
    sentence: expect.stringMatching(
      /Not covered by any lot: 15 sheets of Repair tissue 5, 70 g of Wheat starch paste, 4 uses of Silicone release paper\.$/,
    ),
  });
});
