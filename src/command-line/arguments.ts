import { parseArgs } from 'node:util';
import { nearest } from '../actions/nearest-name.ts';
import { type AmountUsed, splitAmountUsed } from '../core/as-used.ts';
import { type Day, parseDay } from '../core/day.ts';
import { type Exact, parsePlainNumber } from '../core/exact-number.ts';
import { UNIT_NAMES } from '../core/unit.ts';
import { VERB_HELP, type Verb } from './help.ts';
import { COMMON, type Options, WRITING } from './option-parts.ts';
import { BATH_OPTIONS } from './verbs/bath-help.ts';
import { BUY_OPTIONS } from './verbs/buy-help.ts';
import { CARRY_OPTIONS } from './verbs/carry-help.ts';
import { CLOSING_OPTIONS } from './verbs/closing-help.ts';
import { COUNT_OPTIONS } from './verbs/count-help.ts';
import { DISCARD_OPTIONS } from './verbs/discard-help.ts';
import { DISPOSAL_OPTIONS } from './verbs/disposal-help.ts';
import { LOT_OPTIONS } from './verbs/lot-help.ts';
import { MAKE_OPTIONS } from './verbs/make-help.ts';
import { OPEN_OPTIONS } from './verbs/open-help.ts';
import { PLAN_OPTIONS } from './verbs/plan-help.ts';
import { RECEIVE_OPTIONS } from './verbs/receive-help.ts';
import { RETEST_OPTIONS } from './verbs/retest-help.ts';
import { REUSE_OPTIONS } from './verbs/reuse-help.ts';
import { UPGRADE_OPTIONS } from './verbs/upgrade-help.ts';

/** The call can't be understood; the message says what is wrong and what would be right. */
export class CallRefused extends Error {}

const OPTIONS: Readonly<Record<Verb, Options>> = {
  check: { ...COMMON, lots: { type: 'boolean' } },
  log: {
    ...WRITING,
    job: { type: 'string' },
    item: { type: 'string' },
    treatment: { type: 'string' },
    extent: { type: 'string' },
    date: { type: 'string' },
    use: { type: 'string', multiple: true },
    minutes: { type: 'string' },
    notes: { type: 'string' },
  },
  draw: WRITING,
  undo: { ...WRITING, posting: { type: 'string' } },
  quote: { ...COMMON, out: { type: 'string' }, job: { type: 'string' }, freeze: { type: 'boolean' } },
  plan: PLAN_OPTIONS,
  make: MAKE_OPTIONS,
  buy: BUY_OPTIONS,
  receive: RECEIVE_OPTIONS,
  bath: BATH_OPTIONS,
  open: OPEN_OPTIONS,
  retest: RETEST_OPTIONS,
  discard: DISCARD_OPTIONS,
  reuse: REUSE_OPTIONS,
  lot: LOT_OPTIONS,
  count: COUNT_OPTIONS,
  closing: CLOSING_OPTIONS,
  disposal: DISPOSAL_OPTIONS,
  carry: CARRY_OPTIONS,
  upgrade: UPGRADE_OPTIONS,
};

/** A call that was understood so far: its verb, its file, and the options as typed. */
export interface Call {
  readonly verb: Verb;
  /** Null only where help is asked for. */
  readonly file: string | null;
  readonly text: (option: string) => string | null;
  readonly texts: (option: string) => readonly string[];
  readonly flag: (option: string) => boolean;
}

export function isVerb(word: string): word is Verb {
  return Object.hasOwn(VERB_HELP, word);
}

/** Takes a call apart; options that the verb doesn't have, and more than one file, are refused. */
export function readCall(words: readonly string[]): Call {
  const [verb = '', ...rest] = words;
  if (!isVerb(verb)) {
    const verbs = Object.keys(VERB_HELP);
    const list = new Intl.ListFormat('en-GB').format(verbs);
    throw new CallRefused(`There is no verb ${verb}.${meant(verb, verbs)} The verbs are ${list}.`);
  }
  const options = OPTIONS[verb];
  const { values, positionals, tokens } = parseWords(verb, rest);
  const given = new Set<string>();
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    const { name } = token;
    if (token.value?.trim() === '')
      throw new CallRefused(`--${name} needs a value. See jarleaf ${verb} --help.`);
    if (given.has(name) && options[name]?.multiple !== true)
      throw new CallRefused(`--${name} is given twice. See jarleaf ${verb} --help.`);
    given.add(name);
  }
  const help = values['help'] === true;
  if (positionals.length !== 1 && !help) {
    const problem =
      positionals.length === 0 ? 'Name the workbook' : `Name one workbook, not ${positionals.join(' and ')}`;
    throw new CallRefused(`${problem}: jarleaf ${verb} FILE. A name with spaces goes in quotes.`);
  }
  return {
    verb,
    file: positionals[0] ?? null,
    text: (option) => (typeof values[option] === 'string' ? values[option] : null),
    texts: (option) => (Array.isArray(values[option]) ? values[option].map(String) : []),
    flag: (option) => values[option] === true,
  };
}

/** Of less than this nobody can guess what was meant. */
const SHORTEST_GUESSED = 3;

function parseWords(verb: Verb, words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options: OPTIONS[verb], allowPositionals: true, tokens: true });
  } catch (error) {
    throw new CallRefused(`${problemWith(error, verb)} See jarleaf ${verb} --help.`, { cause: error });
  }
}

function meant(typed: string, names: readonly string[], before = ''): string {
  const near = typed.length < SHORTEST_GUESSED ? [] : nearest(typed, names);
  return near.length === 0 ? '' : ` Did you mean ${near.map((name) => before + name).join(' or ')}?`;
}

/** What Node says of words that it can't take apart, in this program's terms. */
function problemWith(error: unknown, verb: Verb): string {
  if (!(error instanceof Error)) throw error;
  const option = /'(?:-\w, )?(-[^\s']*)/.exec(error.message)?.[1] ?? '';
  switch ((error as NodeJS.ErrnoException).code) {
    case 'ERR_PARSE_ARGS_UNKNOWN_OPTION':
      return `jarleaf ${verb} has no option ${option}.${meant(option.replace(/^-+/, ''), Object.keys(OPTIONS[verb]), '--')}`;
    case 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE':
      if (error.message.includes('ambiguous')) {
        return `${option} needs a value; one that begins with a dash is written ${option}=-5.`;
      }
      return error.message.includes('does not take')
        ? `${option} takes no value.`
        : `${option} needs a value.`;
    default:
      throw error;
  }
}

/** What to say where an option is missing, or npm took it for one of its own. */
export function missingOption(verb: Verb, option: string): CallRefused {
  return new CallRefused(
    process.env[`npm_config_${option}`] === undefined
      ? `jarleaf ${verb} needs --${option}. See jarleaf ${verb} --help.`
      : `npm took --${option} for itself: put two dashes before the verb, npm run --silent jarleaf -- ${verb} …`,
  );
}

/** An option that must be there. */
export function required(call: Call, option: string): string {
  const value = call.text(option);
  if (value === null) throw missingOption(call.verb, option);
  return value.trim();
}

const FIRST_YEAR = 1970;
const LAST_YEAR = 2199;

/** A day given by an option; null where it isn't given. */
export function dayOption(call: Call, option: string): Day | null {
  const typed = call.text(option);
  if (typed === null) return null;
  const day = parseDay(typed);
  const year = Number(typed.trim().slice(0, 4));
  if (day === null || year < FIRST_YEAR || year > LAST_YEAR) {
    throw new CallRefused(`--${option} holds “${typed}”: a day is right, written like 2026-04-03.`);
  }
  return day;
}

/** A number given by an option; null where it isn't given. */
export function numberOption(call: Call, option: string, mayBeZero: boolean): Exact | null {
  const typed = call.text(option);
  if (typed === null) return null;
  const value = parsePlainNumber(typed);
  if (value === null || value.compare(0) < 0 || (!mayBeZero && value.equals(0))) {
    const bound = mayBeZero ? '0 or more' : 'above 0';
    throw new CallRefused(`--${option} holds “${typed}”: a plain number ${bound} is right, such as 12.5.`);
  }
  return value;
}

/** An amount that was really used, written MATERIAL=QUANTITY UNIT or MATERIAL=QUANTITY UNIT@LOT. */
export function amountUsed(typed: string): AmountUsed {
  const amount = splitAmountUsed(typed);
  if (amount === null) {
    throw new CallRefused(
      `--use holds “${typed}”: write it like "wheat starch paste=12.5 g" or "wheat starch paste=12.5 g@P-014".`,
    );
  }
  const { unit, unitName, ...named } = amount;
  if (unit !== null) return { ...named, unit };
  throw new CallRefused(
    `--use holds the unit “${unitName}”: a unit is right, one of ${UNIT_NAMES.join(', ')}.`,
  );
}
