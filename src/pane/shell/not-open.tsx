import type { ComponentChildren } from 'preact';
import type { SessionState } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Banner, Heading } from '../parts/layout.tsx';
import { useAfter } from '../parts/use-after.ts';
import { TABS_TO_SET_UP } from './set-up-words.ts';

/** What is shown while the books aren't open. */
export function NotOpen({ state }: { readonly state: Exclude<SessionState, { kind: 'open' }> }) {
  switch (state.kind) {
    case 'starting':
      return <Starting />;
    case 'failed':
      return <Failed message={state.message} />;
    case 'no tables':
      return <NoTables />;
  }
}

interface PageProps {
  readonly children: ComponentChildren;
  readonly busy?: boolean;
}

function Page({ children, busy = false }: PageProps) {
  return (
    <main class="main" aria-busy={busy}>
      <h1 class="visually-hidden">Jarleaf</h1>
      <div class="page">{children}</div>
    </main>
  );
}

const SAID_AFTER = 500;

function Starting() {
  const { busy } = usePane().view.value;
  const said = useAfter(SAID_AFTER, true);
  return (
    <Page busy>
      <div role="status">{said && <p>{`${busy ?? 'Reading the workbook'}…`}</p>}</div>
      <div class="skeleton" aria-hidden="true">
        <div class="skeleton-line skeleton-short" />
        <div class="skeleton-line" />
        <div class="skeleton-line" />
        <div class="skeleton-line skeleton-short" />
        <div class="skeleton-line" />
      </div>
    </Page>
  );
}

function Failed({ message }: { readonly message: string }) {
  const { view, readAgain } = usePane();
  return (
    <Page>
      <Heading focusHome>The workbook can’t be read</Heading>
      <div role="alert">
        <Banner tone="stop">{message}</Banner>
      </div>
      <p>Reading changes nothing in the workbook.</p>
      <div class="actions">
        <Button look="main" unavailable={view.value.busy !== null} onPress={readAgain}>
          Try again
        </Button>
      </div>
    </Page>
  );
}

function NoTables() {
  const { session, view, act, readAgain } = usePane();
  const busy = view.value.busy !== null;
  return (
    <Page>
      <Heading focusHome>No tables in this workbook yet</Heading>
      <p>
        Jarleaf keeps a bench’s materials in ordinary tables of your own workbook. They can be set up here,
        each on a tab of its own, behind the tabs that are there:
      </p>
      <ul class="set-up">
        {TABS_TO_SET_UP.map(({ what, tabs }) => (
          <li key={what}>
            {what}
            <span class="cell-second">{tabs.join(', ')}</span>
          </li>
        ))}
      </ul>
      <p>Every tab, cell, formula and chart that is in the workbook now stays as it is.</p>
      <Banner tone="warn" title="To begin from, not advice">
        The lives, usage rates and recipes that come with it are common practice to begin from. Check each
        against your own practice, the supplier’s safety data sheet and your local codes before you rely on
        it.
      </Banner>
      <div class="actions">
        <Button look="main" unavailable={busy} onPress={() => act(() => session.setUp())}>
          Set up the tables
        </Button>
        <Button look="quiet" unavailable={busy} onPress={readAgain}>
          Look again
        </Button>
      </div>
    </Page>
  );
}
