import { liveAnswers } from '../functions/cell-calls.ts';
import {
  type CallArguments,
  evaluateCall,
  FUNCTION_NAMES,
  type FunctionBooks,
  type FunctionName,
} from '../functions/evaluate-call.ts';
import type { Session } from '../session/session.ts';
import type { Books } from '../session/session-state.ts';
import type { PreviewPort } from '../workbook/preview-port.ts';

const NAMESPACE = 'JARLEAF.';

/** Keeps the answers in the cells of people's own sheets up to date with a session's books. */
export function answerCells(session: Session, preview: PreviewPort | null): void {
  let published: Books | null = null;
  const repaint = preview?.registerFunctions((name, args) => {
    const known = FUNCTION_NAMES.find((each) => `${NAMESPACE}${each}` === name.toUpperCase());
    if (known === undefined) return { error: '#NAME?' };
    return published === null ? { error: '#BUSY!' } : shownResult(known, args, functionBooks(published));
  });
  const publish = (): void => {
    const { state } = session.view;
    if (state.kind === 'failed') liveAnswers.cannotRead(state.message);
    if (state.kind !== 'open' || state.books === published) return;
    published = state.books;
    liveAnswers.publish(functionBooks(published));
    repaint?.();
  };
  session.subscribe(publish);
  publish();
}

function functionBooks({ ledger, stock, snapshot }: Books): FunctionBooks {
  return { ledger, stock, dateSystem: snapshot.dateSystem };
}

function shownResult(name: FunctionName, args: CallArguments, books: FunctionBooks) {
  const result = evaluateCall(name, args, books);
  return 'value' in result ? result.value : { error: result.message };
}
