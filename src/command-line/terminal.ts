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
  return {
    width: Math.min(Math.max(stdout.columns ?? USUAL_WIDTH, NARROWEST), WIDEST),
    color: stdout.isTTY === true && pc.isColorSupported,
    print: (line) => stdout.write(`${line}\n`),
    printError: (line) => stderr.write(`${line}\n`),
  };
}

/** Text wrapped at words, the later lines set in by some spaces. */
export function wrapped(text: string, width: number, indent: number): string[] {
  const lines = wrapAnsi(text, Math.max(width - indent, NARROWEST / 2), { hard: true }).split('\n');
  return lines.map((line, place) => (place === 0 ? line : ' '.repeat(indent) + line));
}

/** A heading. */
export function heading(text: string, terminal: Terminal): string {
  return pc.createColors(terminal.color).bold(text);
}

/** A severity as it is printed in front of a notice. */
export function severityMark(severity: Severity, terminal: Terminal): string {
  const colors = pc.createColors(terminal.color);
  const mark = severity.padEnd('stop'.length);
  return { stop: colors.red, warn: colors.yellow, note: colors.cyan }[severity](mark);
}
