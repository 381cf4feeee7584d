import { columnLetters, columnNumber } from './cell-reference.ts';
import { MAX_COLUMNS, MAX_ROWS } from './limits.ts';

/** One end of a reference in a formula: a cell (B7), or half of whole rows (7:9) or whole columns (B:D). */
export interface FormulaReference {
  /** What the tab is called that it is on, as the formula says before `!`; null where it says none. */
  readonly tab: string | null;
  /** Column and row, 1-based, and whether a $ stands before them; null for whole rows or columns. */
  readonly column: number | null;
  readonly columnFixed: boolean;
  readonly row: number | null;
  readonly rowFixed: boolean;
}

const SKIPPED = /"(?:[^"]|"")*"/y;
const QUALIFIER = /(?:'((?:[^']|'')*)'|([\p{L}\p{N}_.\\[\]:]+))!/uy;
const CELL = /(\$?)([A-Za-z]{1,3})(\$?)([0-9]{1,7})(?![\p{L}\p{N}_.\\(!])/uy;
const ROWS = /(\$?)([0-9]{1,7}):(\$?)([0-9]{1,7})(?![\p{L}\p{N}_.])/uy;
const COLUMNS = /(\$?)([A-Za-z]{1,3}):(\$?)([A-Za-z]{1,3})(?![\p{L}\p{N}_.\\(!$])/uy;
const WORD = /[\p{L}_\\][\p{L}\p{N}_.\\?]*|[0-9][0-9.]*(?:[eE][+-]?[0-9]+)?/uy;

/**
 * Rewrites the A1 references of a formula, leaving strings, names, structured references and other workbooks'
 * cells alone. `rewrite` gives a reference back, or null where it no longer exists (#REF!).
 */
export function mapReferences(
  formula: string,
  rewrite: (reference: FormulaReference) => FormulaReference | null,
): string {
  let written = '';
  let at = 0;
  let tab: string | null = null;
  let foreign = false;
  const take = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    return pattern.exec(formula);
  };
  const mapped = (reference: Omit<FormulaReference, 'tab'>, source: string): string => {
    if (foreign) return source;
    const result = rewrite({ ...reference, tab });
    return result === null ? '#REF!' : referenceText(result);
  };
  while (at < formula.length) {
    const found = take(SKIPPED) ?? take(WORD_BEFORE_BRACKET);
    if (found) {
      written += found[0];
      at += found[0].length;
      continue;
    }
    if (formula[at] === '[') {
      const end = bracketEnd(formula, at);
      const qualifier = qualifierAfterBook(formula, end);
      written += formula.slice(at, qualifier ?? end);
      at = qualifier ?? end;
      if (qualifier !== null) foreign = true;
      continue;
    }
    const qualifier = take(QUALIFIER);
    // Behind "Stock!" a range may name its tab again (Stock!A1:Stock!B5); elsewhere a colon spans tabs.
    if (qualifier && !(tab !== null && qualifier[0].includes(':'))) {
      const name = qualifier[1]?.replaceAll("''", "'") ?? qualifier[2] ?? '';
      foreign = name.includes('[') || name.includes(':');
      tab = name;
      written += qualifier[0];
      at += qualifier[0].length;
      continue;
    }
    const rows = take(ROWS);
    const columns = rows ? null : take(COLUMNS);
    const cell = rows || columns ? null : take(CELL);
    const match = rows ?? columns ?? cell;
    if (match && isReference(rows, columns, cell)) {
      const [source, firstSign = '', first = '', secondSign = '', second = ''] = match;
      if (cell) {
        written += mapped(
          {
            column: columnNumber(first),
            columnFixed: firstSign === '$',
            row: Number(second),
            rowFixed: secondSign === '$',
          },
          source,
        );
      } else {
        const half = (sign: string, value: string): string =>
          rows
            ? mapped({ column: null, columnFixed: false, row: Number(value), rowFixed: sign === '$' }, sign + value)
            : mapped(
                { column: columnNumber(value), columnFixed: sign === '$', row: null, rowFixed: false },
                sign + value,
              );
        written += `${half(firstSign, first)}:${half(secondSign, second)}`;
      }
      at += source.length;
      // The tab holds on to the other end of a range: Stock!A1:B5.
      if (formula[at] !== ':') {
        tab = null;
        foreign = false;
      }
      continue;
    }
    const word = take(WORD);
    const step = word ? word[0] : (formula[at] as string);
    if (step !== ':') {
      tab = null;
      foreign = false;
    }
    written += step;
    at += step.length;
  }
  return written;
}

/** A table's name directly before the bracket of a structured reference. */
const WORD_BEFORE_BRACKET = /[\p{L}_\\][\p{L}\p{N}_.\\]*(?=\[)/uy;

function isReference(rows: RegExpExecArray | null, columns: RegExpExecArray | null, cell: RegExpExecArray | null) {
  const rowFits = (row: string | undefined): boolean => Number(row) >= 1 && Number(row) <= MAX_ROWS;
  const columnFits = (column: string | undefined): boolean => columnNumber(column ?? '') <= MAX_COLUMNS;
  if (rows) return rowFits(rows[2]) && rowFits(rows[4]);
  if (columns) return columnFits(columns[2]) && columnFits(columns[4]);
  return cell !== null && columnFits(cell[2]) && rowFits(cell[4]);
}

function referenceText(reference: FormulaReference): string {
  const { column, columnFixed, row, rowFixed } = reference;
  const columnText = column === null ? '' : (columnFixed ? '$' : '') + columnLetters(column);
  const rowText = row === null ? '' : (rowFixed ? '$' : '') + String(row);
  return columnText + rowText;
}

/** Where the bracket that opens at `start` closes; an apostrophe escapes the sign after it. */
function bracketEnd(formula: string, start: number): number {
  let depth = 0;
  for (let at = start; at < formula.length; at++) {
    const sign = formula[at];
    if (sign === "'") at++;
    else if (sign === '[') depth++;
    else if (sign === ']' && --depth === 0) return at + 1;
  }
  return formula.length;
}

/** `[1]Stock!`: where the tab of another workbook ends, or null where the bracket is a structured reference. */
function qualifierAfterBook(formula: string, end: number): number | null {
  QUALIFIER.lastIndex = end;
  const match = QUALIFIER.exec(formula);
  return match ? end + match[0].length : null;
}
