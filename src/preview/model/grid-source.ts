import type { DateSystem } from '../../core/serial-date.ts';
import type { ShownCell } from '../../files/tab-cells.ts';
import type { TabShape } from '../../files/tab-shape.ts';
import type { TypedCellAt } from '../../files/typed-cell.ts';

/** What the grid shows and edits, whatever holds the workbook. Nothing that a person can cause is thrown. */
export interface GridSource {
  readonly dateSystem: DateSystem;
  /** The tabs in their order, hidden ones too. */
  tabs(): readonly TabShape[];
  /** The cells of a row of a tab that hold something, by column; rows and columns count from 1. */
  row(tab: string, row: number): readonly ShownCell[];
  /** Whether a cell holds a value or a formula. */
  isFilled(tab: string, row: number, column: number): boolean;
  /** Writes what the person typed or pasted, all of it or nothing. */
  type(tab: string, cells: readonly TypedCellAt[]): EditOutcome;
  /** Takes rows out of a table; body rows count from 0. */
  removeRows(table: string, first: number, count: number): EditOutcome;
  readonly canUndo: boolean;
  /** Whether what was undone can be done again at all. */
  readonly knowsRedo: boolean;
  readonly canRedo: boolean;
  undo(): EditOutcome;
  redo(): EditOutcome;
  /** Calls whenever anything has changed, whoever did it; the function given back ends that. */
  onChange(listener: () => void): () => void;
  /** What it holds now, to ask later whether it holds that again. */
  state(): GridState;
  isAt(state: GridState): boolean;
  /** The whole workbook as a file. */
  save(): SaveOutcome;
}

/** Known only to the source that gave it. */
export type GridState = unknown;

export type EditOutcome =
  | { readonly kind: 'done' }
  /** Nothing was changed; the message says what is in the way. */
  | { readonly kind: 'refused'; readonly message: string };

export type SaveOutcome =
  | { readonly kind: 'saved'; readonly bytes: Uint8Array }
  | { readonly kind: 'refused'; readonly message: string };

export const DONE: EditOutcome = { kind: 'done' };
