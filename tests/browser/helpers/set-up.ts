import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build, type Rolldown } from 'vite';
import type { TestProject } from 'vitest/node';
import { PROJECT_PATHS } from '../../../src/build/project-paths.ts';
import { findChromium } from './chromium.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** The path of the browser. */
    readonly chromium: string;
    /** The folder with the pane as it is built for a server. */
    readonly paneFolder: string;
    /** The script that makes a page one of our own spreadsheet program. */
    readonly benchScript: string;
  }
}

/**
 * Finds or installs the browser and builds what runs in it, once for all browser tests.
 * @returns takes the built pane away again
 */
export default async function setUp(project: TestProject): Promise<() => void> {
  project.provide('chromium', findChromium());
  const folders = join(PROJECT_PATHS.root, 'node_modules/.cache/browser-tests');
  mkdirSync(folders, { recursive: true });
  // A folder of its own for each run: another run at the same time would empty it.
  const paneFolder = mkdtempSync(join(folders, 'pane-'));
  await build({
    configFile: join(PROJECT_PATHS.root, 'vite.config.ts'),
    logLevel: 'error',
    build: { outDir: paneFolder },
  });
  project.provide('paneFolder', paneFolder);
  project.provide('benchScript', await benchScript());
  return () => rmSync(paneFolder, { recursive: true });
}

async function benchScript(): Promise<string> {
  const built = (await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      lib: {
        entry: join(PROJECT_PATHS.root, 'tests/browser/helpers/bench-in-page.ts'),
        formats: ['iife'],
        name: 'benchInPage',
      },
    },
  })) as Rolldown.RolldownOutput | Rolldown.RolldownOutput[];
  const [output] = Array.isArray(built) ? built : [built];
  const chunk = output?.output.find((each) => each.type === 'chunk');
  if (chunk?.type !== 'chunk') throw new Error('The script of the spreadsheet program was not built.');
  return chunk.code;
}
