import type { ExitCode } from '../../src/command-line/commands.ts';
import { run } from '../../src/command-line/run.ts';

/** What a call of the command line printed, and what it ended with. */
export interface Answer {
  readonly code: ExitCode;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line inside this process, at noon of 3 April 2026 unless another moment is given. */
export async function call(
  words: readonly string[],
  { width = 100, now = new Date(2026, 3, 3, 12) } = {},
): Promise<Answer> {
  const out: string[] = [];
  const err: string[] = [];
  const code = await run(words, now, {
    width,
    color: false,
    print: (line) => out.push(line),
    printError: (line) => err.push(line),
  });
  return { code, out: out.join('\n'), err: err.join('\n') };
}
