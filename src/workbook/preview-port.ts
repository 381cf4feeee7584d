import type { LiveWorkbook } from './live-workbook.ts';
import type { CopyOutcome } from './workbook-copy.ts';

/**
 * What the preview page offers to the pane in its frame, as `window.jarleaf` of the page: the workbook without a
 * spreadsheet program between. Objects cross from one window to another here, so what crosses is plain data and
 * functions, never told apart by `instanceof`.
 */
export interface PreviewPort {
  readonly workbook: LiveWorkbook;
  /** Copies the workbook as it stands; the changed copy is saved to a place that the person chooses. */
  copy(): Promise<CopyOutcome>;
  /** The day that the page says it is, YYYY-MM-DD. */
  readonly today: () => string;
  /** Is called with the new day whenever the person sets another one; the function given back ends that. */
  onToday(listener: (today: string) => void): () => void;
  /**
   * Lets cells of the page such as =JARLEAF.LEFT("kozo tissue") be worked out by the pane.
   * @returns a function to call when answers may have changed: the cells on view are asked again
   */
  registerFunctions(evaluate: CellFunctionEvaluator): () => void;
}

/** What a cell gives a function, and what it gets back, in the spreadsheet's own terms. */
export type CellFunctionValue = string | number | boolean | null;

/**
 * Works out one call.
 * @param name as a cell writes it, in capitals: JARLEAF.LEFT
 * @returns the value, or what the cell shows instead, such as { error: '#N/A' }
 */
export type CellFunctionEvaluator = (
  name: string,
  args: readonly CellFunctionValue[],
) => string | number | { readonly error: string };
