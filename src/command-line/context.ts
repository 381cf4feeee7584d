import type { Day } from '../core/day.ts';
import type { Random } from '../core/identifier.ts';
import type { WorkbookFile } from '../files-node/workbook-file.ts';
import type { Call } from './arguments.ts';
import type { Terminal } from './terminal.ts';

/** What a call ends with: 0 all well, 1 something short or to be mended first, 2 unusable. */
export type ExitCode = 0 | 1 | 2;

/** What a command works with. */
export interface Context {
  readonly call: Call;
  readonly file: WorkbookFile;
  readonly today: Day;
  readonly terminal: Terminal;
  /** From which new identifiers are made. */
  readonly random: Random;
}

export type Command = (context: Context) => Promise<ExitCode>;
