import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, inject } from 'vitest';
import { PROJECT_PATHS } from '../../../src/build/project-paths.ts';
import { buildPage, PREVIEW_FOLDERS } from '../../../src/preview-server/build-pages.ts';
import { readFirstFile } from '../../../src/preview-server/first-file.ts';
import { type RunningPreview, servePreview } from '../../../src/preview-server/preview-server.ts';
import { QUIET_FLAGS } from './chromium.ts';

/** How the pane in the preview gets at the workbook: over the file, or through the real client library. */
export const MODES = ['direct', 'office'] as const;
export type Mode = (typeof MODES)[number];

const FIRST_PORT = 47_310;
const FOLDERS = join(PROJECT_PATHS.root, 'node_modules/.cache/browser-tests');

let browser: Promise<Browser> | null = null;
let built: Promise<string> | null = null;
const servers = new Map<Mode, Promise<RunningPreview>>();

afterAll(async () => {
  await (await browser)?.close();
  for (const server of servers.values()) await (await server).close();
  if (built !== null) rmSync(await built, { recursive: true });
  browser = null;
  built = null;
  servers.clear();
});

/** Builds the page into a folder of its own: another run at the same time would empty one that is shared. */
async function buildInOwnFolder(): Promise<string> {
  mkdirSync(FOLDERS, { recursive: true });
  const folder = mkdtempSync(join(FOLDERS, 'preview-'));
  await buildPage(folder);
  return folder;
}

async function serve(mode: Mode): Promise<RunningPreview> {
  built ??= buildInOwnFolder();
  const folders = { ...PREVIEW_FOLDERS, page: await built, pane: inject('paneFolder') };
  const first = await readFirstFile(null);
  if (typeof first === 'string') throw new Error(first);
  return servePreview({ folders, first, office: mode === 'office' }, FIRST_PORT);
}

function serverOf(mode: Mode): Promise<RunningPreview> {
  const running = servers.get(mode) ?? serve(mode);
  servers.set(mode, running);
  return running;
}

/** The browser, and the address at which the preview is served in a mode: one server per mode and file of tests. */
export async function previewSite(
  mode: Mode,
): Promise<{ readonly browser: Browser; readonly address: string }> {
  browser ??= chromium.launch({ executablePath: inject('chromium'), args: [...QUIET_FLAGS] });
  const { address } = await serverOf(mode);
  return { browser: await browser, address };
}
