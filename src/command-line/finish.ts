import { checkWorkbook, type PlacedNotice } from '../actions/check-workbook.ts';
import type { Refusal, Written } from '../actions/writing-desk.ts';
import type { Notice } from '../core/notice.ts';
import { writtenJson } from './answers-json.ts';
import type { Call } from './arguments.ts';
import { noticeLines } from './check-text.ts';
import type { Context, ExitCode } from './context.ts';
import { heading, type Terminal } from './terminal.ts';
import { writtenText } from './written-text.ts';

/** What a verb that writes answers with. */
export interface Told {
  readonly json: (notices: readonly PlacedNotice[]) => unknown;
  readonly lines: readonly string[];
  /** Whether something that was asked for isn't covered. */
  readonly isShort: boolean;
  /** Lots, materials, orders whose notices are told besides those of what moved. */
  readonly about?: readonly string[];
}

/** Saves what an action wrote, and prints it with the notices that stand afterwards. */
export async function finish(
  context: Context,
  written: Written | Refusal,
  nothing: string,
): Promise<ExitCode> {
  const { terminal } = context;
  if (!written.ok) return refused(written, terminal);
  return saveAndTell(context, written, {
    json: (notices) => writtenJson(written, notices),
    lines: writtenText(written, nothing, terminal),
    isShort: written.drawing.shortfalls.length > 0,
  });
}

/** Saves what an action wrote, and prints what a verb says of it with the notices that stand afterwards. */
export async function saveAndTell(context: Context, written: Written, told: Told): Promise<ExitCode> {
  const { call, file, today, terminal } = context;
  file.workbook.apply(written.changes);
  const target = call.text('out');
  const { notices } = checkWorkbook(file.workbook.snapshot(), today);
  const isSaved = target !== null || written.changes.length > 0;
  if (isSaved) await file.saveTo(target ?? undefined);
  if (call.flag('json')) printJson(told.json(notices), terminal);
  else {
    printLines(told.lines, terminal);
    printLines(noticesAfter(written, notices, told.about ?? [], terminal), terminal);
    if (isSaved) terminal.print(savedTo(call));
  }
  return told.isShort ? 1 : 0;
}

/** Says where a call saved to. */
export function savedTo(call: Call): string {
  return `Saved to ${call.text('out') ?? call.file ?? ''}.`;
}

/** The notices about the lots, materials and entries that a posting touched, and how many others must be mended. */
function noticesAfter(
  { drawing }: Written,
  notices: readonly PlacedNotice[],
  besides: readonly string[],
  terminal: Terminal,
): string[] {
  const touched = new Set<string>([
    ...besides,
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

/** That something must be mended first, which may bear on what was worked out; nothing where nothing must. */
export function missesSome(notices: readonly Notice[]): string[] {
  const toMend = notices.filter(({ severity }) => severity === 'stop').length;
  return toMend === 0
    ? []
    : ['', `In the workbook ${toMend} to mend first, which may bear on these figures: see check.`];
}

/** Tells why nothing was done. */
export function refused({ message }: Refusal, terminal: Terminal): ExitCode {
  terminal.printError(message);
  return 2;
}

export function printJson(value: unknown, terminal: Terminal): void {
  terminal.print(JSON.stringify(value, null, 2));
}

export function printLines(lines: readonly string[], terminal: Terminal): void {
  for (const line of lines) terminal.print(line);
}
