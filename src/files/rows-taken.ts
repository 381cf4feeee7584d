/** Rows taken out of a table: those below them in the table move up, within its columns. */
export interface RowsTaken {
  readonly tab: string;
  /** The rows of the tab that go, in their order, none twice. */
  readonly rows: readonly number[];
  /** The first of them. */
  readonly at: number;
  readonly taken: number;
  /** The table's columns, and the last row of its body. */
  readonly firstColumn: number;
  readonly lastColumn: number;
  readonly lastRow: number;
}

/** How many of the rows that go stand above a row. */
export function takenAbove({ rows }: RowsTaken, row: number): number {
  let low = 0;
  let high = rows.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((rows[middle] ?? 0) < row) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Whether a row is one of those that go. */
export function isTaken(taken: RowsTaken, row: number): boolean {
  return taken.rows[takenAbove(taken, row)] === row;
}
