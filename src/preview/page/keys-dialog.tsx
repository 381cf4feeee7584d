import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

const KEYS: readonly (readonly [keys: string, what: string])[] = [
  ['Arrows, Home, End, Page up, Page down', 'go from cell to cell'],
  ['Ctrl and an arrow', 'to the end of what is filled'],
  ['Shift with any of them', 'chooses several cells'],
  ['Enter or F2', 'types in the cell; typing at once replaces what is there'],
  ['Enter, Tab', 'takes what was typed and goes on; Alt and Enter begins another line'],
  ['Esc', 'leaves the cell as it was'],
  ['Delete', 'makes the chosen cells blank'],
  ['Ctrl and C, X, V', 'copies, cuts, pastes'],
  ['Ctrl and minus', 'deletes the chosen rows of a table'],
  ['F6', 'to the next part of the page: bar, line, cells, tabs, pane'],
];

const UNDO = ['Ctrl and Z, Ctrl and Y', 'undoes, does again'] as const;
const UNDO_ONLY = [
  'Ctrl and Z',
  'undoes; what was undone can’t be done again where the pane goes through the spreadsheet’s script',
] as const;

/** What the keys do. */
export function KeysDialog({
  knowsRedo,
  onClose,
}: {
  readonly knowsRedo: boolean;
  readonly onClose: () => void;
}): JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} class="dialog dialog-keys" aria-labelledby="keys-title" onClose={onClose}>
      <h2 id="keys-title">Keys</h2>
      <dl>
        {[...KEYS, knowsRedo ? UNDO : UNDO_ONLY].map(([keys, what]) => (
          <div key={keys}>
            <dt>{keys}</dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
      <div class="dialog-actions">
        <button type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
    </dialog>
  );
}
