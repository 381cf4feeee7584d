import { useEffect, useRef, useState } from 'preact/hooks';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';

export interface UndoButtonProps {
  readonly posting: string;
  /** What is taken back, for those who can't see where the button stands. */
  readonly what: string;
  /** What else is taken back with it; null where nothing is. */
  readonly besides?: string | null;
  /** It is lots that came in, and not what was drawn. */
  readonly isDelivery?: boolean;
}

const REVERSES = 'Undo puts it back by reversing rows; what was written stays to be read.';
const UNRECEIVES =
  'Undo counts what came in as nothing, and what came of an order is on order again. The rows of its lots stay to be read.';

/** Takes a posting back, once she has said so twice: the second button takes the focus, Escape keeps things as they are. */
export function UndoButton({ posting, what, besides = null, isDelivery = false }: UndoButtonProps) {
  const { act, session, view } = usePane();
  const [asks, setAsks] = useState(false);
  const first = useRef<HTMLButtonElement>(null);
  const yes = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (asks) yes.current?.focus();
  }, [asks]);
  const keep = (): void => {
    setAsks(false);
    requestAnimationFrame(() => first.current?.focus());
  };
  // For a key in either of the two buttons.
  const onEscape = {
    onKeyDown: (event: KeyboardEvent): void => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      keep();
    },
  };
  const busy = view.value.busy !== null;
  const back = isDelivery ? 'Take back' : 'Put back';
  if (!asks) {
    return (
      <Button
        look="quiet"
        label={`Undo ${what}`}
        unavailable={busy}
        buttonRef={first}
        onPress={() => setAsks(true)}
      >
        Undo
      </Button>
    );
  }
  return (
    <div class="log-undo" {...onEscape}>
      <p>
        {isDelivery ? UNRECEIVES : REVERSES}
        {besides !== null && ` ${besides}`}
      </p>
      <div class="actions">
        <Button
          unavailable={busy}
          label={`${back} ${what}`}
          buttonRef={yes}
          onPress={async () => {
            await act(() => session.undo(posting), { undoable: false });
            setAsks(false);
          }}
        >
          {back}
        </Button>
        <Button look="quiet" onPress={keep}>
          Keep it
        </Button>
      </div>
    </div>
  );
}
