import type { TabBlueprint } from './blueprint.ts';
import type { Change, WorkbookSnapshot } from './port.ts';

/**
 * The gate to a workbook that is open while people work in it: in a spreadsheet program, or in the preview over a
 * file. Every method answers with what happened; what a person or the program behind it can cause is never thrown.
 */
export interface LiveWorkbook {
  /** Reads every table, in a number of round trips that depends on the size of the workbook, not on its rows. */
  read(): Promise<ReadOutcome>;

  /**
   * Carries out changes and reads back what was written.
   * @param basis the snapshot that the changes were worked out from; where the rows that they touch have moved or
   *   hold something else by now, nothing is written
   */
  write(changes: readonly Change[], basis: WorkbookSnapshot): Promise<WriteOutcome>;

  /**
   * Adds tabs with their tables behind the tabs that are there. A tab whose name is taken gets another one; a table
   * whose name is taken is left out. Nothing else is touched.
   */
  addTabs(tabs: readonly TabBlueprint[]): Promise<WriteOutcome>;

  /** Brings a cell into view and chooses it. */
  goTo(cell: TabCell): Promise<GoToOutcome>;

  /** Tells of what happens in the workbook, until it is stopped. */
  listen(listener: LiveListener): Promise<ListenOutcome>;
}

/** A cell by its tab; rows and columns are counted as the spreadsheet does, from 1. */
export interface TabCell {
  readonly tab: string;
  readonly row: number;
  readonly column: number;
}

/** Who changed the workbook: the person at this machine (typing, pasting, undoing), or somebody elsewhere. */
export type Changer = 'person' | 'other';

export interface LiveListener {
  /** Something was changed; never for what `write` and `addTabs` of this gate wrote themselves. */
  readonly changed: (by: Changer) => void;
  /** The person has chosen another cell, or range: its first cell. */
  readonly selected: (cell: TabCell) => void;
}

export type ReadOutcome =
  | { readonly kind: 'read'; readonly snapshot: WorkbookSnapshot }
  /** The message says what is in the way and what to do. */
  | { readonly kind: 'failed'; readonly message: string };

export type WriteOutcome =
  /** All of it stands; the snapshot holds it. */
  | { readonly kind: 'written'; readonly snapshot: WorkbookSnapshot }
  /** Something has changed since the basis was read, and nothing was written: work it out again from this. */
  | { readonly kind: 'stale'; readonly snapshot: WorkbookSnapshot }
  /** Nothing was written. */
  | { readonly kind: 'failed'; readonly message: string }
  /** Some of it stands, some does not, and it could not be taken back. */
  | { readonly kind: 'half'; readonly snapshot: WorkbookSnapshot; readonly message: string };

export type GoToOutcome = { readonly kind: 'there' } | { readonly kind: 'failed'; readonly message: string };

export type ListenOutcome =
  | { readonly kind: 'listening'; readonly stop: () => Promise<void> }
  /** Nothing will be told; the message says why. */
  | { readonly kind: 'failed'; readonly message: string };
