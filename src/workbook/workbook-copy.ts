import type { Change, WorkbookSnapshot } from './port.ts';
import type { TableRows } from './without-rows.ts';

/** A copy of the open workbook, apart from it: what is changed in the copy changes nothing in the open one. */
export interface WorkbookCopy {
  /** The name of the open workbook's file, such as "Paper stock.xlsx"; null where it has none yet. */
  readonly fileName: string | null;
  readonly snapshot: WorkbookSnapshot;
  /**
   * Changes the copy, takes rows out of it, and hands it to the person as a workbook of its own.
   * @param removed body rows as they are numbered before and after the changes, which only append
   * @param name what the file would be called, with its ending; a program may leave the naming to the person
   */
  handOver(changes: readonly Change[], removed: readonly TableRows[], name: string): Promise<HandOverOutcome>;
}

export type CopyOutcome =
  | { readonly kind: 'copied'; readonly copy: WorkbookCopy }
  /** The message says what is in the way and what to do. */
  | { readonly kind: 'failed'; readonly message: string };

export type HandOverOutcome =
  /** It is open in a window of its own, and not saved yet. */
  | { readonly kind: 'opened' }
  | { readonly kind: 'saved'; readonly name: string }
  /** The person chose no place for it, so there is none. */
  | { readonly kind: 'cancelled' }
  | { readonly kind: 'failed'; readonly message: string };

/** Copies the open workbook as it stands. What a person or the program can cause is never thrown. */
export type CopyWorkbook = () => Promise<CopyOutcome>;
