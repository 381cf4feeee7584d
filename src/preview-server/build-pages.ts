import { mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build } from 'vite';
import { PROJECT_PATHS } from '../build/project-paths.ts';
import { isOlderThan } from './changed-since.ts';
import type { PreviewFolders } from './preview-server.ts';

const ROOT = PROJECT_PATHS.root;
const CACHE = join(ROOT, 'node_modules/.cache');

export const PREVIEW_FOLDERS: PreviewFolders = {
  page: join(CACHE, 'preview-page'),
  pane: join(CACHE, 'preview-pane'),
  officeScript: join(ROOT, 'node_modules/@microsoft/office-js/dist'),
};
/** Written when both are built, so that they are built again only after something has changed. */
const BUILT = join(CACHE, 'preview-built');
const SOURCES = ['src', 'vite.config.ts', 'package.json', 'package-lock.json'].map((each) =>
  join(ROOT, each),
);

/** Whether the page or the pane has to be built before it can be served. */
export function needsBuilding(): Promise<boolean> {
  return isOlderThan(BUILT, SOURCES);
}

/** Builds the page around the pane, and the pane itself as it is built for a spreadsheet program. */
export async function buildPages(): Promise<void> {
  await rm(BUILT, { force: true });
  // Beside the folder that is built to be put on a server, and without what is said of such a folder.
  await build({
    configFile: join(ROOT, 'vite.config.ts'),
    logLevel: 'error',
    build: { outDir: PREVIEW_FOLDERS.pane },
  });
  await buildPage(PREVIEW_FOLDERS.page);
  await mkdir(CACHE, { recursive: true });
  await writeFile(BUILT, '');
}

/** Builds the page around the pane into a folder. */
export async function buildPage(folder: string): Promise<void> {
  await build({
    configFile: false,
    logLevel: 'warn',
    root: join(ROOT, 'src/preview'),
    base: './',
    build: {
      outDir: folder,
      emptyOutDir: true,
      modulePreload: { polyfill: false },
      assetsInlineLimit: 0,
      reportCompressedSize: false,
    },
  });
}
