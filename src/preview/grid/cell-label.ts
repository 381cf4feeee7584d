import { columnLetters } from '../../files/cell-reference.ts';
import type { ShownCell } from '../../files/tab-cells.ts';
import type { CellText } from '../model/cell-text.ts';
import type { CellPosition } from './cell-position.ts';

/** What a screen reader says of a cell: its column's name in the table, where it stands, and what it holds. */
export function cellLabel(
  { row, column }: CellPosition,
  header: string | null,
  cell: ShownCell | undefined,
  shown: CellText,
): string {
  const place = `${columnLetters(column)}${row}`;
  const content = shown.trouble === 'no result' ? 'a formula without a result' : shown.text || 'blank';
  const formula = cell?.formula != null && shown.trouble === null ? ', by a formula' : '';
  return `${header ? `${header}, ` : ''}${place}: ${content}${formula}`;
}
