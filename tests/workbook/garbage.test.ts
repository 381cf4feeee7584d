import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { drawEntries } from '../../src/actions/draw-entries.ts';
import { planJson } from '../../src/command-line/verbs/plan-json.ts';
import { planProblemOf } from '../../src/core/planning/build-problem.ts';
import { outlookEnd } from '../../src/core/planning/outlook.ts';
import { solvePlan } from '../../src/core/planning/solve-plan.ts';
import type { Row } from '../../src/core/records.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import { columnLetters } from '../../src/workbook/address.ts';
import { RECORD_TABLES, SETTINGS_TABLE } from '../../src/workbook/known-tables.ts';
import { readWorkbook } from '../../src/workbook/read-workbook.ts';
import { randomFrom } from '../helpers/bench.ts';
import {
  columnsOf,
  dayOf,
  formula,
  type Literal,
  type LiteralCell,
  type LiteralRow,
  problem,
} from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';
import { xlsxOf } from '../helpers/xlsx.ts';

const RUNS = 150;
const PLANNING_RUNS = 60;
const STOCK = ['Tissue', 'Paste', 'Buffers', 'ReleasePaper', 'Housing', 'Sundries', 'OldStock'];
const TABLES = [...Object.values(RECORD_TABLES).map(({ name }) => name), ...STOCK];

/** Anything that may stand in a cell, rather often something that nearly fits. */
const cells: fc.Arbitrary<LiteralCell> = fc.oneof(
  fc.constant(null),
  fc.string({ unit: 'grapheme', maxLength: 12 }),
  fc.constantFrom(
    'yes',
    'g',
    'sheet',
    'Tissue',
    'Use',
    'Count',
    'T-1',
    'P-1',
    '26-014',
    'Mend tear',
    'part',
    '2026-04-01',
    ' ',
    '1e400',
    '-0',
  ),
  fc.double(),
  fc.integer({ min: -2, max: 60_000 }),
  fc.constantFrom(Number.MAX_VALUE, Number.MIN_VALUE, -0, 1e15, 2_958_466, 60, 1e-7),
  fc.boolean(),
  fc.constantFrom(problem('#N/A'), problem('=A1+1')),
  fc.double({ noNaN: true }).map((value): LiteralCell => ({ value, look: 'date' })),
  fc.double({ noNaN: true }).map((value): LiteralCell => ({ value, look: 'percent' })),
  fc.constantFrom(formula('g'), formula(3), formula('')),
);

/** The tables of the studio with some cells of some rows replaced, and rows of garbage behind. */
const spoilt: fc.Arbitrary<Literal> = fc
  .array(fc.tuple(fc.constantFrom(...TABLES), fc.nat(8), fc.nat(30), cells), { minLength: 1, maxLength: 30 })
  .map((changes) => {
    const literal: Record<string, LiteralRow[]> = Object.fromEntries(
      Object.entries(STUDIO).map(([name, rows]) => [name, [...rows]]),
    );
    for (const [table, row, place, cell] of changes) {
      const columns = columnsOf(table);
      const header = columns[place % columns.length]?.header ?? '';
      const rows = literal[table] ?? [];
      literal[table] = rows;
      const index = Math.min(row, rows.length);
      rows[index] = { ...rows[index], [header]: cell };
    }
    return literal;
  });

describe('whatever stands in the cells', () => {
  test('reading and checking never throw, and every figure can be written', () => {
    fc.assert(
      fc.property(spoilt, fc.constantFrom(1900 as const, 1904 as const), (literal, dateSystem) => {
        const answer = checkWorkbook(snapshotOf(literal, dateSystem), dayOf(TODAY));
        for (const { left, worth } of answer.stock.lots) {
          expect(Number.isFinite(left.valueOf())).toBe(true);
          expect(worth === null || typeof worth === 'bigint').toBe(true);
        }
        for (const { address, message } of answer.notices) {
          expect(address).toMatch(/![A-Z]+\d+$/);
          expect(message).not.toMatch(/undefined|\[object/);
        }
      }),
      { numRuns: RUNS },
    );
  });

  test('planning never throws, and every figure can be written', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(spoilt, (literal) => {
        const snapshot = snapshotOf(literal);
        const today = dayOf(TODAY);
        const { ledger } = booksOf(snapshot);
        const { stock } = checkWorkbook(snapshot, today);
        const planned = planProblemOf(ledger, stock, outlookEnd(ledger, today));
        const written = JSON.stringify(
          planJson(solvePlan(planned), ledger.studio.settings.currency, []),
          (key, value: unknown) => {
            if (typeof value === 'number') expect(value, key).toSatisfy(Number.isFinite);
            return value;
          },
        );
        expect(written).not.toMatch(/undefined|NaN|\[object/);
      }),
      { numRuns: PLANNING_RUNS },
    );
  });

  test('every filled row becomes a record, or a notice names a cell of it', () => {
    fc.assert(
      fc.property(spoilt, (literal) => {
        const snapshot = snapshotOf(literal);
        const { records, notices } = readWorkbook(snapshot);
        const read = new Set(
          Object.values(records).flatMap((rows: readonly Row[]) =>
            rows.map(({ place }) => `${place.table} ${place.row}`),
          ),
        );
        for (const [table, rows] of Object.entries(literal)) {
          if (table === SETTINGS_TABLE.name || !Array.isArray(rows)) continue;
          (rows as LiteralRow[]).forEach((row, index) => {
            const isFilled = Object.values(row).some(
              (cell) =>
                cell !== null &&
                (typeof cell !== 'object' || cell.formula !== true) &&
                !(typeof cell === 'string' && cell.trim() === ''),
            );
            if (!isFilled || read.has(`${table} ${index}`)) return;
            const named = notices.filter(({ at }) => at.place.table === table && at.place.row === index);
            expect(named.length).toBeGreaterThan(0);
            for (const { message, at } of named) {
              const place = columnsOf(table).findIndex(({ header }) => header === at.column);
              expect(
                message.startsWith(`${table}!${columnLetters(place + 1)}${index + 2} (${at.column}) holds `),
              ).toBe(true);
            }
          });
        }
      }),
      { numRuns: RUNS },
    );
  });

  test('drawing never throws; what it writes can be written, and drawing again writes nothing', () => {
    const withLog = spoilt.map((literal) => ({
      ...literal,
      TreatmentLog: [
        ...(literal['TreatmentLog'] as LiteralRow[]),
        { Date: '2026-04-02', Job: '26-014', Treatment: 'Mend tear', Extent: 3 },
      ],
    }));
    fc.assert(
      fc.property(withLog, fc.integer(), (literal, seed) => {
        const random = randomFrom(seed);
        const clean = withoutProblems(literal);
        const workbook = openXlsx(xlsxOf(clean));
        const first = drawEntries(workbook.snapshot(), dayOf(TODAY), random);
        if (!first.ok) return;
        workbook.apply(first.changes);
        const second = drawEntries(workbook.snapshot(), dayOf(TODAY), random);
        expect(second.ok && second.drawing.movements).toEqual([]);
        expect(second.ok && second.changes).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

/** The literal with plain values only, which a file made from it can hold. */
function withoutProblems(literal: Literal): Literal {
  const plain = (cell: LiteralCell): LiteralCell => {
    if (typeof cell === 'number') return Number.isFinite(cell) ? cell : null;
    if (cell === null || typeof cell !== 'object') return cell;
    if (cell.value !== null && typeof cell.value === 'object') return 'day' in cell.value ? cell : null;
    return plain(cell.value);
  };
  return Object.fromEntries(
    Object.entries(literal).map(([table, rows]) => [
      table,
      (rows as readonly LiteralRow[]).map((row) =>
        Object.fromEntries(Object.entries(row).map(([header, cell]) => [header, plain(cell)])),
      ),
    ]),
  );
}

describe('a workbook with nothing wrong in it', () => {
  const name = (letter: string) => fc.integer({ min: 1, max: 9999 }).map((number) => `${letter}-${number}`);
  const quantity = fc.integer({ min: 1, max: 10 ** 9 }).map((millionths) => millionths / 1000);
  const day = fc
    .integer({ min: 0, max: 800 })
    .map((later): LiteralCell => ({ value: 45_500 + later, look: 'date' }));
  const optional = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });
  const lots = fc.uniqueArray(
    fc.record({
      Lot: name('L'),
      Material: fc.constantFrom('Repair tissue 5', 'Wheat starch', ' wheat STARCH '),
      Received: day,
      Quantity: quantity,
      Unit: fc.constantFrom('sheet', 'g', 'kg', ' Sheets'),
      Cost: optional(quantity),
      'Use by': optional(day),
      State: optional(fc.constantFrom('Usable', 'set aside', 'DISCARDED')),
      'State since': optional(day),
      Place: optional(fc.constant('fridge')),
    }),
    { selector: ({ Lot }) => Lot, maxLength: 12 },
  );

  test('gives no notice that a cell can’t be read, and as many lots as it has rows', () => {
    fc.assert(
      fc.property(lots, fc.constantFrom(1900 as const, 1904 as const), (rows, dateSystem) => {
        const literal: Literal = { ...STUDIO, Tissue: rows };
        const { notices, records } = readWorkbook(snapshotOf(literal, dateSystem));
        expect(notices).toEqual([]);
        expect(records.lots).toHaveLength(rows.length + 3);
      }),
      { numRuns: RUNS },
    );
  });
});
