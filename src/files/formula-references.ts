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
  /** Of a cell that is one corner of a range, the row of the other corner; else null. */
  readonly otherRow: number | null;
}

const STRING = /"(?:[^"]|"")*"/y;
/** A table's name directly before the bracket of a structured reference. */
const TABLE_NAME = /[\p{L}_\\][\p{L}\p{N}_.\\]*(?=\[)/uy;
const QUALIFIER = /(?:'((?:[^']|'')*)'|([\p{L}\p{N}_.\\[\]:]+))!/uy;
const CELL = /(\$?)([A-Za-z]{1,3})(\$?)([0-9]{1,7})(?![\p{L}\p{N}_.\\(!])/uy;
const ROWS = /(\$?)([0-9]{1,7}):(\$?)([0-9]{1,7})(?![\p{L}\p{N}_.])/uy;
const COLUMNS = /(\$?)([A-Za-z]{1,3}):(\$?)([A-Za-z]{1,3})(?![\p{L}\p{N}_.\\(!$])/uy;
const LAST_CORNER = /^:\$?[A-Za-z]{1,3}\$?([0-9]{1,7})/;
const WORD = /[\p{L}_\\][\p{L}\p{N}_.\\?]*|[0-9][0-9.]*(?:[eE][+-]?[0-9]+)?/uy;

type Rewrite = (reference: FormulaReference) => FormulaReference | null;

/**
 * Rewrites the A1 references of a formula, leaving strings, names, structured references and other workbooks'
 * cells alone. `rewrite` gives a reference back, or null where it no longer exists (#REF!).
 */
export function mapReferences(formula: string, rewrite: Rewrite): string {
  return new ReferenceMapper(formula, rewrite).run();
}

/** Goes through a formula once, from token to token. */
class ReferenceMapper {
  readonly #formula: string;
  readonly #rewrite: Rewrite;
  #at = 0;
  #written = '';
  /** The row of the cell before, perhaps the first corner of a range. */
  #firstRow: number | null = null;
  /** What stood before the last `!`, as long as it holds. */
  #tab: string | null = null;
  /** Whether that is in another workbook, or spans several tabs. */
  #foreign = false;

  constructor(formula: string, rewrite: Rewrite) {
    this.#formula = formula;
    this.#rewrite = rewrite;
  }

  run(): string {
    while (this.#at < this.#formula.length) {
      const done = this.#copyOpaque() || this.#copyBracket() || this.#copyQualifier() || this.#mapReference();
      if (!done) this.#copyWord();
    }
    return this.#written;
  }

  #match(pattern: RegExp): RegExpExecArray | null {
    pattern.lastIndex = this.#at;
    return pattern.exec(this.#formula);
  }

  #copy(text: string): true {
    this.#written += text;
    this.#at += text.length;
    return true;
  }

  #copyOpaque(): boolean {
    const found = this.#match(STRING) ?? this.#match(TABLE_NAME);
    return found !== null && this.#copy(found[0]);
  }

  /** A bracket holds a column of a table, or the workbook before a tab: `[1]Stock!`. */
  #copyBracket(): boolean {
    if (this.#formula[this.#at] !== '[') return false;
    this.#copy(this.#formula.slice(this.#at, bracketEnd(this.#formula, this.#at)));
    const qualifier = this.#match(QUALIFIER);
    if (qualifier) {
      this.#foreign = true;
      this.#copy(qualifier[0]);
    }
    return true;
  }

  #copyQualifier(): boolean {
    const qualifier = this.#match(QUALIFIER);
    // Behind "Stock!" a range may name its tab again (Stock!A1:Stock!B5); elsewhere a colon spans tabs.
    if (!qualifier || (this.#tab !== null && qualifier[0].includes(':'))) return false;
    this.#tab = qualifier[1]?.replaceAll("''", "'") ?? qualifier[2] ?? '';
    this.#foreign = this.#tab.includes('[') || this.#tab.includes(':');
    return this.#copy(qualifier[0]);
  }

  #mapReference(): boolean {
    const rows = this.#match(ROWS);
    const columns = rows ? null : this.#match(COLUMNS);
    const cell = rows || columns ? null : this.#match(CELL);
    const match = rows ?? columns ?? cell;
    if (!match || !isReference(rows, columns, cell)) return false;
    const [source, firstSign = '', first = '', secondSign = '', second = ''] = match;
    if (this.#foreign) this.#written += source;
    else if (cell) {
      const column = { column: columnNumber(first), columnFixed: firstSign === '$' };
      const otherRow = this.#otherRow(source);
      const place = { ...column, row: Number(second), rowFixed: secondSign === '$', otherRow };
      this.#firstRow = place.row;
      this.#written += this.#mapped(place, source);
    } else {
      const half = rows ? wholeRow : wholeColumn;
      const from = this.#mapped(half(firstSign, first), firstSign + first);
      this.#written += `${from}:${this.#mapped(half(secondSign, second), secondSign + second)}`;
    }
    this.#at += source.length;
    // The tab holds on to the other end of a range: Stock!A1:B5.
    if (this.#formula[this.#at] !== ':') this.#forgetTab();
    return true;
  }

  /** The row of the other corner of a range that a cell belongs to. */
  #otherRow(source: string): number | null {
    if (this.#formula[this.#at - 1] === ':') return this.#firstRow;
    const end = this.#at + source.length;
    const other = this.#formula[end] === ':' ? LAST_CORNER.exec(this.#formula.slice(end)) : null;
    return other ? Number(other[1]) : null;
  }

  #copyWord(): void {
    const step = this.#match(WORD)?.[0] ?? this.#formula.charAt(this.#at);
    if (step !== ':') this.#forgetTab();
    this.#copy(step);
  }

  #forgetTab(): void {
    this.#tab = null;
    this.#foreign = false;
  }

  /** The reference as it reads now; as it was written (perhaps in small letters) where it stays the same. */
  #mapped(place: Omit<FormulaReference, 'tab'>, source: string): string {
    const reference = { ...place, tab: this.#tab };
    const result = this.#rewrite(reference);
    if (result === reference) return source;
    return result === null ? '#REF!' : referenceText(result);
  }
}

function wholeRow(sign: string, row: string): Omit<FormulaReference, 'tab'> {
  return { column: null, columnFixed: false, row: Number(row), rowFixed: sign === '$', otherRow: null };
}

function wholeColumn(sign: string, column: string): Omit<FormulaReference, 'tab'> {
  return {
    column: columnNumber(column),
    columnFixed: sign === '$',
    row: null,
    rowFixed: false,
    otherRow: null,
  };
}

function isReference(
  rows: RegExpExecArray | null,
  columns: RegExpExecArray | null,
  cell: RegExpExecArray | null,
): boolean {
  if (rows) return rowFits(rows[2]) && rowFits(rows[4]);
  if (columns) return columnFits(columns[2]) && columnFits(columns[4]);
  return cell !== null && columnFits(cell[2]) && rowFits(cell[4]);
}

function rowFits(row: string | undefined): boolean {
  return Number(row) >= 1 && Number(row) <= MAX_ROWS;
}

function columnFits(column: string | undefined): boolean {
  return columnNumber(column ?? '') <= MAX_COLUMNS;
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
