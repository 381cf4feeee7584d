import { checkWorkbook, type PlacedNotice } from '../actions/check-workbook.ts';
import { drawEntries } from '../actions/draw-entries.ts';
import { logTreatment } from '../actions/log-treatment.ts';
import { quotePlan } from '../actions/quote-job.ts';
import { undoPosting } from '../actions/undo-posting.ts';
import type { Refusal, Written } from '../actions/writing-desk.ts';
import type { Day } from '../core/day.ts';
import type { Random } from '../core/identifier.ts';
import type { WorkbookFile } from '../files-node/workbook-file.ts';
import { checkJson, quoteJson, writtenJson } from './answers-json.ts';
import {
  amountUsed,
  type Call,
  CallRefused,
  dayOption,
  missingOption,
  numberOption,
  required,
} from './arguments.ts';
import { checkText, noticeLines } from './check-text.ts';
import { quoteText } from './quote-text.ts';
import { heading, type Terminal } from './terminal.ts';
import { writtenText } from './written-text.ts';

/** What a call ends with: 0 all well, 1 something short or to be mended first, 2 unusable. */
export type ExitCode = 0 | 1 | 2;

interface Context {
  readonly call: Call;
  readonly file: WorkbookFile;
  readonly today: Day;
  readonly terminal: Terminal;
  /** From which new identifiers are made. */
  readonly random: Random;
}

export type Command = (context: Context) => Promise<ExitCode>;

export const COMMANDS: Readonly<Record<Call['verb'], Command>> = {
  check: async ({ call, file, today, terminal }) => {
    const answer = checkWorkbook(file.workbook.snapshot(), today);
    if (call.flag('json')) printJson(checkJson(answer), terminal);
    else printLines(checkText(answer, call.flag('lots'), terminal), terminal);
    return answer.notices.some(({ severity }) => severity === 'stop') ? 1 : 0;
  },

  log: async (context) => {
    const { call, file, today, random } = context;
    const extent = numberOption(call, 'extent', false);
    if (extent === null) throw missingOption('log', 'extent');
    const request = {
      job: required(call, 'job'),
      item: call.text('item'),
      treatment: required(call, 'treatment'),
      extent,
      date: dayOption(call, 'date') ?? today,
      minutes: numberOption(call, 'minutes', true),
      by: call.text('by'),
      notes: call.text('notes'),
      asUsed: call.texts('use').map(amountUsed),
    };
    const written = logTreatment(file.workbook.snapshot(), request, today, random);
    return finish(context, written, 'Nothing is taken from stock for it.');
  },

  draw: async (context) => {
    const { file, today, call, random } = context;
    const written = drawEntries(file.workbook.snapshot(), today, random, call.text('by'));
    const isIdle = written.ok && written.drawing.entries.length === 0;
    return finish(
      context,
      written,
      isIdle ? 'Every entry up to today is drawn.' : 'Nothing more could be taken from stock.',
    );
  },

  undo: async (context) => {
    const { call, file, today, random } = context;
    const written = undoPosting(
      file.workbook.snapshot(),
      required(call, 'posting'),
      today,
      random,
      call.text('by'),
    );
    return finish(context, written, 'Nothing was taken back.');
  },

  quote: async ({ call, file, today, terminal, random }) => {
    const freeze = call.flag('freeze');
    if (!freeze && call.text('out') !== null)
      throw new CallRefused('--out goes with --freeze: without it nothing is saved.');
    const quoted = quotePlan(file.workbook.snapshot(), required(call, 'job'), freeze, today, random);
    if (!quoted.ok) return refused(quoted, terminal);
    if (quoted.frozen !== null) file.workbook.apply(quoted.frozen.changes);
    const { settings, notices } = checkWorkbook(file.workbook.snapshot(), today);
    if (quoted.frozen !== null) await file.saveTo(call.text('out') ?? undefined);
    if (call.flag('json')) printJson(quoteJson(quoted, settings.currency, notices), terminal);
    else {
      printLines(quoteText(quoted, settings.currency, terminal), terminal);
      if (quoted.frozen !== null) terminal.print(savedTo(call));
    }
    return 0;
  },
};

/** Saves what an action wrote, and prints it with the notices that stand afterwards. */
async function finish(context: Context, written: Written | Refusal, nothing: string): Promise<ExitCode> {
  const { call, file, today, terminal } = context;
  if (!written.ok) return refused(written, terminal);
  file.workbook.apply(written.changes);
  const target = call.text('out');
  const { notices } = checkWorkbook(file.workbook.snapshot(), today);
  const isSaved = target !== null || written.changes.length > 0;
  if (isSaved) await file.saveTo(target ?? undefined);
  if (call.flag('json')) printJson(writtenJson(written, notices), terminal);
  else {
    printLines(writtenText(written, nothing, terminal), terminal);
    printLines(noticesAfter(written, notices, terminal), terminal);
    if (isSaved) terminal.print(savedTo(call));
  }
  return written.drawing.shortfalls.length > 0 ? 1 : 0;
}

function savedTo(call: Call): string {
  return `Saved to ${call.text('out') ?? call.file ?? ''}.`;
}

/** The notices about the lots, materials and entries that a posting touched, and how many others must be mended. */
function noticesAfter({ drawing }: Written, notices: readonly PlacedNotice[], terminal: Terminal): string[] {
  const touched = new Set<string>([
    ...drawing.movements.flatMap(({ lot }) => [lot.name, lot.material.name]),
    ...drawing.entries.map(({ entry }) => entry.name),
  ]);
  const about = notices.filter(({ subject }) => touched.has(subject));
  const others = notices.filter((each) => each.severity === 'stop' && !touched.has(each.subject)).length;
  return [
    ...(about.length === 0
      ? []
      : ['', heading('About what was written', terminal), ...noticeLines(about, terminal)]),
    ...(others === 0 ? [] : ['', `Elsewhere in the workbook ${others} to mend first: see check.`]),
  ];
}

function refused({ message }: Refusal, terminal: Terminal): ExitCode {
  terminal.printError(message);
  return 2;
}

function printJson(value: unknown, terminal: Terminal): void {
  terminal.print(JSON.stringify(value, null, 2));
}

function printLines(lines: readonly string[], terminal: Terminal): void {
  for (const line of lines) terminal.print(line);
}
