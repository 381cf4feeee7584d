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
import { addRibbon, type Ribbon } from './ribbon.ts';

/** What a page under test starts with. */
export interface BenchOptions {
  /** The workbook file, in base64; none: a workbook with one empty tab. */
  readonly file: string | null;
  readonly dark: boolean;
  /** Whether the program's answers are held back from the beginning. */
  readonly held: boolean;
}

/** The program around the page under test, for the test to act as the person and the colleague. */
export interface BenchInPage {
  readonly host: OfficeHost;
  readonly ribbon: Ribbon;
  /** What a range of a tab holds. */
  readonly values: (tab: string, address: string) => CellScalar[][];
  /** Every table as it stands: what a reader of the workbook is told. */
  readonly tables: () => TableInPage[];
  /** How many requests the page has sent so far. */
  readonly requests: () => number;
  /** What the script asked of the program that the host doesn't know. */
  readonly refused: readonly number[];
  /** What the page's security policy stopped. */
  readonly violations: string[];
}

type BenchWindow = Window & { bench?: BenchInPage };

/** A table of the workbook: its body by rows. */
export interface TableInPage {
  readonly name: string;
  readonly tab: string;
  /** Counted from 1, as people count. */
  readonly firstRow: number;
  readonly firstColumn: number;
  readonly headers: readonly string[];
  readonly body: readonly (readonly CellInPage[])[];
}

export interface CellInPage {
  readonly value: CellScalar;
  readonly format: string;
  readonly hasFormula: boolean;
}

function tablesIn({ workbook }: OfficeHost): TableInPage[] {
  return workbook.tables.map(({ name, sheet, row, column, columns, bodyRows }) => ({
    name,
    tab: sheet.name,
    firstRow: row + 2,
    firstColumn: column + 1,
    headers: columns.map((each) => each.name),
    body: Array.from({ length: bodyRows }, (_, down) =>
      columns.map((__, right) => {
        const { value, numberFormat, formula } = cellAt(sheet, row + 1 + down, column + right);
        return { value, format: numberFormat, hasFormula: formula !== undefined };
      }),
    ),
  }));
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
export function start({ file, dark, held }: BenchOptions): void {
  const description =
    file === null
      ? { sheets: [{ name: 'Tab 1' }] }
      : describeWorkbook(openXlsx(Uint8Array.from(atob(file), (letter) => letter.charCodeAt(0))));
  const host = createOfficeHost(createMemoryWorkbook(description));
  if (held) host.deliveries.hold(['response']);
  // A colleague who has the workbook open too: what she does comes from elsewhere.
  host.connect('colleague');
  const { bridge, statistics } = host.connect('pane');
  const container = createContainer({
    bridge,
    requirementSets: host.requirementSets,
    theme: dark ? DARK_THEME : LIGHT_THEME,
  });
  container.install(window);
  const ribbon = addRibbon(window.external as unknown as Parameters<typeof addRibbon>[0]);
  const violations: string[] = [];
  addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI }) => {
    violations.push(`${effectiveDirective} ${blockedURI}`);
  });
  (window as BenchWindow).bench = {
    host,
    ribbon,
    refused: container.refused,
    violations,
    values: (tab, address) => valuesIn(host, tab, address),
    tables: () => tablesIn(host),
    requests: () => statistics.requests,
  };
}
