import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { createContext, Script } from 'node:vm';
import { describe, expect, test } from 'vitest';
import {
  createContainer,
  DARK_THEME,
  LIGHT_THEME,
  type OfficeContainer,
} from '../../src/office-host/container.ts';
import {
  createMemoryWorkbook,
  createOfficeHost,
  DEFAULT_REQUIREMENT_SETS,
} from '../../src/office-host/office-host.ts';
import { STUDIO } from './bench.ts';

const DIST = join(
  dirname(createRequire(import.meta.url).resolve('@microsoft/office-js/package.json')),
  'dist',
);
const FROM = 'https://appsforoffice.microsoft.com/lib/1/hosted/';

interface Page {
  readonly Office: typeof Office;
  readonly Excel: typeof Excel;
  readonly CustomFunctions: { associate: (id: string, run: (...args: never[]) => unknown) => void };
}

/**
 * A page with as much of a document as the real, unmodified office.js uses to load the rest of the library: script
 * elements, which are run from the package instead of Microsoft's address.
 */
function page(container: OfficeContainer): { readonly page: Page; readonly loaded: string[] } {
  const loaded: string[] = [];
  const nothing = (): void => undefined;
  const run = (file: string): void => {
    loaded.push(file);
    new Script(readFileSync(join(DIST, file), 'utf8'), { filename: file }).runInContext(context);
  };
  const append = (element: { src?: string; onload?: () => void; onreadystatechange?: () => void }): void => {
    const { src } = element;
    if (src === undefined) return;
    setTimeout(() => {
      run(src.replace(FROM, '').split('?')[0] ?? '');
      element.onload?.();
    }, 0);
  };
  const head = { appendChild: append, insertBefore: append };
  const own = { src: `${FROM}office.js`, getAttribute: () => null };
  const context = createContext({
    Promise,
    Error,
    JSON,
    URL,
    performance,
    console,
    setTimeout,
    clearTimeout,
    setInterval,
    clearInterval,
    name: '',
    navigator: { userAgent: 'Node' },
    location: {
      protocol: 'https:',
      search: '',
      hash: '',
      href: 'https://localhost/',
      origin: 'https://localhost',
    },
    addEventListener: nothing,
    history: {},
    document: {
      readyState: 'complete',
      URL: 'https://localhost/',
      head,
      currentScript: own,
      getElementById: () => null,
      createElement: () => ({ setAttribute: nothing }),
      getElementsByTagName: (tag: string) => (tag === 'script' ? [own] : tag === 'head' ? [head] : []),
      addEventListener: nothing,
    },
    localStorage: undefined,
    sessionStorage: undefined,
  });
  new Script('var window = this, self = this, top = this, parent = this;').runInContext(context);
  container.install(context);
  run('office.js');
  return { page: context as unknown as Page, loaded };
}

describe('the container in which office.js itself loads', () => {
  test('Office.onReady, sets, theme, languages, settings, and the workbook behind it', async () => {
    const host = createOfficeHost(createMemoryWorkbook(STUDIO));
    const { bridge } = host.connect('a');
    const container = createContainer({
      bridge,
      requirementSets: host.requirementSets,
      theme: DARK_THEME,
      locale: 'en-US',
      dataLocale: 'de-DE',
      settings: { kept: '"yes"' },
    });
    const { page: window, loaded } = page(container);
    expect(await window.Office.onReady()).toMatchObject({ host: 'Excel', platform: 'PC' });
    expect(loaded).toContain('excel-win32-16.01.js');
    const { context } = window.Office;
    expect(context.officeTheme).toMatchObject(DARK_THEME);
    expect([context.displayLanguage, context.contentLanguage]).toEqual(['en-US', 'de-DE']);
    expect(context.requirements.isSetSupported('ExcelApi', '1.17')).toBe(true);
    expect(context.requirements.isSetSupported('ExcelApi', '1.18')).toBe(false);
    expect(context.document.settings.get('kept')).toBe('yes');
    context.document.settings.set('more', { shelf: 2 });
    const status = await new Promise((resolve) => {
      context.document.settings.saveAsync((result) => {
        resolve(result.status);
      });
    });
    expect([status, Object.fromEntries(container.settings)]).toEqual([
      'succeeded',
      { kept: '"yes"', more: '{"shelf":2}' },
    ]);
    const values = await window.Excel.run(async (request) => {
      const body = request.workbook.tables.getItem('Lots').getDataBodyRange().load('values');
      await request.sync();
      return body.values;
    });
    expect(values).toHaveLength(2);
    window.CustomFunctions.associate('ADD', (one: number, other: number) => one + other);
    expect(await host.callFunction('a', 'ADD', [1, 2]).first).toEqual({ kind: 'value', value: 3 });
  });

  test('the document as a file, in slices; at most two copies; a new workbook out of one', async () => {
    const opened: string[] = [];
    const host = createOfficeHost(createMemoryWorkbook(STUDIO), {
      openWorkbook: (base64) => {
        opened.push(base64);
      },
    });
    const { bridge } = host.connect();
    const bytes = Uint8Array.from({ length: 300 }, (_, index) => index % 256);
    const container = createContainer({
      bridge,
      requirementSets: host.requirementSets,
      documentName: 'C:\\Studio\\Paper stock.xlsx',
      documentFile: () => bytes,
    });
    const { page: window } = page(container);
    await window.Office.onReady();
    const { document, requirements } = window.Office.context;
    expect(requirements.isSetSupported('CompressedFile')).toBe(true);
    expect(document.url).toBe('C:\\Studio\\Paper stock.xlsx');
    const ask = <T>(call: (callback: (result: Office.AsyncResult<T>) => void) => void) =>
      new Promise<Office.AsyncResult<T>>((resolve) => {
        call(resolve);
      });
    const { Compressed, Text } = window.Office.FileType;
    const copy = () =>
      ask<Office.File>((done) => {
        document.getFileAsync(Compressed, { sliceSize: 128 }, done);
      });
    const { value: file } = await copy();
    expect([file.size, file.sliceCount]).toEqual([300, 3]);
    const slices: number[][] = [];
    for (let index = 0; index < file.sliceCount; index += 1) {
      const { value } = await ask<Office.Slice>((done) => {
        file.getSliceAsync(index, done);
      });
      expect([value.index, value.size]).toEqual([index, index === 2 ? 44 : 128]);
      slices.push([...(value.data as number[])]);
    }
    expect(slices.flat()).toEqual([...bytes]);
    expect((await copy()).status).toBe('succeeded');
    expect((await copy()).error.code).toBe(11_000);
    const closed = await ask<void>((done) => {
      file.closeAsync(done);
    });
    expect([closed.status, (await copy()).status]).toEqual(['succeeded', 'succeeded']);
    const text = await ask<Office.File>((done) => {
      document.getFileAsync(Text, done);
    });
    expect([text.status, text.error.code]).toEqual(['failed', 1009]);
    await window.Excel.createWorkbook('UEsDBA==');
    expect(opened).toEqual(['UEsDBA==']);
  });

  test('another theme; a document to be read only; what is not modelled is refused and kept', async () => {
    const host = createOfficeHost(createMemoryWorkbook(STUDIO));
    const { bridge } = host.connect();
    const container = createContainer({ bridge, requirementSets: DEFAULT_REQUIREMENT_SETS, readOnly: true });
    container.setTheme(DARK_THEME);
    container.setTheme(LIGHT_THEME);
    const { page: window } = page(container);
    await window.Office.onReady();
    const { context } = window.Office;
    expect(context.officeTheme).toMatchObject(LIGHT_THEME);
    expect(context.document.mode).toBe('readOnly');
    const status = await new Promise((resolve) => {
      context.document.getSelectedDataAsync(window.Office.CoercionType.Text, (result) => {
        resolve(result.status);
      });
    });
    expect([status, container.refused]).toEqual(['failed', [64]]);
  });
});
