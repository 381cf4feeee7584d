import { useEffect } from 'preact/hooks';
import type { Books } from '../../session/session-state.ts';
import { focusField } from '../focus.ts';
import { Button } from '../parts/button.tsx';
import { Banner } from '../parts/layout.tsx';
import { waitingPreset } from '../route.ts';
import { holdsTyping, withPreset } from './draft.ts';
import { offeredJob } from './log-options.ts';
import { changeDraft, leftFields, logDraft } from './log-state.ts';

/** Fills in what she chose elsewhere; where that would overwrite what she typed, it asks first. */
export function PresetQuestion({ books }: { readonly books: Books }) {
  const preset = waitingPreset.value;
  const asks = preset !== null && preset.treatment !== null && holdsTyping(logDraft.value);
  const fillIn = (): void => {
    if (preset === null) return;
    changeDraft(offeredJob(books.ledger.studio), (draft) => withPreset(draft, preset));
    leftFields.value = new Set();
    waitingPreset.value = null;
    // Only how much is left to be looked at; then Enter logs it.
    if (preset.treatment !== null) focusField('log-extent');
  };
  useEffect(() => {
    if (!asks) fillIn();
  });
  if (!asks || preset === null) return null;
  const what = [preset.treatment, preset.job].filter((part) => part !== null).join(', ');
  return (
    <Banner
      tone="note"
      title={`Fill in from the row? ${what}`}
      actions={
        <>
          <Button onPress={fillIn}>Yes, fill in</Button>
          <Button
            onPress={() => {
              waitingPreset.value = null;
              focusField('log-treatment');
            }}
          >
            Keep mine
          </Button>
        </>
      }
    >
      The form below holds something that you typed and have not logged yet.
    </Banner>
  );
}
