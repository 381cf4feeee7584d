import type { Signal } from '@preact/signals';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { deleteChosenRows, stepBack, stepForward } from '../model/edits.ts';
import { ConfirmDialog } from './confirm-dialog.tsx';
import { KeysDialog } from './keys-dialog.tsx';
import type { Workplace } from './workplace.ts';

/** Which half of the page is in view where there is no room for both. */
export type Half = 'workbook' | 'pane';

/** What would be lost with the changes that were not saved. */
type Leaving = 'open' | 'start again';

export function Toolbar({
  workplace,
  half,
}: {
  readonly workplace: Workplace;
  readonly half: Signal<Half>;
}): JSX.Element {
  const { bench, today, file } = workplace;
  void bench.version.value;
  const source = bench.source.value;
  const [keysShown, setKeysShown] = useState(false);
  const [leaving, setLeaving] = useState<Leaving | null>(null);
  const leave = (how: Leaving): void => {
    setLeaving(null);
    if (how === 'open') void workplace.openFromDisk();
    else workplace.startAgain();
  };
  const ask = (how: Leaving): void => {
    if (bench.unsaved.value) setLeaving(how);
    else leave(how);
  };
  return (
    <section class="toolbar" aria-label="File and day">
      <h1 class="toolbar-name">
        {file.value.name}
        <span class="toolbar-unsaved">{bench.unsaved.value ? 'not saved' : ''}</span>
      </h1>
      <div class="toolbar-group">
        <button type="button" onClick={() => ask('open')}>
          Open…
        </button>
        <button type="button" onClick={() => void workplace.save()}>
          Save
        </button>
        <button type="button" onClick={() => ask('start again')}>
          Start again
        </button>
      </div>
      <div class="toolbar-group">
        {/* Not disabled: the focus would be lost with the last step. */}
        <button type="button" aria-disabled={!source.canUndo} onClick={() => stepBack(bench)}>
          Undo
        </button>
        {source.knowsRedo ? (
          <button type="button" aria-disabled={!source.canRedo} onClick={() => stepForward(bench)}>
            Redo
          </button>
        ) : null}
        <button type="button" title="Ctrl and minus" onClick={() => deleteChosenRows(bench)}>
          Delete rows
        </button>
      </div>
      <label class="toolbar-day">
        Today is
        <input
          type="date"
          required
          // While a year is typed, what stands there is for a moment a day of long ago.
          min="1900-01-01"
          max="9999-12-31"
          value={today.day.value}
          onChange={({ currentTarget }) => {
            if (currentTarget.validity.valid) today.set(currentTarget.value);
          }}
        />
      </label>
      <button type="button" onClick={() => setKeysShown(true)}>
        Keys
      </button>
      <button
        type="button"
        class="toolbar-half"
        onClick={() => {
          half.value = half.value === 'pane' ? 'workbook' : 'pane';
        }}
      >
        {half.value === 'pane' ? 'Show the workbook' : 'Show the pane'}
      </button>
      {keysShown ? <KeysDialog knowsRedo={source.knowsRedo} onClose={() => setKeysShown(false)} /> : null}
      {leaving === null ? null : (
        <ConfirmDialog
          title="There are changes that were not saved"
          text={`They are lost if you ${leaving === 'open' ? 'open another file' : 'start again'} now.`}
          confirm={leaving === 'open' ? 'Open another file' : 'Start again'}
          onConfirm={() => leave(leaving)}
          onCancel={() => setLeaving(null)}
        />
      )}
    </section>
  );
}
