import { counted } from '../../core/wording.ts';
import type { Question } from '../../session/session-state.ts';
import { keepingFocus } from '../focus.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Banner } from '../parts/layout.tsx';
import { rowsGoneWords } from './question-words.ts';

/** What needs the person's answer besides the notices. */
export function Questions() {
  const { questions } = usePane().view.value;
  return (
    <>
      {questions.map((question) => (
        <QuestionBanner key={keyOfQuestion(question)} question={question} />
      ))}
    </>
  );
}

function QuestionBanner({ question }: { readonly question: Question }) {
  const { session, view, act } = usePane();
  const busy = view.value.busy !== null;
  switch (question.kind) {
    case 'rows gone': {
      const rows = question.movements + question.entries;
      return (
        <Banner
          tone="stop"
          title={`${counted(rows, 'row is', 'rows are')} gone`}
          actions={
            <>
              <Button unavailable={busy} onPress={() => act(() => session.writeAgain())}>
                {rows === 1 ? 'Write it again' : 'Write them again'}
              </Button>
              <Button unavailable={busy} onPress={() => keepingFocus(() => session.letGo())}>
                {rows === 1 ? 'Let it go' : 'Let them go'}
              </Button>
            </>
          }
        >
          {rowsGoneWords(question)}
        </Banner>
      );
    }
    case 'clash':
      return (
        <Banner
          tone="stop"
          title={`Lot ${question.lot.name} was drawn on twice at the same time`}
          actions={
            <Button unavailable={busy} onPress={() => act(() => session.redraw(question.entry))}>
              Take it from another lot
            </Button>
          }
        >
          {`Somebody else drew on lot ${question.lot.name} of ${question.lot.material.name} while entry ${question.entry.name} was written, and more is taken than was left.`}
        </Banner>
      );
    case 'half':
      return (
        <Banner
          tone="stop"
          title="Only a part was written"
          actions={
            <>
              <Button unavailable={busy} onPress={() => act(() => session.finish(question.posting))}>
                Finish it
              </Button>
              <Button
                unavailable={busy}
                onPress={() => act(() => session.undo(question.posting), { undoable: false })}
              >
                Take it back
              </Button>
            </>
          }
        >
          {question.message}
        </Banner>
      );
  }
}

function keyOfQuestion(question: Question): string {
  switch (question.kind) {
    case 'rows gone':
      return question.kind;
    case 'clash':
      return `clash ${question.lot.name} ${question.entry.name}`;
    case 'half':
      return `half ${question.posting}`;
  }
}
