import { describe, expect, test } from 'vitest';
import { receiveOrder } from '../../src/actions/receive-order.ts';
import { decimal, quantityNumber } from '../../src/core/exact-number.ts';
import { accountIn } from '../../src/core/ledger.ts';
import { Session } from '../../src/session/session.ts';
import type { WorkbookSnapshot } from '../../src/workbook/port.ts';
import { withChanges } from '../../src/workbook/with-changes.ts';
import { came, delivery } from '../actions/helpers/order-bench.ts';
import { randomFrom } from '../helpers/bench.ts';
import { date, type Literal } from '../helpers/literal.ts';
import { MemoryWorkbook, NO_COPY } from '../helpers/memory-workbook.ts';
import { booksIn, leftOf, logged, MEND, opened, planIn, settled, today } from '../helpers/opened-session.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

/** The snapshot with the last rows of a table gone. */
function withoutLastRows(snapshot: WorkbookSnapshot, table: string, rows: number): WorkbookSnapshot {
  return {
    ...snapshot,
    tables: snapshot.tables.map((each) =>
      each.name === table
        ? {
            ...each,
            rowCount: each.rowCount - rows,
            columns: each.columns.map((column) => ({ ...column, values: column.values.slice(0, -rows) })),
          }
        : each,
    ),
  };
}

describe('opening', () => {
  test('reads once, and gives the stock and the notices of the day', async () => {
    const { workbook, session } = await opened();
    expect(workbook.reads).toBe(1);
    expect(booksIn(session)).toMatchObject({ today, readingOnly: null, absent: [] });
    expect(leftOf(session, 'T-1')).toBe(2);
  });

  test('a workbook that cannot be read says why, and opens when it can', async () => {
    const workbook = new MemoryWorkbook(snapshotOf(STUDIO));
    workbook.nextReads.push({ kind: 'failed', message: 'A cell is being edited.' });
    const session = new Session({
      workbook,
      today: () => today,
      random: randomFrom(7),
      copy: NO_COPY,
      wait: () => Promise.resolve(),
      starter: () => Promise.resolve([]),
    });
    await session.start();
    expect(session.view.state).toEqual({ kind: 'failed', message: 'A cell is being edited.' });
    await session.readAgain();
    expect(session.view.state.kind).toBe('open');
  });

  test('a workbook without any of the tables offers to set them up, and writes the starter', async () => {
    const { workbook, session } = await opened({
      'My own list': { rows: [{ Name: 'x' }], headers: ['Name'] },
    });
    expect(session.view.state.kind).toBe('no tables');
    expect(await session.setUp()).toMatchObject({
      kind: 'done',
      sentence: expect.stringMatching(/^Set up: 2\d tables/),
    });
    expect(workbook.tabs.map(({ name }) => name)).toContain('TreatmentLog');
    expect(workbook.tabs.find(({ name }) => name === 'Materials')?.table?.rows.length).toBeGreaterThan(10);
  });

  test('a workbook that lacks some of them says which, and gets those, without the rows of the starter', async () => {
    const { Treatments: _, UsageRates: __, ...rest } = STUDIO;
    const { workbook, session } = await opened(rest);
    expect(booksIn(session).absent).toEqual(['Treatments', 'UsageRates']);
    await session.setUp();
    expect(workbook.tabs.find(({ name }) => name === 'Treatments')?.table?.rows).toEqual([]);
    expect(workbook.tabs.some(({ name }) => name === 'Materials' || name === 'Jobs')).toBe(false);
  });

  test('newer tables are read and not written', async () => {
    const { workbook, session } = await opened({
      ...STUDIO,
      Settings: [{ Setting: 'tables version', Value: 99 }],
    });
    expect(booksIn(session).readingOnly).toContain('version 99');
    expect(await session.log(MEND, planIn(session))).toMatchObject({ kind: 'refused' });
    expect(workbook.writes).toEqual([]);
  });
});

test('a workbook that cannot be followed opens all the same, and it is said', async () => {
  const workbook = new MemoryWorkbook(snapshotOf(STUDIO));
  workbook.nextListens.push({ kind: 'failed', message: 'The program tells nothing.' });
  const session = new Session({
    workbook,
    today: () => today,
    random: randomFrom(7),
    copy: NO_COPY,
    wait: () => Promise.resolve(),
    starter: () => Promise.resolve([]),
  });
  await session.start();
  expect(session.view).toMatchObject({ state: { kind: 'open' }, notFollowing: 'The program tells nothing.' });
  await session.readAgain();
  expect(session.view.notFollowing).toBeNull();
});

describe('logging', () => {
  test('takes what the plan showed, in one write, and says so', async () => {
    const { workbook, session } = await opened();
    const plan = planIn(session);
    expect(
      plan.uses.map(({ material, quantity, unit, takes, missing }) => ({
        material: material.name,
        quantity: quantityNumber(quantity),
        unit: unit.name,
        takes: takes.map(({ lot, quantity: taken }) => [lot.name, quantityNumber(taken)]),
        missing: quantityNumber(missing),
      })),
    ).toEqual([
      {
        material: 'Repair tissue 5',
        quantity: 3,
        unit: 'sheet',
        takes: [
          ['T-1', 2],
          ['T-2', 1],
        ],
        missing: 0,
      },
      { material: 'Wheat starch paste', quantity: 30, unit: 'g', takes: [['P-1', 30]], missing: 0 },
      { material: 'Silicone release paper', quantity: 6, unit: 'use', takes: [['R-1', 6]], missing: 0 },
    ]);
    // 2 sheets of 9.00 for 2, 1 of 40.00 for 10, 30 g of 2.50 for 200 g, 6 of 50 uses of 20.00.
    expect(plan.cost).toBe(900n + 400n + 38n + 240n);
    const done = await logged(session);
    expect(workbook.writes).toHaveLength(1);
    expect(workbook.reads).toBe(1);
    expect(done.sentence).toBe('Mend tear, 6 tear, for 26-014: taken from T-1, T-2, P-1 and R-1, EUR 15.78.');
    expect(leftOf(session, 'T-2')).toBe(9);
  });

  test('what is written costs what was planned', async () => {
    const { session } = await opened();
    const plan = planIn(session);
    const { drawing } = await logged(session);
    const { ledger } = booksIn(session);
    const costs = (drawing?.movements ?? []).map(
      ({ lot, name }) =>
        accountIn(ledger, ledger.studio.lotsByKey.get(lot.name.toLowerCase()) ?? lot).postings.find(
          ({ movement }) => movement.name === name,
        )?.cost ?? 0n,
    );
    expect(costs.reduce((total, cost) => total + cost, 0n)).toBe(plan.cost);
  });

  test('looks again where somebody else has taken from the lot since the plan was shown', async () => {
    const { workbook, session } = await opened();
    const plan = planIn(session);
    workbook.beforeWrite = () => {
      workbook.snapshot = withChanges(workbook.snapshot, [
        {
          kind: 'append',
          table: 'Movements',
          rows: [
            {
              Movement: { kind: 'text', text: 'M-other' },
              Date: { kind: 'day', day: today },
              Kind: { kind: 'text', text: 'Use' },
              Lot: { kind: 'text', text: 'T-1' },
              Quantity: { kind: 'number', number: 1 },
              Unit: { kind: 'text', text: 'sheet' },
            },
          ],
        },
        { kind: 'set', table: 'Tissue', row: 0, column: 'Left', cell: { kind: 'number', number: 1 } },
        {
          kind: 'set',
          table: 'Tissue',
          row: 0,
          column: 'Left as written',
          cell: { kind: 'number', number: 1 },
        },
      ]);
    };
    expect(await session.log(MEND, plan)).toMatchObject({ kind: 'look again' });
    expect(workbook.writes).toEqual([]);
    // The plan that is shown now takes what is left, and is what gets written.
    await logged(session);
    expect([leftOf(session, 'T-1'), leftOf(session, 'T-2')]).toEqual([0, 8]);
  });

  test('a change elsewhere in the touched rows is worked out again by itself', async () => {
    const { workbook, session } = await opened();
    workbook.beforeWrite = () => {
      workbook.snapshot = withChanges(workbook.snapshot, [
        { kind: 'set', table: 'Tissue', row: 0, column: 'Notes', cell: { kind: 'text', text: 'top drawer' } },
      ]);
    };
    await logged(session);
    expect(workbook.writes).toHaveLength(1);
    expect(leftOf(session, 'T-1')).toBe(0);
  });

  test('taking it back leaves everything as it was, by reversing rows', async () => {
    const { session } = await opened();
    const { posting } = await logged(session);
    expect(await session.undo(posting ?? '')).toMatchObject({ kind: 'done' });
    expect(['T-1', 'T-2', 'P-1', 'R-1'].map((lot) => leftOf(session, lot))).toEqual([2, 10, 200, 5]);
  });

  test('a delivery is taken back with its lots, of which nothing is left', async () => {
    const { session } = await opened(ORDERED);
    const done = await session.carryOut(
      'Receiving',
      (snapshot, day, random) => receiveOrder(snapshot, delivery('O-1', [came('1')]), day, random),
      () => 'Received.',
    );
    const posting = done.kind === 'done' ? done.posting : null;
    expect(booksIn(session).ledger.studio.orders[0]?.state).toBe('Received');
    expect(await session.undo(posting ?? '')).toMatchObject({
      kind: 'done',
      sentence: 'Taken back: 1 lot that came in.',
    });
    expect(booksIn(session).ledger.studio.orders[0]?.state).toBe('Ordered');
  });
});

const ORDERED: Literal = {
  ...STUDIO,
  Orders: [{ Order: 'O-1', Supplier: 'Paper mill', 'Ordered on': date('2026-03-10'), State: 'Ordered' }],
  OrderLines: [
    { Order: 'O-1', Line: '1', Material: 'Wheat starch', Packs: 1, 'Pack quantity': 1, Unit: 'kg' },
  ],
};

describe('following the sheet', () => {
  const typed = { Date: date(TODAY), Job: '26-014', Treatment: 'Mend tear', Extent: 1 };

  test('fifty rows pasted are read once and offered as not drawn; drawing them is one write', async () => {
    const { workbook, session } = await opened();
    const pasted = snapshotOf({ ...STUDIO, TreatmentLog: Array.from({ length: 50 }, () => typed) });
    workbook.change('person', pasted);
    workbook.change('person', pasted);
    await settled(session);
    expect(workbook.reads).toBeLessThanOrEqual(3);
    const notDrawn = booksIn(session).notices.filter(({ code }) => code === 'not-drawn');
    expect(notDrawn).toHaveLength(50);
    expect(notDrawn[0]?.mend).toMatchObject({ kind: 'draw' });
    const [first] = notDrawn.map(({ mend }) => mend);
    if (first?.kind !== 'draw') throw new Error('no way to mend it');
    await session.draw([first.entry]);
    expect(booksIn(session).notices.filter(({ code }) => code === 'not-drawn')).toHaveLength(49);
    await session.draw('all');
    expect(workbook.writes).toHaveLength(2);
    // 50 × 5 g with 25 % waste is more paste than the 200 g that are there.
    expect(leftOf(session, 'P-1')).toBe(0);
  });

  test('what is typed over Left is offered as a Count and posted as the difference', async () => {
    const { workbook, session } = await opened();
    await logged(session);
    const tissue = workbook.snapshot.tables.find(({ name }) => name === 'Tissue');
    expect(tissue?.columns.find(({ header }) => header === 'Left')?.values).toEqual([0, 9]);
    workbook.change(
      'person',
      withChanges(workbook.snapshot, [
        { kind: 'set', table: 'Tissue', row: 1, column: 'Left', cell: { kind: 'number', number: 8.5 } },
      ]),
    );
    await settled(session);
    const notice = booksIn(session).notices.find(({ code }) => code === 'count-differs');
    if (notice?.mend?.kind !== 'post count') throw new Error('no way to mend it');
    const done = await session.postCount(notice.mend.lot);
    expect(done).toMatchObject({ kind: 'done', sentence: 'Counted: lot T-2, -0.5 sheets.' });
    expect(leftOf(session, 'T-2')).toBe(8.5);
    expect(booksIn(session).notices.some(({ code }) => code === 'count-differs')).toBe(false);
  });

  test('an entry that was edited is drawn for what it says now', async () => {
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
    expect(await session.redraw(notice.mend.entry)).toMatchObject({ kind: 'done' });
    expect(['T-1', 'T-2', 'P-1', 'R-1'].map((lot) => leftOf(session, lot))).toEqual([1, 10, 190, 4.8]);
    expect(booksIn(session).notices.some(({ code }) => code === 'entry-changed')).toBe(false);
  });

  test('a row that is chosen shows its lot, job, entry, plan row or material', async () => {
    const { workbook, session } = await opened();
    await logged(session);
    const chosen = (tab: string, row: number) => {
      workbook.choose({ tab, row, column: 1 });
      return session.view.chosen;
    };
    expect(chosen('Tissue', 3)).toMatchObject({ kind: 'lot', lot: { name: 'T-2' } });
    expect(chosen('Jobs', 2)).toMatchObject({ kind: 'job', job: { job: '26-014' } });
    expect(chosen('TreatmentLog', 2)).toMatchObject({ kind: 'entry' });
    expect(chosen('Plan', 2)).toMatchObject({ kind: 'plan', plan: { record: { extent: decimal('8') } } });
    expect(chosen('Materials', 2)).toMatchObject({ kind: 'material', material: { name: 'Repair tissue 5' } });
    expect(chosen('Movements', 2)).toMatchObject({ kind: 'lot', lot: { name: 'T-1' } });
    expect(chosen('UsageRates', 3)).toMatchObject({
      kind: 'material',
      material: { name: 'Wheat starch paste' },
    });
    expect(chosen('Recipes', 2)).toMatchObject({
      kind: 'material',
      material: { name: 'Wheat starch paste' },
    });
    expect(chosen('Settings', 2)).toBeNull();
    expect(chosen('Tissue', 1)).toBeNull();
    expect(chosen('Somewhere', 1)).toBeNull();
  });
});

describe('rows that vanish', () => {
  test('by the person’s own undo: the figures follow, and nothing is asked', async () => {
    const { workbook, session } = await opened();
    const before = workbook.snapshot;
    await logged(session);
    workbook.change('person', before);
    await settled(session);
    expect(leftOf(session, 'T-1')).toBe(2);
    expect(session.view.questions).toEqual([]);
  });

  test('by somebody else’s change: they are offered, and written once, with their identifiers', async () => {
    const { workbook, session } = await opened();
    await logged(session);
    const rows = workbook.snapshot.tables.find(({ name }) => name === 'Movements')?.columns[0]?.values;
    workbook.change('other', withoutLastRows(workbook.snapshot, 'Movements', 2));
    await settled(session);
    expect(session.view.questions).toEqual([{ kind: 'rows gone', movements: 2, entries: 0 }]);
    expect(leftOf(session, 'P-1')).toBe(200);
    expect(workbook.writes).toHaveLength(1);
    expect(await session.writeAgain()).toMatchObject({ kind: 'done', sentence: 'Written again: 2 rows.' });
    expect(workbook.snapshot.tables.find(({ name }) => name === 'Movements')?.columns[0]?.values).toEqual(
      rows,
    );
    expect([leftOf(session, 'P-1'), session.view.questions]).toEqual([170, []]);
  });

  test('and can be let go', async () => {
    const { workbook, session } = await opened();
    await logged(session);
    workbook.change('other', withoutLastRows(workbook.snapshot, 'TreatmentLog', 1));
    await settled(session);
    expect(session.view.questions).toEqual([{ kind: 'rows gone', movements: 0, entries: 1 }]);
    session.letGo();
    expect(session.view.questions).toEqual([]);
  });
});

describe('a posting of which only a part was written', () => {
  async function halved() {
    const { workbook, session } = await opened();
    workbook.nextWrites.push((changes) => {
      // The entry and the first two movements stand; nothing else does.
      workbook.snapshot = withChanges(
        workbook.snapshot,
        changes.flatMap((change) =>
          change.kind === 'append' ? [{ ...change, rows: change.rows.slice(0, 2) }] : [],
        ),
      );
      return { kind: 'half', snapshot: workbook.snapshot, message: 'Only a part was written.' };
    });
    expect(await session.log(MEND, planIn(session))).toMatchObject({ kind: 'refused' });
    const [question] = session.view.questions;
    if (question?.kind !== 'half') throw new Error('no question about the half');
    return { workbook, session, posting: question.posting };
  }

  test('is finished without writing anything twice', async () => {
    const { session, posting } = await halved();
    expect(leftOf(session, 'P-1')).toBe(200);
    expect(await session.finish(posting)).toMatchObject({ kind: 'done', sentence: 'Written again: 2 rows.' });
    expect(['T-1', 'T-2', 'P-1', 'R-1'].map((lot) => leftOf(session, lot))).toEqual([0, 9, 170, 4.4]);
    expect(session.view.questions).toEqual([]);
  });

  test('or taken back', async () => {
    const { session, posting } = await halved();
    expect(await session.undo(posting)).toMatchObject({ kind: 'done' });
    expect(['T-1', 'T-2', 'P-1', 'R-1'].map((lot) => leftOf(session, lot))).toEqual([2, 10, 200, 5]);
    expect(session.view.questions).toEqual([]);
  });

  test('is found by a later session, and finished there', async () => {
    const { workbook } = await halved();
    // The log's row was written without Drawn, as that comes last.
    const unmarked = withChanges(workbook.snapshot, [
      { kind: 'set', table: 'TreatmentLog', row: 0, column: 'Drawn', cell: { kind: 'blank' } },
    ]);
    const later = new MemoryWorkbook(unmarked);
    const session = new Session({
      workbook: later,
      today: () => today,
      random: randomFrom(8),
      copy: NO_COPY,
      wait: () => Promise.resolve(),
      starter: () => Promise.resolve([]),
    });
    await session.start();
    const [question] = session.view.questions;
    if (question?.kind !== 'half') throw new Error('the half is not found');
    await session.finish(question.posting);
    expect(['T-1', 'T-2', 'P-1', 'R-1'].map((lot) => leftOf(session, lot))).toEqual([0, 9, 170, 4.4]);
    expect(session.view.questions).toEqual([]);
  });
});

describe('two sessions at once', () => {
  test('a lot that both drew on is overdrawn, and the one who hears of it may take another', async () => {
    const { workbook, session } = await opened();
    await logged(session, { ...MEND, extent: decimal('4') });
    workbook.change(
      'other',
      withChanges(workbook.snapshot, [
        {
          kind: 'append',
          table: 'Movements',
          rows: [
            {
              Movement: { kind: 'text', text: 'M-other' },
              Date: { kind: 'day', day: today },
              Kind: { kind: 'text', text: 'Use' },
              Lot: { kind: 'text', text: 'T-1' },
              Quantity: { kind: 'number', number: 1 },
              Unit: { kind: 'text', text: 'sheet' },
              Posting: { kind: 'text', text: 'P-other' },
            },
          ],
        },
      ]),
    );
    await settled(session);
    const [question] = session.view.questions;
    if (question?.kind !== 'clash') throw new Error('the clash is not seen');
    expect(question.lot.name).toBe('T-1');
    await session.redraw(question.entry);
    expect([leftOf(session, 'T-1'), leftOf(session, 'T-2')]).toEqual([0, 9]);
    expect(session.view.questions).toEqual([]);
  });
});

test('quotes, and writes a quote down', async () => {
  const { workbook, session } = await opened();
  const quoted = session.quote('26-015');
  if (!quoted.ok) throw new Error(quoted.message);
  expect(quoted.frozen).toBeNull();
  expect(await session.freeze('26-015')).toMatchObject({ kind: 'done' });
  const totals = workbook.snapshot.tables
    .find(({ name }) => name === 'Quotes')
    ?.columns.find(({ header }) => header === 'Total')?.values;
  expect(totals).toEqual([Number(quoted.quote.total) / 100]);
});

test('goes to the cell of a notice', async () => {
  const { workbook, session } = await opened({ ...STUDIO, TreatmentLog: [{ Job: '26-014' }] });
  const [notice] = booksIn(session).notices;
  if (notice?.cell == null) throw new Error('no cell');
  expect(notice.address).toBe('TreatmentLog!B2');
  await session.goTo(notice.cell);
  expect(workbook.shown).toEqual([{ tab: 'TreatmentLog', row: 2, column: 2 }]);
});

describe('bringing tables up to date', () => {
  test('is offered where they lack what version 2 brought, and done in one go', async () => {
    const { workbook, session } = await opened({
      ...STUDIO,
      Places: { rows: STUDIO.Places, without: ['Dark', 'Walking order'] },
    });
    expect(booksIn(session).upgradable).toEqual({
      columns: [{ table: 'Places', columns: ['Dark', 'Walking order'] }],
      tables: ['Counts'],
    });
    const before = leftOf(session, 'T-1');
    expect(await session.upgradeTables()).toMatchObject({
      kind: 'done',
      sentence: 'Brought up to date: 2 columns added, and a new table.',
    });
    expect(booksIn(session)).toMatchObject({ upgradable: null, settings: { tablesVersion: 2 } });
    expect(workbook.tabs.map(({ name }) => name)).toEqual(['Counts']);
    expect(workbook.writes).toHaveLength(1);
    expect(leftOf(session, 'T-1')).toBe(before);
    expect(await session.upgradeTables()).toMatchObject({ kind: 'refused' });
  });

  test('begins anew where somebody changes the tables meanwhile, and says why it is refused', async () => {
    const { workbook, session } = await opened({
      ...STUDIO,
      Places: { rows: STUDIO.Places, without: ['Dark', 'Walking order'] },
      Counts: [],
    });
    workbook.beforeWrite = () => {
      workbook.snapshot = withChanges(workbook.snapshot, [
        { kind: 'add column', table: 'Places', column: { header: 'Dark', width: 9, format: 'text' } },
      ]);
    };
    expect(await session.upgradeTables()).toMatchObject({
      kind: 'done',
      sentence: 'Brought up to date: 1 column added.',
    });
    const { session: other, workbook: book } = await opened({ ...STUDIO, Counts: [] });
    book.nextWrites.push(() => ({ kind: 'failed', message: 'Something stands there.' }));
    expect(await other.upgradeTables()).toEqual({ kind: 'refused', message: 'Something stands there.' });
    expect(booksIn(other).settings.tablesVersion).toBe(1);
  });
});
