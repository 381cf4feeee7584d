import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { extname, join } from 'node:path';
import { type Browser, chromium, type Page, type Route } from 'playwright-core';
import { afterAll, expect, inject } from 'vitest';
import { checkWorkbook, type WorkbookCheck } from '../../../src/actions/check-workbook.ts';
import { PROJECT_PATHS } from '../../../src/build/project-paths.ts';
import type { CellScalar } from '../../../src/office-host/workbook-description.ts';
import type { WorkbookSnapshot } from '../../../src/workbook/port.ts';
import type { BenchInPage, BenchOptions, TableInPage } from './bench-in-page.ts';
import { QUIET_FLAGS } from './chromium.ts';
import { Keyboard } from './keyboard.ts';
import { SAMPLE_DAY, sampleBytes, snapshotOfTables, TODAY } from './studio-in-node.ts';

/** An address that only the tests answer, and where the page fetches the client library from. */
const SITE = 'https://studio.example/';
const LIBRARY = 'https://appsforoffice.microsoft.com/lib/1/hosted/';
const LIBRARY_FOLDER = join(PROJECT_PATHS.root, 'node_modules/@microsoft/office-js/dist');
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const KINDS: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.png': 'image/png',
  '.wasm': 'application/wasm',
};

export interface PaneOptions {
  /** A file of sample-workbooks; null for a workbook without any table. */
  readonly workbook?: string | Uint8Array | null;
  readonly width?: number;
  readonly height?: number;
  readonly look?: 'light' | 'dark' | 'forced colours';
  readonly today?: string;
  /** Holds back the answers of the program from the beginning, as one that is slow does. */
  readonly held?: boolean;
}

/** Where the page under test keeps the program around it. */
export type PaneWindow = Window & { readonly bench: BenchInPage };

let browser: Promise<Browser> | null = null;

afterAll(async () => {
  await (await browser)?.close();
  browser = null;
});

/** The built pane in a browser, beside a workbook in our own program, through the real client library. */
export class PanePage {
  readonly page: Page;
  readonly keys: Keyboard;
  /** What the page asked of other hosts than its own. */
  readonly foreign: string[] = [];
  readonly failures: string[] = [];

  private constructor(page: Page) {
    this.page = page;
    this.keys = new Keyboard(page);
  }

  static async open(options: PaneOptions = {}): Promise<PanePage> {
    browser ??= chromium.launch({ executablePath: inject('chromium'), args: [...QUIET_FLAGS] });
    const {
      workbook = 'demo-studio.xlsx',
      width = 320,
      height = 900,
      look = 'light',
      today = SAMPLE_DAY,
      held = false,
    } = options;
    const context = await (await browser).newContext({
      viewport: { width, height },
      reducedMotion: 'reduce',
      colorScheme: look === 'dark' ? 'dark' : 'light',
      forcedColors: look === 'forced colours' ? 'active' : 'none',
      timezoneId: 'Europe/Berlin',
      locale: 'en-GB',
    });
    const page = await context.newPage();
    const pane = new PanePage(page);
    page.on('pageerror', ({ message }) => pane.failures.push(message));
    page.on('console', (message) => {
      if (message.type() === 'error') pane.failures.push(message.text());
    });
    await page.route('**/*', (route) => pane.answer(route));
    await page.clock.setFixedTime(new Date(`${today}T10:00:00+01:00`));
    const start: BenchOptions = { file: base64Of(workbook), dark: look === 'dark', held };
    await page.addInitScript(`${inject('benchScript')}\nbenchInPage.start(${JSON.stringify(start)});`);
    await page.goto(`${SITE}index.html`);
    return pane;
  }

  private answer(route: Route): Promise<void> {
    const address = route.request().url().split(/[?#]/)[0] ?? '';
    if (address.startsWith(SITE)) return answerFrom(route, inject('paneFolder'), address.slice(SITE.length));
    this.foreign.push(address);
    if (address.startsWith(LIBRARY)) return answerFrom(route, LIBRARY_FOLDER, address.slice(LIBRARY.length));
    return route.abort();
  }

  /** What a range of the workbook holds. */
  cells(tab: string, address: string): Promise<CellScalar[][]> {
    return this.page.evaluate(
      ([name, range]) => (window as unknown as PaneWindow).bench.values(name, range),
      [tab, address] as const,
    );
  }

  /** The rows of a table by header, blank cells left out. */
  async rows(table: string): Promise<Record<string, CellScalar>[]> {
    const found = (await this.#tables()).find(({ name }) => name === table);
    if (found === undefined) throw new Error(`There is no table ${table}`);
    return found.body.map((row) =>
      Object.fromEntries(
        found.headers.flatMap((header, place) => {
          const value = row[place]?.value ?? '';
          return value === '' ? [] : [[header, value]];
        }),
      ),
    );
  }

  /** What the tables of the workbook hold now, read past the pane. */
  async snapshot(): Promise<WorkbookSnapshot> {
    return snapshotOfTables(await this.#tables());
  }

  /** What the core says of the workbook as it is now, worked out here. */
  async check(): Promise<WorkbookCheck> {
    return checkWorkbook(await this.snapshot(), TODAY);
  }

  /** Asks the workbook for something. */
  async ask<Answer>(question: (bench: BenchInPage) => Answer): Promise<Awaited<Answer>> {
    return await (await this.#bench()).evaluate(question as (bench: BenchInPage) => Awaited<Answer>);
  }

  /** Does something in the workbook, as the person at this machine or as the colleague elsewhere. */
  async act<Given>(deed: (bench: BenchInPage, given: Given) => unknown, given: Given): Promise<void> {
    await (await this.#bench()).evaluate(deed as (bench: BenchInPage, given: unknown) => unknown, given);
  }

  async #tables(): Promise<TableInPage[]> {
    // As one text: thousands of small objects take seconds to cross from the page.
    return JSON.parse(await this.ask((bench) => JSON.stringify(bench.tables()))) as TableInPage[];
  }

  #bench() {
    return this.page.evaluateHandle(() => (window as unknown as PaneWindow).bench);
  }

  /** Waits until the status line says something; what was asked for is over then. */
  async says(text: string | RegExp): Promise<void> {
    await this.page.locator('.status-text').filter({ hasText: text }).waitFor();
  }

  /** The notices as they are shown, from the top, each with how pressing it is in words. */
  notices(): Promise<string[]> {
    return this.page.locator('.panel .notice > p').allTextContents();
  }

  /** The cells of a table's rows as they are shown, by its caption. */
  async shownTable(caption: string | RegExp): Promise<string[][]> {
    const rows = await this.page.getByRole('table', { name: caption }).locator('tbody tr').all();
    return Promise.all(rows.map((row) => row.locator('th, td').allInnerTexts()));
  }

  /** What axe finds against WCAG 2.2 AA, with the element that each is about. Contrast is judged in a tall window. */
  async violations(): Promise<string[]> {
    const size = this.page.viewportSize();
    await this.page.setViewportSize({ width: size?.width ?? 320, height: 2400 });
    if (!(await this.page.evaluate(() => 'axe' in window))) await this.page.evaluate(AXE);
    const found = await this.page.evaluate(async () => {
      const { axe } = window as unknown as { axe: typeof import('axe-core') };
      const { violations } = await axe.run(document, {
        resultTypes: ['violations'],
        runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      });
      return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
    });
    if (size !== null) await this.page.setViewportSize(size);
    return found;
  }

  /** Whether anything runs over the right edge of the window. */
  isTooWide(): Promise<boolean> {
    return this.page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth);
  }

  /** Closes the page, and insists that nothing went wrong in it and nothing left the machine but for the script. */
  async close(): Promise<void> {
    const { refused, violations } = await this.page.evaluate(() => {
      const { bench } = window as unknown as PaneWindow;
      return { refused: [...bench.refused], violations: [...bench.violations] };
    });
    await this.page.context().close();
    expect({ failures: this.failures, refused, violations }).toEqual({
      failures: [],
      refused: [],
      violations: [],
    });
    expect(this.foreign.filter((address) => !address.startsWith(LIBRARY))).toEqual([]);
  }
}

function base64Of(workbook: string | Uint8Array | null): string | null {
  if (workbook === null) return null;
  const bytes = typeof workbook === 'string' ? sampleBytes(workbook) : workbook;
  return Buffer.from(bytes).toString('base64');
}

function answerFrom(route: Route, folder: string, path: string): Promise<void> {
  const file = join(folder, path);
  if (!existsSync(file)) return route.fulfill({ status: 404 });
  return route.fulfill({ contentType: KINDS[extname(file)] ?? 'text/plain', body: readFileSync(file) });
}
