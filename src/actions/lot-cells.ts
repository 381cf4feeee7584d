import type { Lot } from '../core/studio.ts';
import { setCell } from '../workbook/cell-write.ts';
import type { CellWrite, Change } from '../workbook/port.ts';
import { type Refusal, refuse, type WritingDesk } from './writing-desk.ts';

/** A cell of a lot's own row that is to be written. */
export interface LotCell {
  readonly header: string;
  readonly cell: CellWrite;
  /** Without it nothing of the act is kept: if it can't be written, nothing is done. */
  readonly needed: boolean;
}

/** The changes to a lot's row, and what of it could not be written. */
export interface LotCells {
  readonly changes: readonly Change[];
  readonly remarks: readonly string[];
}

/**
 * The changes that write cells of a lot's own row. A column that the table lacks, a formula of the user's, or what
 * can't be read stands in the way: of a needed cell that is a refusal, of another a remark.
 */
export function writeLotCells(desk: WritingDesk, lot: Lot, cells: readonly LotCell[]): LotCells | Refusal {
  const { place, unreadable } = lot.record;
  const table = desk.tables.get(place.table.toLowerCase());
  if (table === undefined) throw new Error(`lot ${lot.name} stands in no table that is read`);
  const { name } = table.snapshot;
  const lacking = cells.filter(({ header, cell }) => cell.kind !== 'blank' && !table.columns.has(header));
  const needed = lacking.filter((each) => each.needed).map(({ header }) => header);
  if (needed.length > 0) {
    return refuse(
      `The table ${name} has no ${columnsNamed(needed)}, where this must be written: add ${needed.length === 1 ? 'it' : 'them'}, ` +
        `or bring the tables up to date with upgrade.`,
    );
  }
  const changes: Change[] = [];
  const remarks = lacking.map(
    ({ header }) =>
      `The table ${name} has no column ${header}, so what belongs there is not kept: add it, or bring the tables up ` +
      `to date with upgrade.`,
  );
  for (const { header, cell, needed: isNeeded } of cells) {
    const column = table.columns.get(header)?.column;
    if (column === undefined) continue;
    const obstacle = column.hasFormula(place.row)
      ? `A formula stands in ${header} of lot ${lot.name} and is left alone`
      : unreadable.has(header)
        ? `${header} of lot ${lot.name} holds what can't be read and is left alone`
        : null;
    if (obstacle === null) changes.push(...setCell(table, place.row, header, cell));
    else if (isNeeded) return refuse(`${obstacle}: clear the cell, then this can be written there.`);
    else remarks.push(`${obstacle}: what belongs there is not kept.`);
  }
  return { changes, remarks };
}

function columnsNamed(headers: readonly string[]): string {
  const list = new Intl.ListFormat('en-GB').format(headers);
  return headers.length === 1 ? `column ${list}` : `columns ${list}`;
}
