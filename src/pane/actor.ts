import type { Done } from '../session/session-state.ts';
import { keepingFocus } from './focus.ts';
import type { News } from './news.ts';
import type { PaneContext } from './pane-context.ts';
import type { PaneSession } from './pane-session.ts';

/** How the pane asks a session for something: see PaneContext. */
export function createActor(
  session: PaneSession,
  news: News,
): Pick<PaneContext, 'act' | 'goTo' | 'readAgain'> {
  return {
    act: (action, { undoable = true } = {}) =>
      keepingFocus(async () => {
        const done = await settled(action);
        news.take(done, undoable);
        return done;
      }),
    goTo: async (cell) => {
      const done = await settled(() => session.goTo(cell));
      if (done.kind !== 'done') news.fail(done.message);
    },
    readAgain: () =>
      keepingFocus(async () => {
        try {
          await session.readAgain();
        } catch (fault) {
          news.fail(unforeseen(fault));
        }
      }),
  };
}

/** How an action ended; a fault of the program's own is told like a refusal, never kept quiet. */
async function settled(action: () => Promise<Done>): Promise<Done> {
  try {
    return await action();
  } catch (fault) {
    return { kind: 'refused', message: unforeseen(fault) };
  }
}

function unforeseen(fault: unknown): string {
  const what = fault instanceof Error ? fault.message : String(fault);
  return `Something unforeseen went wrong: ${what}. Look in the workbook what was written before you try again.`;
}
