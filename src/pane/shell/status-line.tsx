import { FOCUS_KEEPER, keepingFocus } from '../focus.ts';
import type { DoneNews } from '../news.ts';
import { usePane } from '../pane-context.ts';
import { Button, IconButton } from '../parts/button.tsx';
import { Prose } from '../parts/prose.tsx';
import { useAfter } from '../parts/use-after.ts';

/** After how long what is being done is said: what is quicker needs no word. */
const SAID_AFTER = 500;

/** What is being done, or what was done last and can be taken back. */
export function StatusLine() {
  const { view, news } = usePane();
  const { busy, state } = view.value;
  const said = useAfter(SAID_AFTER, busy !== null && state.kind !== 'starting');
  const done = news.done.value;
  return (
    <div class="status" data-focus-scope="" tabIndex={-1} {...{ [FOCUS_KEEPER]: '' }}>
      <div role="status" class="status-text">
        {said && <p>{`${busy ?? ''}…`}</p>}
        {!said && done !== null && <DoneText key={done.id} done={done} />}
      </div>
      {!said && done !== null && (
        <div class="status-buttons">
          <DoneButtons done={done} />
        </div>
      )}
    </div>
  );
}

function DoneText({ done }: { readonly done: DoneNews }) {
  return (
    <>
      <p>
        <Prose text={done.sentence} />
      </p>
      {done.remarks.length > 0 && (
        <ul class="plain-list">
          {done.remarks.map((remark) => (
            <li key={remark}>{remark}</li>
          ))}
        </ul>
      )}
    </>
  );
}

function DoneButtons({ done }: { readonly done: DoneNews }) {
  const { session, view, news, act } = usePane();
  const { posting } = done;
  return (
    <>
      {posting !== null && (
        <Button
          unavailable={view.value.busy !== null}
          label={`Undo: ${done.sentence}`}
          onPress={() => act(() => session.undo(posting), { undoable: false })}
        >
          Undo
        </Button>
      )}
      <IconButton label="Dismiss" icon="close" onPress={() => keepingFocus(news.dismissDone)} />
    </>
  );
}
