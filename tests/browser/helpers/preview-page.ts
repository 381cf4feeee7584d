import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { BrowserContext, Frame, Page } from 'playwright-core';
import { expect } from 'vitest';
import { increasingRandom } from './increasing-random.ts';
import { Keyboard } from './keyboard.ts';
import { type Mode, previewSite } from './preview-site.ts';
import { type StockRow, stockIn } from './stock-words.ts';

export interface PreviewOptions {
  readonly width?: number;
  readonly height?: number;
  readonly look?: 'light' | 'dark' | 'forced colours';
  /** Makes identifiers that sort in the order in which they were made. */
  readonly increasing?: boolean;
}

/** The day of the machine, in whose calendar files without a day of their own are opened. */
export const MACHINE_DAY = '2026-11-25';
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What has the focus in each part of the page when F6 comes to it. */
const PARTS = {
  bar: '.toolbar button',
  line: '.line-field',
  cells: '.grid',
  tabs: '.tab[aria-selected=true]',
  pane: '.pane-frame',
} as const;

/** Puts numbers that are known in place of the browser's random ones, where one is asked for. */
const INCREASING = `{
  const next = (${increasingRandom.toString()})();
  const others = crypto.getRandomValues.bind(crypto);
  crypto.getRandomValues = (numbers) =>
    numbers instanceof Uint32Array && numbers.length === 1 ? numbers.fill(next() * 2 ** 32) : others(numbers);
}`;

/** The preview in a browser that has no pickers of files: files come by the chooser and go by download. */
export class PreviewPage {
  readonly page: Page;
  /** The keys in the grid and the bars around it. */
  readonly keys: Keyboard;
  readonly #address: string;
  readonly #foreign: string[] = [];
  readonly #failures: string[] = [];

  private constructor(page: Page, address: string) {
    this.page = page;
    this.keys = new Keyboard(page);
    this.#address = address;
  }

  static async open(mode: Mode, options: PreviewOptions = {}): Promise<PreviewPage> {
    const { width = 1280, height = 800, look = 'light', increasing = false } = options;
    const { address, browser } = await previewSite(mode);
    const context = await browser.newContext({
      viewport: { width, height },
      reducedMotion: 'reduce',
      colorScheme: look === 'dark' ? 'dark' : 'light',
      forcedColors: look === 'forced colours' ? 'active' : 'none',
      timezoneId: 'Europe/Berlin',
      locale: 'en-GB',
    });
    const page = await context.newPage();
    const preview = new PreviewPage(page, address);
    preview.#watch(context);
    await page.clock.setFixedTime(new Date(`${MACHINE_DAY}T10:00:00+01:00`));
    await page.addInitScript(() => {
      Reflect.deleteProperty(window, 'showOpenFilePicker');
      Reflect.deleteProperty(window, 'showSaveFilePicker');
    });
    if (increasing) await page.addInitScript(INCREASING);
    await page.goto(address);
    await preview.paneIsOpen();
    return preview;
  }

  #watch(context: BrowserContext): void {
    context.on('request', (request) => {
      const { protocol, href } = new URL(request.url());
      if (/^https?:|^wss?:/.test(protocol) && !href.startsWith(this.#address)) this.#foreign.push(href);
    });
    context.on('weberror', (error) => this.#failures.push(error.error().message));
    context.on('console', (message) => {
      if (message.type() === 'error') this.#failures.push(message.text());
    });
  }

  /** The pane's frame as it is now; another workbook brings another one. */
  get frame(): Frame {
    const frame = this.page.frames().find((each) => each.url().startsWith(`${this.#address}pane/`));
    if (frame === undefined) throw new Error('The page has no pane');
    return frame;
  }

  /** The keys in the pane, when the focus is there. */
  get paneKeys(): Keyboard {
    const { frame } = this;
    return new Keyboard({
      keyboard: this.page.keyboard,
      getByRole: frame.getByRole.bind(frame),
      evaluate: frame.evaluate.bind(frame),
      waitForTimeout: frame.waitForTimeout.bind(frame),
    });
  }

  /** Waits until the pane has read the workbook. */
  async paneIsOpen(): Promise<void> {
    await this.page
      .frameLocator('.pane-frame')
      .locator('[role=tab][aria-selected=true]')
      .waitFor({ state: 'attached' });
  }

  /** Goes with F6 to a part of the page; to the bar at its first button. */
  async goTo(part: keyof typeof PARTS): Promise<void> {
    const isThere = () =>
      this.page.evaluate(
        (selector) => document.querySelector(selector) === document.activeElement,
        PARTS[part],
      );
    for (let pressed = 0; pressed < 8; pressed += 1) {
      if (await isThere()) return;
      await this.page.keyboard.press(pressed === 0 && part === 'bar' ? 'F6' : 'Shift+F6');
    }
    throw new Error(`F6 does not lead to the part ${part}; the focus is on ${await this.keys.focused()}`);
  }

  /** Goes to the cells of a tab, and to one of them. */
  async goToCell(tab: string, row: number, column: number): Promise<void> {
    await this.goTo('tabs');
    const tabs = await this.page.getByRole('tab').allInnerTexts();
    const wanted = tabs.indexOf(tab);
    if (wanted < 0) throw new Error(`There is no tab ${tab} among ${tabs.join(', ')}`);
    const fromEnd = tabs.length - 1 - wanted;
    await this.keys.press(
      ...(wanted <= fromEnd
        ? ['Home', ...steps(wanted, 'ArrowRight', '')]
        : ['End', ...steps(fromEnd, 'ArrowLeft', '')]),
    );
    await this.goTo('cells');
    await this.keys.press('Control+Home');
    const { lastRow, lastColumn } = await this.#lastCell();
    if (row > lastRow / 2) {
      await this.keys.press('Control+End');
      await this.keys.press(...steps(row - lastRow, 'ArrowDown', 'ArrowUp'));
      await this.keys.press(...steps(column - lastColumn, 'ArrowRight', 'ArrowLeft'));
    } else {
      await this.keys.press(...steps(row - 1, 'ArrowDown', 'ArrowUp'));
      await this.keys.press(...steps(column - 1, 'ArrowRight', 'ArrowLeft'));
    }
  }

  async #lastCell(): Promise<{ readonly lastRow: number; readonly lastColumn: number }> {
    await this.keys.press('Control+End');
    const last = await this.activeCell();
    await this.keys.press('Control+Home');
    return { lastRow: last.row, lastColumn: last.column };
  }

  /** Where the active cell of the grid is, counted from 1. */
  async activeCell(): Promise<{ readonly row: number; readonly column: number }> {
    const id = await this.page.locator('.grid').getAttribute('aria-activedescendant');
    const [, row, column] = /^cell-(\d+)-(\d+)$/.exec(id ?? '') ?? [];
    return { row: Number(row), column: Number(column) };
  }

  /** What the active cell shows. */
  async activeText(): Promise<string> {
    return (await this.page.locator('.cell-active').textContent()) ?? '';
  }

  /** Types into cells from the active one to the right, as a person does: the value, then Tab. */
  async typeAcross(...values: readonly string[]): Promise<void> {
    for (const value of values) {
      if (value !== '') await this.page.keyboard.type(value);
      await this.keys.press('Tab');
    }
  }

  /** Puts text on the clipboard's place and tells the grid of it, as the browser does at Ctrl and V. */
  async paste(text: string): Promise<void> {
    await this.page.evaluate((pasted) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', pasted);
      document.activeElement?.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
      );
    }, text);
  }

  /** Saves by keyboard; gives what the browser downloads. */
  async save(): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
    await this.goTo('bar');
    const downloaded = this.page.waitForEvent('download').catch(async (error: unknown) => {
      const said = (await this.page.locator('.status').allTextContents()).join(' | ');
      throw new Error(`Nothing was saved. The page says: ${said}. Focus: ${await this.keys.focused()}`, {
        cause: error,
      });
    });
    await this.keys.activate({ role: 'button', name: 'Save' });
    const download = await downloaded;
    return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
  }

  /** Opens a file by keyboard with the browser's chooser. */
  async openFile(name: string, bytes: Uint8Array, { losing = false } = {}): Promise<void> {
    await this.goTo('bar');
    const asked = this.page.waitForEvent('filechooser');
    await this.keys.activate({ role: 'button', name: 'Open…' });
    if (losing) await this.keys.activate({ role: 'button', name: 'Open another file' });
    await (await asked).setFiles({ name, mimeType: '', buffer: Buffer.from(bytes) });
  }

  /** Waits until the line below the grid says something. */
  async says(text: string | RegExp): Promise<void> {
    await this.page.locator('.status-news').filter({ hasText: text }).waitFor();
  }

  /** Waits until the pane's status line says something; what was asked for is over then. */
  async paneSays(text: string | RegExp): Promise<void> {
    await this.frame.locator('.status-text').filter({ hasText: text }).waitFor({ state: 'attached' });
  }

  /** The stock as the pane lists it; its section is open. */
  stock(): Promise<StockRow[]> {
    return stockIn(this.frame);
  }

  /** What axe finds against WCAG 2.2 AA in page and pane, with the element that each is about. */
  async violations(): Promise<string[]> {
    for (const frame of [this.page.mainFrame(), this.frame]) {
      if (await frame.evaluate(() => !('axe' in window))) await frame.evaluate(AXE);
    }
    return this.page.evaluate(async (runOnly) => {
      const { axe } = window as unknown as { axe: typeof import('axe-core') };
      const { violations } = await axe.run(document, { runOnly, resultTypes: ['violations'] });
      return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
    }, RULES);
  }

  /** Closes the page, and insists that nothing went wrong in it and nothing was asked of any other address. */
  async close(): Promise<void> {
    await this.page.context().close();
    expect({ failures: this.#failures, foreign: this.#foreign }).toEqual({ failures: [], foreign: [] });
  }
}

function steps(count: number, forward: string, backward: string): string[] {
  return Array.from({ length: Math.abs(count) }, () => (count < 0 ? backward : forward));
}
