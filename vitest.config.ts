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
          // One page after the other, and nothing else at the same time: the browser wants the machine to itself.
          fileParallelism: false,
          sequence: { groupOrder: 1 },
          // Keys are pressed without a look between them: on a busy machine a page may not be there yet.
          retry: 2,
          hookTimeout: UNHURRIED,
          expect: { poll: { timeout: UNHURRIED / 3 } },
          benchmark: { include: [] },
        },
      },
    ],
  },
});
