import { signal } from '@preact/signals';
import type { Books } from '../../session/session-state.ts';
import { keepingFocus } from '../focus.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Banner, Disclosure } from '../parts/layout.tsx';
import { newInTables } from './upgrade-words.ts';

/** Whether she has said that it can wait; asked again when the pane is opened the next time. */
const waits = signal(false);

/** That the tables are of an earlier version, what the present one adds, and a button that brings them up to date. */
export function UpgradeBanner({ books }: { readonly books: Books }) {
  const { act, session, view } = usePane();
  if (books.upgradable === null || waits.value) return null;
  return (
    <Banner
      tone="note"
      title="These tables are of an earlier version: bring them up to date?"
      actions={
        <>
          <Button unavailable={view.value.busy !== null} onPress={() => act(() => session.upgradeTables())}>
            Bring them up to date
          </Button>
          <Button
            look="quiet"
            onPress={() =>
              keepingFocus(() => {
                waits.value = true;
              })
            }
          >
            Later
          </Button>
        </>
      }
    >
      <p>What is here stays as it is, and goes on working without it.</p>
      <Disclosure summary="What it adds">
        <ul class="plain-list">
          {newInTables(books.upgradable).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </Disclosure>
    </Banner>
  );
}
