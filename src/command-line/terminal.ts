import pc from 'picocolors';
import wrapAnsi from 'wrap-ansi';
import type { Severity } from '../core/notice.ts';

/** Where a command prints to, and what that place can do. */
export interface Terminal {
  /** Columns; text is wrapped to them. */
  readonly width: number;
  readonly color: boolean;
  readonly print: (line: string) => void;
  /** For messages that are no part of the answer. */
  readonly printError: (line: string) => void;
}

const USUAL_WIDTH = 100;
const NARROWEST = 60;
const WIDEST = 120;

/** The process's own terminal; colour only where a person looks at it. */
export function processTerminal(): Terminal {
  const { stdout, stderr } = process;
  // Whoever reads may have seen enough (as `head` has) before all is printed.
  stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
  return {
    width: Math.min(Math.max(stdout.columns ?? USUAL_WIDTH, NARROWEST), WIDEST),
    // The types call it a boolean; where output goes to a file or a pipe it isn't there at all.
    // oxlint-disable-next-line no-unnecessary-type-conversion
    color: Boolean(stdout.isTTY) && pc.isColorSupported,
    print: (line) => stdout.write(`${line}\n`),
    printError: (line) => stderr.write(`${line}\n`),
  };
}

/** Text from a workbook on one line: a cell may hold line breaks, and signs that a terminal would obey. */
export function oneLine(text: string): string {
  return text.replace(/[\s\p{Cc}]+/gu, ' ').trim();
}

/** Text wrapped at words, the later lines set in by some spaces. */
export function wrapped(text: string, width: number, indent: number): string[] {
  const lines = wrapAnsi(oneLine(text), Math.max(width - indent, NARROWEST / 2), { hard: true }).split('\n');
  return lines.map((line, place) => (place === 0 ? line : ' '.repeat(indent) + line));
}

/** An item of a list, set in by two spaces and its later lines by four. */
export function listed(text: string, terminal: Terminal): string[] {
  return wrapped(text, terminal.width - 2, 2).map((line) => `  ${line}`);
}

/** A heading. */
export function heading(text: string, terminal: Terminal): string {
  return pc.createColors(terminal.color).bold(oneLine(text));
}

/** A severity as it is printed in front of a notice. */
export function severityMark(severity: Severity, terminal: Terminal): string {
  const colors = pc.createColors(terminal.color);
  const mark = severity.padEnd('stop'.length);
  return { stop: colors.red, warn: colors.yellow, note: colors.cyan }[severity](mark);
}
