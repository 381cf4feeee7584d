import { describe, expect, it } from 'vitest';
import type { ActionInfo, OfficeHost } from '../../src/office-host/office-host.ts';
import type { WorkbookDescription } from '../../src/office-host/workbook-description.ts';
import type { WriteOutcome } from '../../src/workbook/live-workbook.ts';
import type { Change, WorkbookSnapshot } from '../../src/workbook/port.ts';
import {
  append,
  number,
  opened,
  plain,
  readSnapshot,
  set,
  tableNamed,
  text,
  valuesOf,
  writtenSnapshot,
} from './office-bench.ts';

/** A log, movements with a totals row, lots with something below them, and a table with a blank row. */
const STUDIO: WorkbookDescription = {
  sheets: [
    {
      name: 'Log',
      tables: [
        {
          name: 'Log',
          at: 'A1',
          columns: ['Entry', 'Extent'],
          rows: [
            ['E-1', 1],
            ['E-2', 2],
          ],
        },
      ],
    },
    {
      name: 'Moves',
      tables: [
        {
          name: 'Moves',
          at: 'A1',
          columns: ['Lot', 'Quantity', { name: 'Twice', formula: '=[@Quantity]*2' }],
          rows: [['L-1', 5]],
          totals: ['All', { formula: '=SUBTOTAL(109,[Quantity])', value: 5 }],
        },
      ],
    },
    {
      name: 'Lots',
      tables: [
        {
          name: 'Lots',
          at: 'B2',
          columns: ['Lot', 'Left', 'Note'],
          rows: [
            ['L-1', 100, { value: '007', numberFormat: 'General' }],
            ['L-2', 50, 'second'],
          ],
        },
      ],
      cells: { B6: [['a remark of hers']] },
    },
    { name: 'Fresh', tables: [{ name: 'Fresh', at: 'A1', columns: ['Name', 'Value'] }] },
  ],
};

/** One posting: an entry, two movements, a lot, a row for the blank table, and cells of lots and entries. */
const POSTING: readonly Change[] = [
  append('Log', { Entry: text('E-3'), Extent: number(3) }),
  append('Moves', { Lot: text('L-1'), Quantity: number(7) }, { Lot: text('L-2'), Quantity: number(8) }),
  append('Lots', { Lot: text('L-3'), Left: number(9) }, { Lot: text('L-4'), Left: number(10) }),
  append('Fresh', { Name: text('first'), Value: number(1) }),
  set('Lots', 0, 'Left', number(93)),
  set('Lots', 0, 'Note', text('=drawn')),
  set('Log', 0, 'Entry', text('E-1b')),
];

/** Lets a client's requests through one by one, doing something before the one with a number (from 1). */
async function meanwhile<T>(host: OfficeHost, before: number, act: () => void, work: Promise<T>): Promise<T> {
  const state = { done: false, seen: 0 };
  const finished = work.finally(() => {
    state.done = true;
  });
  while (!state.done) {
    await new Promise((resolve) => setTimeout(resolve, 1));
    const next = host.deliveries.pending[0];
    if (next === undefined) continue;
    state.seen += 1;
    if (state.seen === before) act();
    host.deliveries.release(next.id);
  }
  host.deliveries.flow();
  return finished;
}

async function writeWhile(
  act: (host: OfficeHost) => void,
  changes: readonly Change[] = POSTING,
  before = 2,
): Promise<{ outcome: WriteOutcome; basis: WorkbookSnapshot; now: WorkbookSnapshot; host: OfficeHost }> {
  const { host, open, live } = opened(STUDIO);
  open('b');
  const basis = await readSnapshot(live);
  host.deliveries.hold(['request']);
  const outcome = await meanwhile(host, before, () => act(host), live.write(changes, basis));
  return { outcome, basis, now: await readSnapshot(live), host };
}

describe('what somebody else does while a posting is written', () => {
  it('before it is looked at makes it stale, and nothing is written', async () => {
    const slips: readonly ((host: OfficeHost) => void)[] = [
      (host) => host.person('b').type('Log!A4', 'E-9'),
      (host) => host.person('b').type('Lots!C3', 77),
      (host) => host.person('b').deleteTableRows('Log', 1),
      (host) => host.person('b').insertRows('1:2'),
      (host) => host.person('b').renameTable('Moves', 'Movements'),
      (host) => host.person('b').renameSheet('Log', 'Diary'),
      (host) => host.person('b').type('Fresh!A2', 'theirs'),
      (host) => host.person('b').type('Lots!C3', '=2*50'),
    ];
    for (const slip of slips) {
      const { outcome, now } = await writeWhile(slip, POSTING, 1);
      expect(outcome.kind).toBe('stale');
      if (outcome.kind === 'stale') expect(plain(outcome.snapshot)).toEqual(plain(now));
      expect(JSON.stringify(plain(now))).not.toMatch(/E-3|E-1b|L-3|"first"|=drawn/);
    }
  });

  it('to a cell that is set: theirs stays, ours is taken back', async () => {
    const { outcome, now, basis } = await writeWhile((host) => host.person('b').type('Lots!C3', 77));
    expect(outcome.kind).toBe('stale');
    expect(valuesOf(now, 'Lots', 'Left')).toEqual([77, 50]);
    expect(valuesOf(now, 'Lots', 'Note')).toEqual(['007', 'second']);
    for (const name of ['Log', 'Moves', 'Fresh']) {
      expect(plain({ ...now, tables: [tableNamed(now, name)] })).toEqual(
        plain({ ...basis, tables: [tableNamed(basis, name)] }),
      );
    }
  });

  it('to another cell of a row that is set, a formula too: theirs stays', async () => {
    const { outcome, now } = await writeWhile((host) => host.person('b').type('Lots!D3', '=1+1'));
    expect(outcome.kind).toBe('stale');
    expect(tableNamed(now, 'Lots').columns[2]?.hasFormula(0)).toBe(true);
    expect(valuesOf(now, 'Lots', 'Left')).toEqual([100, 50]);
  });

  it('to the blank row of a fresh table: theirs stays, ours is taken back', async () => {
    const { outcome, now } = await writeWhile((host) => host.person('b').paste('Fresh!A2', [['theirs', 4]]));
    expect(outcome.kind).toBe('stale');
    expect(valuesOf(now, 'Fresh', 'Name')).toEqual(['theirs']);
    expect(valuesOf(now, 'Fresh', 'Value')).toEqual([4]);
    expect(valuesOf(now, 'Log', 'Entry')).toEqual(['E-1', 'E-2']);
  });

  it('a row appended: theirs stays, ours goes below it', async () => {
    const { outcome, now } = await writeWhile((host) => host.person('b').paste('Log!A4', [['theirs', 9]]));
    expect(outcome.kind).toBe('written');
    expect(valuesOf(now, 'Log', 'Entry')).toEqual(['E-1b', 'E-2', 'theirs', 'E-3']);
    expect(plain(writtenSnapshot(outcome))).toEqual(plain(now));
  });

  it('something typed where the rows were to go, without becoming part of the table: it stays', async () => {
    const { outcome, now } = await writeWhile(
      (host) => {
        host.person('b').type('Log!A5', 'far below');
        host.person('b').type('Log!B4', 5);
      },
      [append('Log', { Entry: text('E-3') }, { Entry: text('E-4') }, { Entry: text('E-5') })],
    );
    const all = JSON.stringify(plain(now));
    expect(['stale', 'written']).toContain(outcome.kind);
    expect(all).toContain('far below');
    expect(tableNamed(now, 'Log').columns[1]?.values).toContain(5);
  });

  it('a row appended that fills the room there was: what stands below it stays, outside the table', async () => {
    const { outcome, now, host } = await writeWhile(
      (elsewhere) => elsewhere.person('b').paste('Lots!B5', [['theirs', 1, null]]),
      [append('Lots', { Lot: text('L-3') })],
    );
    expect(outcome.kind).toBe('stale');
    expect(valuesOf(now, 'Lots', 'Lot')).toEqual(['L-1', 'L-2', 'theirs']);
    expect(tableNamed(now, 'Lots').below).toEqual(['a remark of hers', null, null]);
    expect(cellsOf(host).filter((each) => each.includes('a remark of hers'))).toEqual([
      'Lots 5 1 {"value":"a remark of hers","numberFormat":"General"}',
    ]);
  });

  it('rows taken out above the row that is set: no other row keeps our cells', async () => {
    const { outcome, now } = await writeWhile(
      (host) => host.person('b').deleteTableRows('Lots', 0),
      [set('Lots', 0, 'Left', number(93))],
    );
    expect(outcome.kind).toBe('stale');
    expect(valuesOf(now, 'Lots', 'Left')).toEqual([50]);
  });
});

describe('an action of the batch that fails', () => {
  it('at any place leaves nothing of the posting, and says so', async () => {
    const actions = await actionsOfPosting();
    const edits = actions.flatMap(({ edits: isEdit }, index) => (isEdit ? [index] : []));
    const kinds = edits.map((index) => `${actions[index]?.does} ${actions[index]?.name}`);
    for (const kind of ['set NumberFormat', 'set Values']) expect(kinds).toContain(kind);
    expect(kinds.filter((kind) => kind.startsWith('instantiate'))).toHaveLength(2);
    expect(edits.length).toBeGreaterThan(12);
    // All edits, and a part of what merely looks, the last of it too.
    const others = actions.flatMap((_, index) =>
      index % 6 === 0 || index === actions.length - 1 ? [index] : [],
    );
    for (const failing of new Set([...edits, ...others])) {
      const { host, live } = opened(STUDIO);
      const basis = await readSnapshot(live);
      const before = cellsOf(host);
      failAt(host, failing);
      const outcome = await live.write(POSTING, basis);
      host.setFailure(undefined);
      const now = await readSnapshot(live);
      if (outcome.kind === 'failed') {
        expect(outcome.message).toContain('It broke.');
        expect({ failing, cells: cellsOf(host) }).toEqual({ failing, cells: before });
        expect(plain(now)).toEqual(plain(basis));
        continue;
      }
      // Once the batch is through, what formulas give is read again, and the client lets go of what it held: all stands.
      expect({ failing, action: actions[failing], stands: stands(now) }).toMatchObject({ stands: true });
      expect(actions[failing]).toMatchObject({ edits: false });
      if (outcome.kind !== 'written') {
        expect(outcome).toMatchObject({
          kind: 'half',
          message: expect.stringMatching(/All of it was written.*It broke/),
        });
      }
    }
  }, 240_000);

  it('and taking back that fails too: half, saying what stands where', async () => {
    const { host, live } = opened(STUDIO);
    const basis = await readSnapshot(live);
    let edits = 0;
    host.setFailure(({ edits: isEdit }) =>
      isEdit && edits++ >= 4 ? { code: 'GeneralException', message: 'It broke.' } : undefined,
    );
    const outcome = await live.write(POSTING, basis);
    host.setFailure(undefined);
    expect(outcome.kind).toBe('half');
    if (outcome.kind !== 'half') return;
    expect(valuesOf(outcome.snapshot, 'Log', 'Entry')).toEqual(['E-1', 'E-2', 'E-3']);
    expect(plain(outcome.snapshot)).toEqual(plain(await readSnapshot(live)));
    expect(outcome.message).toMatch(/could not be taken back/);
  });
});

/** The actions of a posting, from the first on that changes the workbook. */
async function actionsOfPosting(): Promise<ActionInfo[]> {
  const { host, live } = opened(STUDIO);
  const basis = await readSnapshot(live);
  const actions: ActionInfo[] = [];
  host.setFailure((action) => {
    if (action.edits || actions.length > 0) actions.push(action);
    return undefined;
  });
  expect((await live.write(POSTING, basis)).kind).toBe('written');
  host.setFailure(undefined);
  expect(stands(await readSnapshot(live))).toBe(true);
  return actions;
}

/** Makes one action fail, counted like those of the posting. */
function failAt(host: OfficeHost, failing: number): void {
  let seen = -1;
  host.setFailure(({ edits }) => {
    if (edits || seen >= 0) seen += 1;
    return seen === failing ? { code: 'GeneralException', message: 'It broke.' } : undefined;
  });
}

/** Whether the whole posting stands. */
const stands = (now: WorkbookSnapshot): boolean =>
  JSON.stringify(
    ['Log Entry', 'Moves Lot', 'Lots Lot', 'Lots Left', 'Lots Note', 'Fresh Name'].map((each) => {
      const [table = '', column = ''] = each.split(' ');
      return valuesOf(now, table, column);
    }),
  ) ===
  JSON.stringify([
    ['E-1b', 'E-2', 'E-3'],
    ['L-1', 'L-1', 'L-2'],
    ['L-1', 'L-2', 'L-3', 'L-4'],
    [93, 50, 9, 10],
    ['=drawn', 'second', null, null],
    ['first'],
  ]);

/** Every cell that isn't blank and plain, and every table's extent, as the host holds them. */
function cellsOf({ workbook }: OfficeHost): string[] {
  return [
    ...workbook.sheets.flatMap(({ name, rows }) =>
      rows.flatMap((row, index) =>
        (row ?? []).flatMap((cell, column) =>
          cell === undefined || (cell.value === '' && cell.numberFormat === 'General')
            ? []
            : [`${name} ${index} ${column} ${JSON.stringify(cell)}`],
        ),
      ),
    ),
    ...workbook.tables.map(({ name, row, column, bodyRows }) => `${name} ${row} ${column} ${bodyRows}`),
  ];
}
