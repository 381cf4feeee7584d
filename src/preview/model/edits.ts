import { MAX_COLUMNS, MAX_ROWS } from '../../files/limits.ts';
import type { TypedCell, TypedCellAt } from '../../files/typed-cell.ts';
import { type Block, blockOf, type CellPosition } from '../grid/cell-position.ts';
import { parseBlock, writeBlock } from './cell-block.ts';
import { inputOf, parseInput } from './cell-input.ts';
import { cellText } from './cell-text.ts';
import { readableFormula, storedFormula } from './function-cells.ts';
import { DONE, type EditOutcome } from './grid-source.ts';
import type { Workbench } from './workbench.ts';

const PLAIN = { format: 'General', look: 'plain' } as const;
/** More cells than a person copies by hand; a whole column of a tab would freeze the page. */
const MOST_CELLS = 500_000;

/** What stands in the editor for a cell. */
export function editorText(bench: Workbench, cell: CellPosition): string {
  const shown = bench.cell(cell);
  const text = inputOf(shown, bench.source.value.dateSystem);
  return shown?.formula == null ? text : readableFormula(text);
}

function meaning(bench: Workbench, cell: CellPosition, text: string): TypedCell {
  const typed = parseInput(text, bench.cell(cell) ?? PLAIN, bench.source.value.dateSystem);
  return typed.kind === 'formula' ? { kind: 'formula', formula: storedFormula(typed.formula) } : typed;
}

/** Writes what was typed into a cell; nothing happens where it was left as it stood. */
export function typeInto(bench: Workbench, cell: CellPosition, text: string): EditOutcome {
  if (text === editorText(bench, cell)) return DONE;
  return told(
    bench,
    bench.source.value.type(bench.tab.value, [{ ...cell, cell: meaning(bench, cell, text) }]),
  );
}

/** Makes the chosen cells blank. */
export function clearChosen(bench: Workbench): EditOutcome {
  const block = filledPart(bench, blockOf(bench.selection.value));
  if (!block) return DONE;
  const cells: TypedCellAt[] = [];
  for (let row = block.firstRow; row <= block.lastRow; row++) {
    for (const { column, value, formula } of bench.row(row)) {
      if (column < block.firstColumn || column > block.lastColumn) continue;
      if (value !== null || formula !== null) cells.push({ row, column, cell: { kind: 'blank' } });
    }
  }
  return told(bench, bench.source.value.type(bench.tab.value, cells));
}

/** The part of a block that lies in the used area of the tab. */
function filledPart(bench: Workbench, block: Block): Block | null {
  const shape = bench.shape;
  if (!shape) return null;
  const lastRow = Math.min(block.lastRow, shape.lastRow);
  const lastColumn = Math.min(block.lastColumn, shape.lastColumn);
  return lastRow < block.firstRow || lastColumn < block.firstColumn
    ? null
    : { ...block, lastRow, lastColumn };
}

/** The chosen cells as they are shown, for the clipboard. */
export function copyChosen(bench: Workbench): string | null {
  const block = blockOf(bench.selection.value);
  const rows = block.lastRow - block.firstRow + 1;
  const columns = block.lastColumn - block.firstColumn + 1;
  if (rows * columns > MOST_CELLS) {
    bench.say(
      'problem',
      `That is more than ${MOST_CELLS.toLocaleString('en-GB')} cells, too many to copy at once.`,
    );
    return null;
  }
  bench.say('news', `${rows} by ${columns} cells copied.`);
  return writeBlock(
    Array.from({ length: rows }, (_, index) => {
      const cells = bench.row(block.firstRow + index);
      return Array.from({ length: columns }, (__, place) => {
        const cell = cells.find(({ column }) => column === block.firstColumn + place);
        return cellText(cell, bench.source.value.dateSystem).text;
      });
    }),
  );
}

/** Writes a block of cells from the clipboard, its first cell into the first chosen one; one cell fills all chosen. */
export function paste(bench: Workbench, text: string): EditOutcome {
  const block = blockOf(bench.selection.value);
  const rows = parseBlock(text);
  const [only] = rows;
  const fills = rows.length === 1 && only?.length === 1;
  const height = fills ? block.lastRow - block.firstRow + 1 : rows.length;
  const cells: TypedCellAt[] = [];
  for (let index = 0; index < height; index++) {
    const given = fills
      ? Array.from({ length: block.lastColumn - block.firstColumn + 1 }, () => only?.[0] ?? '')
      : (rows[index] ?? []);
    given.forEach((typed, place) => {
      const cell = { row: block.firstRow + index, column: block.firstColumn + place };
      if (cell.row <= MAX_ROWS && cell.column <= MAX_COLUMNS)
        cells.push({ ...cell, cell: meaning(bench, cell, typed) });
    });
  }
  if (cells.length > MOST_CELLS) {
    return told(bench, {
      kind: 'refused',
      message: `That is more than ${MOST_CELLS} cells, too many to paste at once.`,
    });
  }
  const outcome = told(bench, bench.source.value.type(bench.tab.value, cells));
  if (outcome.kind === 'done' && cells.length > 1) bench.say('news', `${cells.length} cells pasted.`);
  return outcome;
}

/** Takes the chosen rows out of their table. */
export function deleteChosenRows(bench: Workbench): EditOutcome {
  const block = blockOf(bench.selection.value);
  const table = bench.tableAt({ row: block.firstRow, column: block.firstColumn });
  const first = table ? block.firstRow - table.area.firstRow - table.headerRows : -1;
  const lastBody = table ? table.area.lastRow - table.totalsRows : 0;
  if (!table || first < 0 || block.lastRow > lastBody) {
    return told(bench, {
      kind: 'refused',
      message: 'Choose cells in the rows of one table; those rows are deleted.',
    });
  }
  const count = block.lastRow - block.firstRow + 1;
  const outcome = told(bench, bench.source.value.removeRows(table.name, first, count));
  if (outcome.kind === 'done') {
    bench.say(
      'news',
      `${count === 1 ? 'One row' : `${count} rows`} of ${table.name} deleted. Undo brings them back.`,
    );
  }
  return outcome;
}

export function stepBack(bench: Workbench): EditOutcome {
  const outcome = told(bench, bench.source.value.undo());
  if (outcome.kind === 'done') bench.say('news', 'Undone.');
  return outcome;
}

export function stepForward(bench: Workbench): EditOutcome {
  const outcome = told(bench, bench.source.value.redo());
  if (outcome.kind === 'done') bench.say('news', 'Done again.');
  return outcome;
}

/** Says what is in the way; a problem that was said before goes once something has worked. */
function told(bench: Workbench, outcome: EditOutcome): EditOutcome {
  if (outcome.kind === 'refused') bench.say('problem', outcome.message);
  else if (bench.announcement.value.kind === 'problem') bench.say('news', '');
  return outcome;
}
