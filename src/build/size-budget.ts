import { gzipSync } from 'node:zlib';
import type { Plugin, Rolldown } from 'vite';

/** What a file weighs on its way to the pane, in bytes. */
export interface WeighedFile {
  readonly name: string;
  readonly gzip: number;
}

/** The names of the files that a pane loads. */
export interface LoadedFiles {
  /** With the page. */
  readonly atStart: readonly string[];
  /** Only when something asks for them: what is imported then, workers, WebAssembly. */
  readonly onDemand: readonly string[];
}

const BYTES_PER_KB = 1024;

/** What a pane loads: the kinds of file that run or are applied. Pictures are neither. */
const WEIGHED = /\.(?:js|css|wasm)$/;

/**
 * The files as a table with the sum of those that load with the page, and whether that stays within the budget;
 * what loads on demand is only said.
 */
export function weigh(
  atStart: readonly WeighedFile[],
  onDemand: readonly WeighedFile[],
  budgetBytes: number,
): { readonly withinBudget: boolean; readonly report: string } {
  const total = atStart.reduce((sum, { gzip }) => sum + gzip, 0);
  const lines = [
    ...atStart,
    { name: 'in all', gzip: total },
    { name: 'budget', gzip: budgetBytes },
    ...onDemand.map(({ name, gzip }) => ({ name: `on demand: ${name}`, gzip })),
  ];
  const widest = Math.max(...lines.map(({ name }) => name.length));
  return {
    withinBudget: total <= budgetBytes,
    report: lines.map(({ name, gzip }) => `${name.padEnd(widest)}  ${kilobytes(gzip)} KB gzip`).join('\n'),
  };
}

const kilobytes = (bytes: number): string => (bytes / BYTES_PER_KB).toFixed(1).padStart(6);

/** Which files of a bundle load with the page: its entries, what they import, and the style sheets of those. */
export function loadedFiles(bundle: Rolldown.OutputBundle): LoadedFiles {
  const started = new Set<string>();
  const add = (name: string): void => {
    const output = bundle[name];
    if (output === undefined || started.has(name)) return;
    started.add(name);
    if (output.type === 'asset') return;
    for (const imported of output.imports) add(imported);
    for (const sheet of output.viteMetadata?.importedCss ?? []) add(sheet);
  };
  for (const output of Object.values(bundle)) {
    if (output.type === 'chunk' && output.isEntry) add(output.fileName);
  }
  const names = Object.keys(bundle).filter((name) => WEIGHED.test(name));
  return {
    atStart: names.filter((name) => started.has(name)),
    onDemand: names.filter((name) => !started.has(name)),
  };
}

/** Reports what the files of the pane weigh, and fails the build where those that load with the page are too much. */
export function sizeBudgetPlugin(budgetBytes: number): Plugin {
  return {
    name: 'size-budget',
    apply: 'build',
    writeBundle(_options, bundle) {
      const weighed = (names: readonly string[]): WeighedFile[] =>
        names.flatMap((name) => {
          const output = bundle[name];
          if (output === undefined) return [];
          const content = output.type === 'chunk' ? output.code : output.source;
          return [{ name, gzip: gzipSync(content).length }];
        });
      const { atStart, onDemand } = loadedFiles(bundle);
      const { withinBudget, report } = weigh(weighed(atStart), weighed(onDemand), budgetBytes);
      if (!withinBudget) this.error(`The pane weighs more than its budget:\n${report}`);
      this.info(`\n${report}`);
    },
  };
}
