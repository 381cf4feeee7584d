import type { CellValue } from '../../workbook/port.ts';
import type { CellFunctionEvaluator, CellFunctionValue } from '../../workbook/preview-port.ts';

/** What a spreadsheet puts before the name of an add-in's function when it stores a formula. */
const STORED_PREFIX = '_xldudf_';
const NAMESPACE = 'JARLEAF';
const CALL = /^\s*(?:_xldudf_JARLEAF_|JARLEAF\.)([A-Z][A-Z0-9_.]*)\s*\((.*)\)\s*$/is;
const ARGUMENT =
  /\s*(?:"((?:[^"]|"")*)"|([+-]?(?:\d+(?:\.\d*)?|\.\d+))|(TRUE|FALSE)\b|((?:(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!)?\$?[A-Z]{1,3}\$?\d{1,7}))?\s*(,|$)/iuy;

/** A cell that an argument names. */
export interface NamedCell {
  /** Null means the tab that the formula stands on. */
  readonly tab: string | null;
  /** As written, without dollar signs: B7. */
  readonly name: string;
}

export type FunctionArgument =
  | { readonly kind: 'value'; readonly value: CellFunctionValue }
  | { readonly kind: 'cell'; readonly cell: NamedCell };

export interface FunctionCall {
  /** In capitals, with its namespace: JARLEAF.LEFT. */
  readonly name: string;
  readonly args: readonly FunctionArgument[];
}

/** A formula as a person reads it: an add-in's function by its name instead of what files call it. */
export function readableFormula(formula: string): string {
  return formula.replaceAll(`${STORED_PREFIX}${NAMESPACE}_`, `${NAMESPACE}.`);
}

/** A formula as files store it. */
export function storedFormula(formula: string): string {
  return formula.replace(/"(?:[^"]|"")*"|\bJARLEAF\.(?=[A-Z])/gi, (found) =>
    found.startsWith('"') ? found : `${STORED_PREFIX}${NAMESPACE}_`,
  );
}

/** The call that a formula is, if it is one single call of a function of ours whose arguments are plain. */
export function functionCall(formula: string): FunctionCall | null {
  const [, name, list] = CALL.exec(formula) ?? [];
  if (name === undefined || list === undefined) return null;
  const args: FunctionArgument[] = [];
  ARGUMENT.lastIndex = 0;
  for (;;) {
    const match = ARGUMENT.exec(list);
    if (!match) return null;
    const [, text, number, truth, cell, separator] = match;
    if (args.length > 0 || separator === ',' || list.trim() !== '')
      args.push(argument(text, number, truth, cell));
    if (separator !== ',') return { name: `${NAMESPACE}.${name.toUpperCase()}`, args };
  }
}

function argument(
  text: string | undefined,
  number: string | undefined,
  truth: string | undefined,
  cell: string | undefined,
): FunctionArgument {
  if (text !== undefined) return { kind: 'value', value: text.replaceAll('""', '"') };
  if (number !== undefined) return { kind: 'value', value: Number(number) };
  if (truth !== undefined) return { kind: 'value', value: truth.toUpperCase() === 'TRUE' };
  if (cell === undefined) return { kind: 'value', value: null };
  const mark = cell.lastIndexOf('!');
  const name = cell.slice(mark + 1);
  const tab = mark < 0 ? undefined : cell.slice(0, mark);
  const quoted = tab?.startsWith("'") ? tab.slice(1, -1).replaceAll("''", "'") : tab;
  return { kind: 'cell', cell: { tab: quoted ?? null, name: name.replaceAll('$', '').toUpperCase() } };
}

/**
 * The value of a call, worked out by whoever registered the functions.
 * @param valueAt gives the value of a named cell; undefined where there is no such cell
 */
export function evaluateCall(
  call: FunctionCall,
  evaluate: CellFunctionEvaluator,
  valueAt: (cell: NamedCell) => CellValue | undefined,
): CellValue {
  const args: CellFunctionValue[] = [];
  for (const given of call.args) {
    const value = given.kind === 'value' ? given.value : valueAt(given.cell);
    if (value === undefined) return { shown: '#REF!' };
    if (typeof value === 'object' && value !== null) return value;
    args.push(value);
  }
  const answer = evaluate(call.name, args);
  return typeof answer === 'object' ? { shown: answer.error } : answer;
}
