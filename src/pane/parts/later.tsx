import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { keepingFocus } from '../focus.ts';
import { Button } from './button.tsx';
import { Banner } from './layout.tsx';
import { useAfter } from './use-after.ts';

/** After how long it is said that something is being fetched. */
const SAID_AFTER = 500;

type Fetched<Props> =
  | { readonly kind: 'not yet' }
  | { readonly kind: 'here'; readonly Shown: ComponentType<Props> }
  | { readonly kind: 'failed'; readonly message: string };

/**
 * A part of the pane whose script is fetched when it is shown for the first time, so that the pane opens sooner.
 * @param what it is called where it can't be fetched: "The section Buy"
 */
export function later<Props extends object>(
  fetchIt: () => Promise<ComponentType<Props>>,
  what: string,
): ComponentType<Props> {
  const fetched = signal<Fetched<Props>>({ kind: 'not yet' });
  let asked = false;

  async function begin(): Promise<void> {
    if (asked) return;
    asked = true;
    try {
      const Shown = await fetchIt();
      fetched.value = { kind: 'here', Shown };
    } catch (fault) {
      asked = false;
      fetched.value = { kind: 'failed', message: fault instanceof Error ? fault.message : String(fault) };
    }
  }

  return function Later(props: Props) {
    useEffect(() => void begin(), []);
    const state = fetched.value;
    const said = useAfter(SAID_AFTER, state.kind === 'not yet');
    switch (state.kind) {
      case 'here':
        return <state.Shown {...props} />;
      case 'not yet':
        return <p role="status">{said ? 'Just a moment…' : ''}</p>;
      case 'failed':
        return (
          <div role="alert">
            <Banner
              tone="stop"
              title={`${what} could not be fetched`}
              actions={<Button onPress={() => keepingFocus(begin)}>Try again</Button>}
            >
              {`Check that the computer is online. ${state.message}`}
            </Banner>
          </div>
        );
    }
  };
}
