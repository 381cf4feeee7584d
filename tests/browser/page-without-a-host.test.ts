import { existsSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { type Browser, chromium, type Route } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { PROJECT_PATHS } from '../../src/build/project-paths.ts';
import { FUNCTION_NAMES } from '../../src/functions/evaluate-call.ts';
import { QUIET_FLAGS } from './helpers/chromium.ts';

/** An address that only the test answers, and where the client library is fetched from. */
const SITE = 'https://studio.example/';
const LIBRARY = 'https://appsforoffice.microsoft.com/lib/1/hosted/';
const LIBRARY_FILES = join(PROJECT_PATHS.root, 'node_modules/@microsoft/office-js/dist');
const KINDS: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.png': 'image/png',
};

/** What the page in the browser notes of its policy. */
type Watched = typeof globalThis & { violations: string[] };

let browser: Browser | undefined;

beforeAll(async () => {
  browser = await chromium.launch({ executablePath: inject('chromium'), args: [...QUIET_FLAGS] });
});
afterAll(() => browser?.close());

/** Answers a request with a file of a folder. */
async function answer(route: Route, base: string, path: string): Promise<void> {
  const file = join(base, path);
  if (!existsSync(file)) return route.fulfill({ status: 404 });
  return route.fulfill({ contentType: KINDS[extname(file)] ?? 'text/plain', body: readFileSync(file) });
}

test('under its policy the page runs with the real client library, and nothing else is asked', async () => {
  if (browser === undefined) throw new Error('the browser did not start');
  const page = await browser.newPage();
  const asked: string[] = [];
  const failures: string[] = [];
  page.on('pageerror', ({ message }) => failures.push(message));
  await page.route('**/*', async (route) => {
    const address = route.request().url().split(/[?#]/)[0] ?? '';
    asked.push(address);
    if (address.startsWith(LIBRARY)) return answer(route, LIBRARY_FILES, address.slice(LIBRARY.length));
    if (address.startsWith(SITE)) return answer(route, inject('paneFolder'), address.slice(SITE.length));
    return route.abort();
  });
  await page.addInitScript(() => {
    const watched = globalThis as Watched;
    watched.violations = [];
    addEventListener('securitypolicyviolation', ({ effectiveDirective, sourceFile, blockedURI }) => {
      watched.violations.push([effectiveDirective, sourceFile || blockedURI].join(' '));
    });
  });
  await page.goto(`${SITE}index.html`);
  await page.getByText('This page belongs beside a workbook').waitFor();
  await page.waitForFunction(() =>
    (globalThis as Watched).violations.some((each) => each.startsWith('frame')),
  );

  expect(failures).toEqual([]);
  expect(asked.filter((address) => !address.startsWith(SITE))).toEqual([
    `${LIBRARY}office.js`,
    `${LIBRARY}o15apptofilemappingtable.js`,
  ]);
  // The library's frame for telemetry, and how it hides that frame. Nothing of the page's own.
  expect(await page.evaluate(() => (globalThis as Watched).violations)).toEqual([
    `style-src-attr ${LIBRARY}o15apptofilemappingtable.js`,
    'frame-src https://telemetryservice.firstpartyapps.oaspapps.com',
  ]);
  const known = await page.evaluate(() => {
    const { _association: association } = CustomFunctions as unknown as {
      _association: { mappings: Record<string, unknown> };
    };
    return Object.keys(association.mappings);
  });
  expect(known).toEqual([...FUNCTION_NAMES]);
  await page.close();
});
