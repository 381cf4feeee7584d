import { defineConfig } from 'vitest/config';

const UNHURRIED = 60_000;

export default defineConfig({
  test: {
    testTimeout: UNHURRIED,
    projects: [
      {
        extends: true,
        test: { name: 'core and edges', include: ['tests/**/*.test.ts'], exclude: ['tests/browser/**'] },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/helpers/set-up.ts'],
          // The browser does the work: one page after the other, so that each has the machine to itself.
          fileParallelism: false,
          hookTimeout: UNHURRIED,
          benchmark: { include: [] },
        },
      },
    ],
  },
});
