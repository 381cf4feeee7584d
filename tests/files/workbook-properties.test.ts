import * as fc from 'fast-check';
import { readXlsx } from 'hucre';
import { describe, expect, it } from 'vitest';
import type { Day } from '../../src/core/day.ts';
import { createXlsx } from '../../src/files/new-xlsx.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { CellWrite, Change, TableSnapshot, WorkbookSnapshot } from '../../src/workbook/port.ts';
import { changedParts, type FixtureOptions, fixture, numberCell, SOME_STYLES, textCell } from './fixture.ts';
import { checkFile } from './well-formed.ts';

const HEADERS = ['Lot', 'Quantity', 'Day', 'Twice'];

const cell: fc.Arbitrary<CellWrite> = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 12 }).map((text): CellWrite => ({ kind: 'text', text })),
  fc
    .constantFrom('=1', '_x000D_', ' ', '\r\n', ']]>', '007')
    .map((text): CellWrite => ({ kind: 'text', text })),
  fc
    .double({ noNaN: true, noDefaultInfinity: true })
    .map((number): CellWrite => ({ kind: 'number', number })),
  fc.integer({ min: -20_000, max: 60_000 }).map((day): CellWrite => ({ kind: 'day', day: day as Day })),
  fc.constant<CellWrite>({ kind: 'blank' }),
);
const row = fc.dictionary(fc.constantFrom(...HEADERS), cell, { maxKeys: 4 });
const table = fc.constantFrom('T', 'U', 'V');
const change: fc.Arbitrary<Change> = fc.oneof(
  fc.record({ kind: fc.constant('append' as const), table, rows: fc.array(row, { maxLength: 4 }) }),
  fc.record({
    kind: fc.constant('set' as const),
    table,
    row: fc.nat(3),
    column: fc.constantFrom(...HEADERS),
    cell,
  }),
);

/** Three tables: one above another on one tab, the upper with totals; one alone, as other programs write it. */
function workbook(strings: boolean, shared: boolean, date1904: boolean): FixtureOptions {
  const formulas = { Twice: 'Q[[#This Row],[Quantity]]*2' };
  const formula = (ref: string, index: number): string => {
    if (!shared) return `<c r="${ref}"><f>${ref.replace('D', 'B')}*2</f><v>1</v></c>`;
    const [head] = index === 0 ? [`ref="D2:D3">B2*2</f>`] : ['/>'];
    return `<c r="${ref}"><f t="shared" si="0" ${head}</c>`;
  };
  const body = (first: number): string =>
    [0, 1]
      .map((index) => {
        const r = first + index;
        return `<row r="${r}" spans="1:4">${textCell(`A${r}`, `L${r}`, 3)}${numberCell(`B${r}`, r)}${numberCell(`C${r}`, 46_000 + r, 2)}${formula(`D${r}`, index)}</row>`;
      })
      .join('');
  return {
    sheets: [
      {
        name: 'Two tables',
        before: '<dimension ref="A1:D9"/>',
        rows: `<row r="1"/>${body(2)}<row r="4"><c r="B4"><f>SUBTOTAL(109,T[Quantity])</f><v>5</v></c></row><row r="6">${textCell('A6', 'Lot')}</row>${body(
          7,
        )
          .replaceAll('t="shared"', '')
          .replaceAll(/ si="0" (ref="D2:D3")?/g, '')}`,
        after: '<mergeCells count="1"><mergeCell ref="A12:B13"/></mergeCells>',
        tables: [
          { name: 'T', ref: 'A1:D4', columns: HEADERS, totalsRow: true, formulas },
          { name: 'U', ref: 'A6:D8', columns: HEADERS },
        ],
      },
      {
        name: 'Alone',
        rows: '<row r="1"/><row><c><v>1</v></c><c/><c><v>3</v></c></row><row/>',
        tables: [{ name: 'V', ref: 'A1:D4', columns: HEADERS, formulas }],
      },
      { name: 'Plain', rows: `<row r="1"><c r="A1"><f>'Two tables'!A$7</f><v>1</v></c></row>` },
    ],
    styles: SOME_STYLES,
    date1904,
    calculationChain: true,
    parts: { 'customXml/item1.xml': '<a b = "1"   />', 'xl/media/image1.png': 'not really' },
    ...(strings ? { strings: ['Lot', '<r><t>Rich</t></r>'] } : {}),
  };
}

const shape = (each: TableSnapshot) => ({
  ...each,
  columns: each.columns.map((column) => ({
    ...column,
    looks: column.values.map((value, index) => (value === null ? '' : column.look(index))),
    formulas: column.values.map((_, index) => column.hasFormula(index)),
  })),
});

function plain(snapshot: WorkbookSnapshot): unknown {
  return JSON.parse(JSON.stringify(snapshot.tables.map(shape)));
}

const writes = (each: { Lot: string; Quantity: number }): Record<string, CellWrite> => ({
  Lot: { kind: 'text', text: each.Lot },
  Quantity: { kind: 'number', number: each.Quantity },
});

describe('any changes to any workbook', () => {
  it('are found again, in a sound file, everything else untouched', () => {
    fc.assert(
      fc.property(
        fc.tuple(fc.boolean(), fc.boolean(), fc.boolean()),
        fc.array(fc.array(change, { maxLength: 4 }), { maxLength: 4 }),
        ([strings, shared, date1904], calls) => {
          const before = fixture(workbook(strings, shared, date1904));
          const opened = openXlsx(before);
          for (const changes of calls) {
            const rows = new Map(opened.snapshot().tables.map((each) => [each.name, each.rowCount]));
            opened.apply(
              changes.filter((each) => each.kind !== 'set' || each.row < (rows.get(each.table) ?? 0)),
            );
          }
          const after = opened.save();
          checkFile(after);
          expect(plain(openXlsx(after).snapshot())).toEqual(plain(opened.snapshot()));
          expect(opened.save()).toBe(after);
          const mayChange =
            /^xl\/(?:worksheets\/sheet\d|tables\/table\d|styles|workbook|_rels\/workbook|calcChain|sharedStrings)|Content_Types/;
          expect(changedParts(before, after).filter((name) => !mayChange.test(name))).toEqual([]);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('are seen by another reader of such files', async () => {
    const text = fc.string({ minLength: 1, maxLength: 8 }).filter((each) => !each.includes('_x'));
    const rows = fc.array(fc.record({ Lot: text, Quantity: fc.integer() }), { minLength: 1, maxLength: 6 });
    await fc.assert(
      fc.asyncProperty(rows, rows, async (first, second) => {
        const columns = [
          { header: 'Lot', width: 10, format: 'text' as const },
          { header: 'Quantity', width: 10, format: 'number' as const },
        ];
        const totals = { label: 'Total', sums: ['Quantity'] };
        const opened = openXlsx(
          createXlsx({ tabs: [{ name: 'Lots', table: { name: 'T', columns, rows: [], totals } }] }),
        );
        opened.apply([{ kind: 'append', table: 'T', rows: first.map(writes) }]);
        opened.apply([{ kind: 'append', table: 'T', rows: second.map(writes) }]);
        const read = await readXlsx(opened.save());
        const sheet = read.sheets[0];
        const all = [...first, ...second];
        expect(sheet?.tables?.[0]?.range).toBe(`A1:B${all.length + 2}`);
        expect(sheet?.rows.slice(1, all.length + 1)).toEqual(all.map((each) => [each.Lot, each.Quantity]));
        expect(sheet?.rows[all.length + 1]?.[0]).toBe('Total');
      }),
      { numRuns: 60 },
    );
  });
});
