import { gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

/** What a script or a style sheet weighs on its way to the pane, in bytes. */
export interface WeighedFile {
  readonly name: string;
  readonly gzip: number;
}

const BYTES_PER_KB = 1024;

/** The files as a table with their sum, and whether that stays within the budget. */
export function weigh(
  files: readonly WeighedFile[],
  budgetBytes: number,
): { readonly withinBudget: boolean; readonly report: string } {
  const total = files.reduce((sum, { gzip }) => sum + gzip, 0);
  const lines = [...files, { name: 'in all', gzip: total }, { name: 'budget', gzip: budgetBytes }];
  const widest = Math.max(...lines.map(({ name }) => name.length));
  return {
    withinBudget: total <= budgetBytes,
    report: lines.map(({ name, gzip }) => `${name.padEnd(widest)}  ${kilobytes(gzip)} KB gzip`).join('\n'),
  };
}

const kilobytes = (bytes: number): string => (bytes / BYTES_PER_KB).toFixed(1).padStart(6);

/** Reports what the scripts and style sheets of the pane weigh, and fails the build where that is too much. */
export function sizeBudgetPlugin(budgetBytes: number): Plugin {
  return {
    name: 'size-budget',
    apply: 'build',
    writeBundle(_options, bundle) {
      const files = Object.values(bundle).flatMap((output) => {
        if (output.type === 'chunk') return [{ name: output.fileName, gzip: gzipSync(output.code).length }];
        return output.fileName.endsWith('.css')
          ? [{ name: output.fileName, gzip: gzipSync(output.source).length }]
          : [];
      });
      const { withinBudget, report } = weigh(files, budgetBytes);
      if (!withinBudget) this.error(`The pane weighs more than its budget:\n${report}`);
      this.info(`\n${report}`);
    },
  };
}
