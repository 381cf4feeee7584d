import { areaName, type CellArea, cellName } from './cell-reference.ts';
import { escapeCellText } from './cell-text.ts';
import { FileRefused } from './file-refused.ts';
import { translateFormula } from './formula-shift.ts';
import { plainCellText } from './shared-strings.ts';
import { type RawFormula, readRow, rowPlace, type SheetText } from './sheet-rows.ts';
import { replaceInData } from './sheet-splice.ts';
import type { WorkbookState } from './workbook-state.ts';
import { attributeOf, openingTag, withAttribute } from './xml-tag.ts';
import { encodeXml } from './xml-text.ts';

/**
 * Prepares a cell that holds a formula for being overwritten. Cells that share its formula read it from the
 * first of them: where that one goes, the next takes over.
 * @throws FileRefused where the cell is the head of an array formula that fills several cells
 */
export function handOverSharedFormula(state: WorkbookState, part: string, row: number, column: number): void {
  const sheet = state.sheet(part);
  if (sheet.edits.get(row)?.has(column)) return;
  const place = rowPlace(sheet.text.rows, row);
  if (sheet.text.rows.numbers[place] !== row) return;
  const formula = readRow(sheet.text, place).cells.find((cell) => cell.column === column)?.formula;
  if (!formula) return;
  const kind = attributeOf(formula.tag, 't');
  if (kind === 'array' && attributeOf(formula.tag, 'ref')?.includes(':')) {
    throw new FileRefused(
      `${cellName(row, column)} on the tab ${sheet.text.tab} holds an array formula over several cells, of which ` +
        'one alone can’t be overwritten. Take the formula out first.',
    );
  }
  if (kind !== 'shared' || formula.source === '') return;
  const group = attributeOf(formula.tag, 'si') ?? '';
  const followers = followersOf(sheet.text, group).filter(
    (each) => !(each.row === row && each.column === column) && !sheet.edits.get(each.row)?.has(each.column),
  );
  const heir = followers[0];
  if (!heir) return;
  const area = boundsOf(followers);
  const text = translateFormula(plainCellText(formula.source), heir.row - row, heir.column - column);
  const tag = withAttribute(openingTag(heir.formula.tag), 'ref', areaName(area));
  const element = `${tag}${encodeXml(escapeCellText(text))}</${sheet.text.prefix}f>`;
  const spliced = replaceInData(sheet.text, [
    { start: heir.formula.start, end: heir.formula.end, text: element },
  ]);
  state.putSheet({ ...sheet, text: spliced, rewritten: true });
}

/** The formula of a cell as it reads there, for one of a shared group too; null where it holds none. */
export function formulaAt(sheet: SheetText, row: number, column: number): string | null {
  const place = rowPlace(sheet.rows, row);
  if (sheet.rows.numbers[place] !== row) return null;
  const formula = readRow(sheet, place).cells.find((cell) => cell.column === column)?.formula;
  if (!formula) return null;
  const own = plainCellText(formula.source);
  if (own !== '' || attributeOf(formula.tag, 't') !== 'shared') return own;
  const head = headOf(sheet, attributeOf(formula.tag, 'si') ?? '');
  return head ? translateFormula(head.formula, row - head.row, column - head.column) : null;
}

/** The cell that holds the formula of a shared group. */
function headOf(sheet: SheetText, group: string): { row: number; column: number; formula: string } | null {
  const pattern = /<(?:[^\s:<>/]+:)?f\s[^>]*?\bsi\s*=\s*["'](\d+)["'][^>]*(?<!\/)>(?!<)/g;
  for (const match of sheet.data.matchAll(pattern)) {
    if (match[1] !== group) continue;
    // The row that begins last before the match.
    let place = 0;
    for (let high = sheet.rows.starts.length; place < high; ) {
      const middle = (place + high) >> 1;
      if ((sheet.rows.starts[middle] as number) <= match.index) place = middle + 1;
      else high = middle;
    }
    const head = readRow(sheet, place - 1).cells.find((cell) => cell.formula?.start === match.index);
    if (!head?.formula) continue;
    const row = sheet.rows.numbers[place - 1] as number;
    return { row, column: head.column, formula: plainCellText(head.formula.source) };
  }
  return null;
}

interface Follower {
  readonly row: number;
  readonly column: number;
  readonly formula: RawFormula;
}

/** The cells that read their formula from the head of a shared group. */
function followersOf(sheet: SheetText, group: string): Follower[] {
  const followers: Follower[] = [];
  sheet.rows.numbers.forEach((row, place) => {
    const source = sheet.data.slice(sheet.rows.starts[place], sheet.rows.ends[place]);
    if (!source.includes('shared')) return;
    for (const { column, formula } of readRow(sheet, place).cells) {
      if (formula?.source !== '' || attributeOf(formula.tag, 't') !== 'shared') continue;
      if (attributeOf(formula.tag, 'si') === group) followers.push({ row, column, formula });
    }
  });
  return followers;
}

function boundsOf(cells: readonly Follower[]): CellArea {
  const rows = cells.map((cell) => cell.row);
  const columns = cells.map((cell) => cell.column);
  return {
    firstRow: Math.min(...rows),
    lastRow: Math.max(...rows),
    firstColumn: Math.min(...columns),
    lastColumn: Math.max(...columns),
  };
}
