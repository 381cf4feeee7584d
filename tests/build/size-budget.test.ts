import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, type Rolldown } from 'vite';
import { expect, test } from 'vitest';
import { loadedFiles, weigh } from '../../src/build/size-budget.ts';

const AT_START = [
  { name: 'pane.js', gzip: 2048 },
  { name: 'pane.css', gzip: 512 },
];
const ON_DEMAND = [{ name: 'solver.wasm', gzip: 10_240 }];

test('what loads with the page is weighed together against the budget, the rest is only said', () => {
  expect(weigh(AT_START, ON_DEMAND, 2560)).toEqual({
    withinBudget: true,
    report: [
      'pane.js                    2.0 KB gzip',
      'pane.css                   0.5 KB gzip',
      'in all                     2.5 KB gzip',
      'budget                     2.5 KB gzip',
      'on demand: solver.wasm    10.0 KB gzip',
    ].join('\n'),
  });
  expect(weigh(AT_START, ON_DEMAND, 2559).withinBudget).toBe(false);
});

const PAGE: Readonly<Record<string, string>> = {
  'page.js': [
    "import './shared.js';",
    "import './start.css';",
    "globalThis.later = () => import('./later.js');",
    "globalThis.work = () => new Worker(new URL('./worker.js', import.meta.url), { type: 'module' });",
  ].join('\n'),
  'second-page.js': "import './shared.js';",
  'shared.js': "globalThis.shared = 'shared';",
  'start.css': 'body { color: black; }',
  'later.js': "import './shared.js'; import './later.css'; import './even-later.js'; globalThis.late = 1;",
  'even-later.js': 'globalThis.evenLater = 1;',
  'later.css': 'p { color: black; }',
  'worker.js': 'globalThis.worker = 1;',
};

test('with a page load its entry, what that imports and its style sheet; the rest when it is asked for', async () => {
  const root = mkdtempSync(join(tmpdir(), 'jarleaf-page-'));
  for (const [name, text] of Object.entries(PAGE)) writeFileSync(join(root, name), text);
  const output = await build({
    configFile: false,
    logLevel: 'silent',
    root,
    build: {
      write: false,
      rolldownOptions: { input: [join(root, 'page.js'), join(root, 'second-page.js')] },
    },
  });
  rmSync(root, { recursive: true });
  const [bundle] = [output].flat() as Rolldown.RolldownOutput[];
  const files = Object.fromEntries((bundle?.output ?? []).map((file) => [file.fileName, file]));
  const { atStart, onDemand } = loadedFiles(files);
  const plain = (names: readonly string[]) =>
    names.map((name) => name.replace(/^assets\/|-[\w-]{8}(?=\.)/g, '')).toSorted();
  expect(plain(atStart)).toEqual(['page.css', 'page.js', 'second-page.js', 'shared.js']);
  expect(plain(onDemand)).toEqual(['later.css', 'later.js', 'worker.js']);
});
