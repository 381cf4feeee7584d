import type { ExitCode } from '../../src/command-line/context.ts';
import { run } from '../../src/command-line/run.ts';
import type { Random } from '../../src/core/identifier.ts';

/** What a call of the command line printed, and what it ended with. */
export interface Answer {
  readonly code: ExitCode;
  readonly out: string;
  readonly err: string;
}

interface Options {
  readonly width?: number;
  readonly now?: Date;
  readonly random?: Random;
}

/** Runs the command line inside this process, at noon of 3 April 2026 unless another moment is given. */
export async function call(
  words: readonly string[],
  { width = 100, now = new Date(2026, 3, 3, 12), random }: Options = {},
): Promise<Answer> {
  const out: string[] = [];
  const err: string[] = [];
  const terminal = {
    width,
    color: false,
    print: (line: string) => out.push(line),
    printError: (line: string) => err.push(line),
  };
  const code = await run(words, now, terminal, random);
  return { code, out: out.join('\n'), err: err.join('\n') };
}
