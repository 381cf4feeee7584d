import type { ReadonlySignal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Done, SessionView } from '../session/session-state.ts';
import type { TabCell } from '../workbook/live-workbook.ts';
import type { News } from './news.ts';
import type { PaneSession } from './pane-session.ts';
import type { Planner } from './planner.ts';

/** What every part of the pane can reach. */
export interface PaneContext {
  readonly session: PaneSession;
  readonly planner: Planner;
  readonly view: ReadonlySignal<SessionView>;
  readonly news: News;
  /**
   * Does something and says how it ended: what was done in the status line, with Undo where it can be taken back;
   * anything else as a failure that stays. The focus is put back where it was if what had it is gone.
   * @returns how it ended, for what the caller does next; refused where something unforeseen went wrong
   */
  readonly act: (action: () => Promise<Done>, options?: ActOptions) => Promise<Done>;
  /** Brings a cell of the workbook into view. Only a failure is told. */
  readonly goTo: (cell: TabCell) => Promise<void>;
  /** Reads the workbook anew. */
  readonly readAgain: () => Promise<void>;
}

export interface ActOptions {
  /** False for what is not taken back by Undo, such as an undo itself. */
  readonly undoable?: boolean;
}

const context = createContext<PaneContext | null>(null);

export const PaneProvider = context.Provider;

/** The pane that a component stands in. */
export function usePane(): PaneContext {
  const pane = useContext(context);
  if (pane === null) throw new Error('this component stands outside the pane');
  return pane;
}
