import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { policyPlugin } from '../../src/build/policy-plugin.ts';
import { QUIET_FLAGS } from './helpers/chromium.ts';
import type { SolverPage } from './solver-page/solver-page.ts';

/** An address that only the test answers. */
const SITE = 'https://studio.example/';
const KINDS: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.wasm': 'application/wasm',
};
const folder = mkdtempSync(join(tmpdir(), 'jarleaf-solver-'));

let browser: Browser | undefined;

beforeAll(async () => {
  await build({
    configFile: false,
    logLevel: 'error',
    root: join(import.meta.dirname, 'solver-page'),
    base: './',
    plugins: [policyPlugin()],
    worker: { format: 'es' },
    build: { outDir: folder, modulePreload: { polyfill: false }, assetsInlineLimit: 0 },
  });
  browser = await chromium.launch({ executablePath: inject('chromium'), args: [...QUIET_FLAGS] });
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true });
});

describe('in a worker, under the policy of the pane', () => {
  test('the solver loads from beside the scripts when it is asked for, and solves', async () => {
    if (browser === undefined) throw new Error('the browser did not start');
    const page = await browser.newPage();
    const asked: string[] = [];
    await page.route('**/*', (route) => {
      const address = route.request().url();
      asked.push(address);
      const file = join(folder, address.slice(SITE.length));
      if (!address.startsWith(SITE) || !existsSync(file)) return route.abort();
      return route.fulfill({ contentType: KINDS[extname(file)] ?? 'text/plain', body: readFileSync(file) });
    });
    await page.goto(`${SITE}index.html`);
    await page.waitForFunction(() => 'solverPage' in globalThis);
    expect(asked.filter((address) => /highs/.test(address))).toEqual([]);

    const solution = await page.evaluate(async () => {
      const { solverPage } = globalThis as unknown as { solverPage: SolverPage };
      const found = await solverPage.inWorker();
      return found.kind === 'optimal' ? { ...found, values: [...found.values] } : found;
    });
    expect(solution).toEqual({
      kind: 'optimal',
      cost: 4.5,
      values: [
        ['fours', 3],
        ['sevens', 0],
      ],
    });
    expect(asked.every((address) => address.startsWith(SITE))).toBe(true);
    expect(asked.filter((address) => address.endsWith('.wasm'))).toHaveLength(1);
    await page.close();
  });
});
