import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

/** Asks before something is lost. Keeping is what Enter and Esc do. */
export function ConfirmDialog(props: {
  readonly title: string;
  readonly text: string;
  readonly confirm: string;
  readonly onConfirm: () => void;
  readonly onCancel: () => void;
}): JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} class="dialog" aria-labelledby="dialog-title" onClose={props.onCancel}>
      <h2 id="dialog-title">{props.title}</h2>
      <p>{props.text}</p>
      <div class="dialog-actions">
        <button type="button" onClick={() => dialog.current?.close()}>
          Keep working
        </button>
        <button type="button" onClick={props.onConfirm}>
          {props.confirm}
        </button>
      </div>
    </dialog>
  );
}
