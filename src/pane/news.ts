import { type ReadonlySignal, signal } from '@preact/signals';
import type { Done } from '../session/session-state.ts';

/** What the pane says after something was asked for. */
export interface News {
  /** What was done last; null before anything was, and after a failure. */
  readonly done: ReadonlySignal<DoneNews | null>;
  /** What went wrong and has not been dismissed, the oldest first. */
  readonly failures: ReadonlySignal<readonly Failure[]>;
  /** Takes in how something ended. */
  readonly take: (done: Done, undoable: boolean) => void;
  readonly fail: (message: string) => void;
  readonly dismiss: (failure: Failure) => void;
  readonly dismissDone: () => void;
}

export interface DoneNews {
  readonly id: number;
  readonly sentence: string;
  readonly remarks: readonly string[];
  /** By which it can be taken back; null where it can't. */
  readonly posting: string | null;
}

export interface Failure {
  readonly id: number;
  readonly message: string;
}

/** News with nothing in it yet. A failure stays until it is dismissed; the same one again replaces it. */
export function createNews(): News {
  const done = signal<DoneNews | null>(null);
  const failures = signal<readonly Failure[]>([]);
  let count = 0;
  const nextId = (): number => {
    count += 1;
    return count;
  };
  const fail = (message: string): void => {
    done.value = null;
    const others = failures.value.filter((failure) => failure.message !== message);
    failures.value = [...others, { id: nextId(), message }];
  };
  return {
    done,
    failures,
    fail,
    take: (outcome, undoable) => {
      if (outcome.kind !== 'done') {
        fail(outcome.message);
        return;
      }
      const { sentence, remarks, posting } = outcome;
      const before = done.value;
      // A second press on Draw all, say: what the first one did stays said, and its Undo within reach.
      done.value =
        before !== null && before.posting !== null && foundNothing(outcome)
          ? { ...before, id: nextId(), remarks: [sentence] }
          : { id: nextId(), sentence, remarks, posting: undoable ? posting : null };
    },
    dismiss: (failure) => {
      failures.value = failures.value.filter((each) => each !== failure);
    },
    dismissDone: () => {
      done.value = null;
    },
  };
}

/** Whether a drawing came to nothing: no lot holds what its entries still lack. */
function foundNothing({ drawing, posting }: Extract<Done, { kind: 'done' }>): boolean {
  return (
    posting === null &&
    drawing !== null &&
    drawing.movements.length === 0 &&
    drawing.entries.every(({ drawn }) => drawn === 'part')
  );
}
