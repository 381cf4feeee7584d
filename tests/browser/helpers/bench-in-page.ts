import { openXlsx } from '../../../src/files/xlsx-workbook.ts';
import { parseArea } from '../../../src/office-host/cell-area.ts';
import { createContainer, DARK_THEME, LIGHT_THEME } from '../../../src/office-host/container.ts';
import { cellAt, findSheet } from '../../../src/office-host/memory-workbook.ts';
import {
  createMemoryWorkbook,
  createOfficeHost,
  type OfficeHost,
} from '../../../src/office-host/office-host.ts';
import type { CellScalar } from '../../../src/office-host/workbook-description.ts';
import { describeWorkbook } from '../../../src/preview/office/describe-workbook.ts';

/** What a page under test starts with. */
export interface BenchOptions {
  /** The workbook file, in base64; none: a workbook with one empty tab. */
  readonly file: string | null;
  readonly dark: boolean;
}

/** The program around the page under test, for the test to act as the person and the colleague. */
export interface BenchInPage {
  readonly host: OfficeHost;
  /** What a range of a tab holds. */
  readonly values: (tab: string, address: string) => CellScalar[][];
  /** The body of a table, row by row; its headers come first. */
  readonly table: (name: string) => CellScalar[][];
  /** What the script asked of the program that the host doesn't know. */
  readonly refused: readonly number[];
  /** What the page's security policy stopped. */
  readonly violations: string[];
}

type BenchWindow = Window & { bench?: BenchInPage };

/** A table as rows of shown values: its headers, then its body. */
function tableIn(host: OfficeHost, name: string): CellScalar[][] {
  const table = host.workbook.tables.find((each) => each.name === name);
  if (table === undefined) throw new Error(`There is no table ${name}`);
  const { row, column } = table;
  return Array.from({ length: table.bodyRows + 1 }, (_, down) =>
    table.columns.map((__, right) => cellAt(table.sheet, row + down, column + right).value),
  );
}

function valuesIn({ workbook }: OfficeHost, tab: string, address: string): CellScalar[][] {
  const sheet = findSheet(workbook, tab);
  if (sheet === undefined) throw new Error(`There is no tab ${tab}`);
  const { row, column, rows, columns } = parseArea(address);
  return Array.from({ length: rows }, (_, down) =>
    Array.from({ length: columns }, (__, right) => cellAt(sheet, row + down, column + right).value),
  );
}

/** Runs before anything else in the page: a spreadsheet program of our own, which the real client library finds. */
export function start({ file, dark }: BenchOptions): void {
  const description =
    file === null
      ? { sheets: [{ name: 'Tab 1' }] }
      : describeWorkbook(openXlsx(Uint8Array.from(atob(file), (letter) => letter.charCodeAt(0))));
  const host = createOfficeHost(createMemoryWorkbook(description));
  // A colleague who has the workbook open too: what she does comes from elsewhere.
  host.connect('colleague');
  const { bridge } = host.connect('pane');
  const container = createContainer({
    bridge,
    requirementSets: host.requirementSets,
    theme: dark ? DARK_THEME : LIGHT_THEME,
  });
  container.install(window);
  const violations: string[] = [];
  addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI }) => {
    violations.push(`${effectiveDirective} ${blockedURI}`);
  });
  (window as BenchWindow).bench = {
    host,
    refused: container.refused,
    violations,
    values: (tab, address) => valuesIn(host, tab, address),
    table: (name) => tableIn(host, name),
  };
}
