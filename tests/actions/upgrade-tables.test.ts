import { readFileSync } from 'node:fs';
import { readXlsx } from 'hucre';
import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { isUpToDate, tablesUpgrade, upgradableOf } from '../../src/actions/upgrade-tables.ts';
import { checkJson } from '../../src/command-line/answers-json.ts';
import { openXlsx, type XlsxWorkbook } from '../../src/files/xlsx-workbook.ts';
import { starterBlueprint } from '../../src/samples/starter-blueprint.ts';
import { changedParts, unpack } from '../files/fixture.ts';
import { checkFile } from '../files/well-formed.ts';
import { dayOf, type Literal } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO } from '../helpers/studio.ts';
import { broughtTo, versionOne } from '../helpers/version-one.ts';

const STARTER = starterBlueprint().tabs;
const today = dayOf('2026-11-24');

function upgraded(bytes: Uint8Array): { readonly workbook: XlsxWorkbook; readonly bytes: Uint8Array } {
  const workbook = openXlsx(bytes);
  const upgrade = tablesUpgrade(workbook.snapshot(), STARTER);
  if (!upgrade.ok) throw new Error(upgrade.message);
  workbook.apply(upgrade.changes);
  workbook.addTabs(upgrade.tabs);
  const after = workbook.save();
  checkFile(after);
  return { workbook: openXlsx(after), bytes: after };
}

function refusal(literal: Literal): string {
  const answer = tablesUpgrade(snapshotOf(literal), STARTER);
  return answer.ok ? 'not refused' : answer.message;
}

function sampleBytes(name: string): Uint8Array {
  return readFileSync(new URL(`../../sample-workbooks/${name}`, import.meta.url));
}

describe.each(['starter.xlsx', 'demo-studio.xlsx', 'damaged.xlsx'])(
  '%s, with tables of version 1',
  (name) => {
    const before = versionOne(sampleBytes(name));
    const { workbook, bytes: after } = upgraded(before);
    const old = openXlsx(before);

    test('has every column and table of version 2 afterwards, and says so', () => {
      expect(isUpToDate(old.snapshot())).toBe(false);
      const { tables } = booksOf(workbook.snapshot()).reading;
      expect(tables.size).toBeGreaterThan(20);
      for (const { snapshot } of tables.values()) {
        const headers = snapshot.columns.map(({ header }) => header);
        expect(headers).toEqual(expect.arrayContaining([...broughtTo(snapshot.name)]));
      }
      expect(isUpToDate(workbook.snapshot())).toBe(true);
      expect(upgradableOf(workbook.snapshot())).toBeNull();
      expect(workbook.snapshot().tables.map((table) => table.name)).toContain('Counts');
    });

    test('keeps every cell, formula and column that was there, and every figure', () => {
      const tables = new Map(workbook.snapshot().tables.map((table) => [table.name, table]));
      for (const table of old.snapshot().tables) {
        const now = tables.get(table.name);
        expect(now).toMatchObject({ tab: table.tab, firstRow: table.firstRow, rowCount: table.rowCount });
        table.columns.forEach((column, index) => {
          const other = now?.columns[index];
          expect(other?.header).toBe(column.header);
          expect(other?.calculated).toBe(column.calculated);
          column.values.forEach((value, row) => {
            const isVersion = table.name === 'Settings' && table.columns[0]?.values[row] === 'tables version';
            expect(other?.values[row]).toEqual(isVersion && column.header === 'Value' ? 2 : value);
            expect(other?.hasFormula(row)).toBe(column.hasFormula(row));
            expect(other?.look(row)).toBe(column.look(row));
          });
        });
      }
      const figures = (each: XlsxWorkbook) => checkJson(checkWorkbook(each.snapshot(), today));
      expect(figures(workbook)).toEqual(figures(old));
    });

    test('an independent reader finds the cells of the tabs where they were', async () => {
      const [first, second] = [await readXlsx(before), await readXlsx(after)];
      for (const sheet of first.sheets) {
        const other = second.sheets.find((each) => each.name === sheet.name);
        sheet.rows.forEach((row, place) => {
          const now = (other?.rows[place] ?? []).slice(0, row.length);
          const [setting] = row;
          if (sheet.name === 'Settings' && setting === 'tables version') return;
          expect(now).toEqual(row);
        });
      }
    });

    test('only the parts of the tables that got columns, and what all share, have changed', () => {
      const tables = Object.entries(unpack(before)).flatMap(([part, text]) => {
        const table = /^xl\/tables\/table(\d+)\.xml$/.test(part)
          ? / name="([^"]*)"/.exec(text)?.[1]
          : undefined;
        return table === undefined ? [] : [{ part, table }];
      });
      const untouched = tables.filter(({ table }) => broughtTo(table).length === 0).map(({ part }) => part);
      expect(changedParts(before, after).filter((part) => untouched.includes(part))).toEqual([]);
      expect(untouched.length).toBeGreaterThan(10);
    });
  },
);

describe('what tables lack', () => {
  test('is told table by table, a stock table of a name of its own too', () => {
    const snapshot = snapshotOf({
      ...STUDIO,
      Cellar: {
        rows: STUDIO.Paste,
        headers: ['Lot', 'Material', 'Received', 'Quantity', 'Unit', 'notes', 'STATESINCE'],
      },
    });
    const lacking = upgradableOf(snapshot);
    expect(lacking?.tables).toEqual(['Counts']);
    expect(lacking?.columns).toEqual([
      {
        table: 'Cellar',
        columns: broughtTo('Paste').filter((header) => !['State since', 'Notes'].includes(header)),
      },
    ]);
  });

  test('is nothing where the tables are newer, or of this version, whatever columns a person has taken out', () => {
    for (const version of [2, 3]) {
      const Settings = [{ Setting: 'tables version', Value: version }];
      expect(upgradableOf(snapshotOf({ ...STUDIO, Settings }))).toBeNull();
    }
    expect(refusal({ ...STUDIO, Settings: [{ Setting: 'tables version', Value: 2 }] })).toMatch(
      /version 2 already/,
    );
    expect(refusal({ ...STUDIO, Settings: [{ Setting: 'tables version', Value: 3 }] })).toMatch(
      /newer program/,
    );
    expect(refusal({ Mine: { rows: [{ A: 1 }], headers: ['A'] } })).toMatch(/^None of Jarleaf's tables/);
  });

  test('the version gets a row of its own where Settings has none', () => {
    const Settings = [{ Setting: 'currency', Value: 'EUR' }];
    const answer = tablesUpgrade(snapshotOf({ ...STUDIO, Settings }), STARTER);
    if (!answer.ok) throw new Error(answer.message);
    expect(answer.changes.at(-1)).toEqual({
      kind: 'append',
      table: 'Settings',
      rows: [{ Setting: { kind: 'text', text: 'tables version' }, Value: { kind: 'number', number: 2 } }],
    });
    const { Settings: _, ...without } = STUDIO;
    expect(tablesUpgrade(snapshotOf(without), STARTER)).toMatchObject({ ok: true, version: null });
  });

  test('another table right of one that needs columns is named, and nothing is done', () => {
    const beside: Literal = {
      ...STUDIO,
      Places: { rows: STUDIO.Places, without: ['Walking order'], tab: 'Set-up' },
      Notes: { rows: [{ A: 'x' }], headers: ['A'], tab: 'Set-up', firstColumn: 4 },
    };
    expect(refusal(beside)).toMatch(/^Right of the table Places, on the tab Set-up, stands the table Notes/);
  });
});
