import { join, resolve } from 'node:path';

const ROOT = resolve(import.meta.dirname, '../..');

/** Where the files that the build reads and writes stand, as absolute paths. */
export const PROJECT_PATHS = {
  root: ROOT,
  /** What is put into the built folder as it stands, icons among it. */
  public: join(ROOT, 'src/add-in/public'),
  addIn: join(ROOT, 'src/add-in'),
  dist: join(ROOT, 'dist'),
  drawings: join(ROOT, 'src/build/drawings'),
  functions: join(ROOT, 'src/functions/functions.ts'),
  icons: join(ROOT, 'src/add-in/public/icons'),
  manifest: join(ROOT, 'manifest.xml'),
  tokens: join(ROOT, 'src/pane/styles/tokens.css'),
} as const;
