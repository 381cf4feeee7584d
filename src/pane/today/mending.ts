import type { Mend } from '../../actions/check-workbook.ts';
import type { Done } from '../../session/session-state.ts';
import type { PaneSession } from '../pane-session.ts';

/** What a button under a notice says and does. */
export interface Mending {
  readonly label: string;
  readonly run: () => Promise<Done>;
}

/** The button that mends a notice. */
export function mendOf(mend: Mend, session: PaneSession): Mending {
  switch (mend.kind) {
    case 'draw':
      return { label: 'Draw it', run: () => session.draw([mend.entry]) };
    case 'redraw':
      return { label: 'Draw the difference', run: () => session.redraw(mend.entry) };
    case 'post count':
      return { label: 'Post the count', run: () => session.postCount(mend.lot) };
  }
}
