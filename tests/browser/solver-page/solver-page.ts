import type { ProgrammeSolution } from '../../../src/core/buying/integer-programme.ts';

/** What the page offers to the test. */
export interface SolverPage {
  readonly inWorker: () => Promise<ProgrammeSolution>;
}

const page: SolverPage = {
  inWorker: () =>
    new Promise((resolve, reject) => {
      const worker = new Worker(new URL('./solver-worker.ts', import.meta.url), { type: 'module' });
      worker.addEventListener('message', ({ data }: MessageEvent<ProgrammeSolution>) => resolve(data));
      worker.addEventListener('error', ({ message }) => reject(new Error(message)));
    }),
};

Object.assign(globalThis, { solverPage: page });
