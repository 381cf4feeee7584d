import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readXlsx } from 'hucre';
import { onTestFinished } from 'vitest';
import type { DateSystem } from '../../src/core/serial-date.ts';
import { type ColumnBlueprint, createXlsx } from '../../src/files/new-xlsx.ts';
import type { CellWrite } from '../../src/workbook/port.ts';
import {
  columnsOf,
  headersOf,
  type Literal,
  type LiteralCell,
  type LiteralTable,
  storedValue,
  tableOf,
} from './literal.ts';

/** The bytes of a real workbook file with the tables of a literal, each on a tab of its own. */
export function xlsxOf(literal: Literal, dateSystem: DateSystem = 1900): Uint8Array {
  return createXlsx({
    dateSystem,
    tabs: Object.entries(literal).map(([name, each]) => {
      const table = tableOf(each);
      const headers = headersOf(name, table);
      return {
        name: table.tab ?? name,
        table: {
          name,
          columns: headers.map((header) => columnBlueprint(name, header, table)),
          rows: table.rows.map((row) => headers.map((header) => cellWrite(row[header]))),
        },
      };
    }),
  });
}

function columnBlueprint(name: string, header: string, table: LiteralTable): ColumnBlueprint {
  const preparation = columnsOf(name).find((column) => column.header === header)?.preparation ?? 'text';
  const isPercent = table.rows.some((row) => {
    const cell = row[header];
    return cell !== null && typeof cell === 'object' && cell.look === 'percent';
  });
  const own = table.formulas?.[header];
  return {
    header,
    width: 12,
    format: isPercent ? 'percent' : preparation,
    ...(own === undefined ? {} : { formula: own }),
  };
}

function cellWrite(cell: LiteralCell | undefined): CellWrite | null {
  if (cell !== null && typeof cell === 'object' && cell.value !== null && typeof cell.value === 'object') {
    if ('day' in cell.value) return { kind: 'day', day: cell.value.day };
    throw new Error('a file made from a literal holds no errors');
  }
  const value = storedValue(cell, 1900);
  if (value === null) return null;
  return typeof value === 'number'
    ? { kind: 'number', number: value }
    : { kind: 'text', text: String(value) };
}

/** A folder for the files of one test, removed when it ends. */
export async function folderForTest(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'jarleaf-test-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

/** A file with the tables of a literal, in a folder of its own. */
export async function fileOf(literal: Literal, name = 'bench.xlsx'): Promise<string> {
  const path = join(await folderForTest(), name);
  await writeFile(path, xlsxOf(literal));
  return path;
}

/** The rows of a tab by header, as an independent reader finds them: the first row holds the headers. */
export async function rowsByHeader(bytes: Uint8Array, tab: string): Promise<Record<string, unknown>[]> {
  const { sheets } = await readXlsx(bytes);
  const [headers = [], ...rows] = sheets.find(({ name }) => name === tab)?.rows ?? [];
  return rows.map((row) =>
    Object.fromEntries(headers.map((header, place) => [String(header), row[place] ?? null])),
  );
}
