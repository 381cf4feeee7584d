import { randomInt } from 'node:crypto';
import { format } from 'date-fns';
import { type Day, parseDay } from '../core/day.ts';
import type { Random } from '../core/identifier.ts';
import { FileRefused } from '../files/file-refused.ts';
import { readWorkbookFile } from '../files-node/workbook-file.ts';
import { CallRefused, dayOption, isVerb, readCall } from './arguments.ts';
import { COMMANDS } from './commands.ts';
import type { ExitCode } from './context.ts';
import { OVERVIEW, VERB_HELP } from './help.ts';
import type { Terminal } from './terminal.ts';

const ASKS_FOR_HELP: ReadonlySet<string> = new Set(['', 'help', '--help', '-h']);

const RANDOM_STEPS = 2 ** 32;

/** Random numbers that nobody can guess, so that identifiers made in two places don't meet. */
function secureRandom(): number {
  return randomInt(RANDOM_STEPS) / RANDOM_STEPS;
}

/**
 * Runs one call of the command line.
 * @param words what was typed behind the program's name
 * @param random from which new identifiers are made
 * @param now the moment of the call; its calendar day, where the program runs, is today unless --on says otherwise
 */
export async function run(
  words: readonly string[],
  now: Date,
  terminal: Terminal,
  random: Random = secureRandom,
): Promise<ExitCode> {
  const [first = '', second = ''] = words;
  if (ASKS_FOR_HELP.has(first)) {
    terminal.print(isVerb(second) ? VERB_HELP[second] : OVERVIEW);
    return 0;
  }
  try {
    const call = readCall(words);
    if (call.flag('help') || call.file === null) {
      terminal.print(VERB_HELP[call.verb]);
      return 0;
    }
    const today = dayOption(call, 'on') ?? dayOf(now);
    const file = await readWorkbookFile(call.file);
    return await COMMANDS[call.verb]({ call, file, today, terminal, random });
  } catch (error) {
    if (!(error instanceof CallRefused || error instanceof FileRefused)) throw error;
    terminal.printError(error.message);
    return 2;
  }
}

function dayOf(moment: Date): Day {
  const day = parseDay(format(moment, 'yyyy-MM-dd'));
  if (day === null) throw new Error('the clock gives no calendar day');
  return day;
}
