import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { WorkbookDescription } from '../../src/office-host/workbook-description.ts';
import type { Change } from '../../src/workbook/port.ts';
import { append, hostOver, number, readSnapshot, set, text, valuesOf } from './office-bench.ts';

const STUDIO: WorkbookDescription = {
  sheets: [
    { name: 'Log', tables: [{ name: 'Log', at: 'A1', columns: ['Entry'], rows: [['E-1']] }] },
    { name: 'Fresh', tables: [{ name: 'Fresh', at: 'A1', columns: ['Entry'] }] },
    {
      name: 'Moves',
      tables: [{ name: 'Moves', at: 'A1', columns: ['Entry'], rows: [['M-1']], totals: ['All'] }],
    },
    {
      name: 'Noted',
      tables: [{ name: 'Noted', at: 'A1', columns: ['Entry'], rows: [['N-1']] }],
      cells: { A4: [['a remark']] },
    },
    {
      name: 'Lots',
      tables: [
        {
          name: 'Lots',
          at: 'A1',
          columns: ['Lot', 'Left'],
          rows: [
            ['L-1', 100],
            ['L-2', 100],
          ],
        },
      ],
    },
  ],
};
const GROWING = ['Log', 'Fresh', 'Moves', 'Noted'];

interface Wish {
  readonly tables: readonly string[];
  readonly rows: number;
  readonly lots: readonly number[];
}
const wish: fc.Arbitrary<Wish> = fc.record({
  tables: fc.uniqueArray(fc.constantFrom(...GROWING), { minLength: 1, maxLength: 3 }),
  rows: fc.integer({ min: 1, max: 3 }),
  lots: fc.uniqueArray(fc.nat(1), { maxLength: 2 }),
});

const rowsOf = (who: string, { rows }: Wish): string[] =>
  Array.from({ length: rows }, (_, row) => `${who}${row}`);
const leftOf = { a: 11, b: 22 } as const;

const changesOf = (who: 'a' | 'b', given: Wish): Change[] => [
  ...given.tables.map((table) => append(table, ...rowsOf(who, given).map((each) => ({ Entry: text(each) })))),
  ...given.lots.map((row) => set('Lots', row, 'Left', number(leftOf[who]))),
];

describe('two add-ins that write at once', () => {
  it('lose nothing of each other, and what is said to be written stands whole', async () => {
    const kinds = new Set<string>();
    await fc.assert(
      fc.asyncProperty(
        wish,
        wish,
        fc.array(fc.constantFrom('a', 'b'), { minLength: 12, maxLength: 12 }),
        async (ofA, ofB, turns) => {
          const { host, open } = hostOver(STUDIO);
          const add = { a: open('a').live, b: open('b').live };
          const basis = await readSnapshot(add.a);
          host.deliveries.hold(['request']);
          const state = { writing: 2 };
          const end = (): void => {
            state.writing -= 1;
          };
          const writing = Promise.all([
            add.a.write(changesOf('a', ofA), basis).finally(end),
            add.b.write(changesOf('b', ofB), basis).finally(end),
          ]);
          for (let turn = 0; state.writing > 0; turn++) {
            await new Promise((resolve) => setTimeout(resolve, 1));
            const { pending } = host.deliveries;
            const next = pending.find(({ client }) => client === turns[turn % turns.length]) ?? pending[0];
            if (next !== undefined) host.deliveries.release(next.id);
          }
          host.deliveries.flow();
          const outcomes = await writing;
          const now = await readSnapshot(add.a);
          for (const [who, given, outcome] of [
            ['a', ofA, outcomes[0]],
            ['b', ofB, outcomes[1]],
          ] as const) {
            kinds.add(outcome.kind);
            expect(['written', 'stale']).toContain(outcome.kind);
            const isWritten = outcome.kind === 'written';
            for (const table of GROWING) {
              const own = valuesOf(now, table, 'Entry').filter((each) => String(each).startsWith(who));
              expect(own).toEqual(isWritten && given.tables.includes(table) ? rowsOf(who, given) : []);
            }
            const left = valuesOf(now, 'Lots', 'Left');
            for (const row of [0, 1]) {
              expect(left[row] === leftOf[who]).toBe(isWritten && given.lots.includes(row));
            }
          }
          for (const [table, first] of [
            ['Log', 'E-1'],
            ['Moves', 'M-1'],
            ['Noted', 'N-1'],
          ] as const) {
            expect(valuesOf(now, table, 'Entry')[0]).toBe(first);
          }
          expect(JSON.stringify(host.workbook.sheets[3]?.rows)).toContain('a remark');
          expect(JSON.stringify(host.workbook.sheets[2]?.rows.at(-1))).toContain('All');
        },
      ),
      { numRuns: 30 },
    );
    expect(kinds).toEqual(new Set(['written', 'stale']));
  }, 120_000);
});
