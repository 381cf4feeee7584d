import './styles/tokens.css';
import './styles/base.css';
import './styles/parts.css';
import './styles/fields.css';
import './styles/shell.css';
import './styles/sections.css';
import { signal } from '@preact/signals';
import { render } from 'preact';
import type { Books, SessionView } from '../session/session-state.ts';
import { createActor } from './actor.ts';
import { createNews } from './news.ts';
import { PaneProvider } from './pane-context.ts';
import type { PaneSession } from './pane-session.ts';
import type { Planner } from './planner.ts';
import { takeEscape } from './shell/escape.ts';
import { Shell } from './shell/shell.tsx';
import { scanTaker } from './shell/take-scans.ts';

export type Theme = 'light' | 'dark';

export interface PaneOptions {
  /** What the host looks like; without it, what the system prefers. */
  readonly theme?: Theme;
}

export interface MountedPane {
  readonly setTheme: (theme: Theme | null) => void;
  readonly unmount: () => void;
}

/**
 * Puts the task pane into an element. The session is started by the caller; the pane shows whatever it is at.
 * What is open is steered by route.ts.
 */
export function mountPane(
  element: HTMLElement,
  session: PaneSession,
  planner: Planner,
  options: PaneOptions = {},
): MountedPane {
  const view = signal<SessionView>(session.view);
  const unsubscribe = session.subscribe(() => {
    view.value = session.view;
  });
  const news = createNews();
  const pane = { session, planner, view, news, ...createActor(session, news) };
  const setTheme = (theme: Theme | null): void => {
    const root = element.ownerDocument.documentElement;
    if (theme === null) delete root.dataset['theme'];
    else root.dataset['theme'] = theme;
  };
  setTheme(options.theme ?? null);
  const takeScan = scanTaker({ books: () => booksIn(session.view), fail: news.fail });
  element.addEventListener('keydown', takeScan, { capture: true });
  element.addEventListener('keydown', takeEscape);
  render(
    <PaneProvider value={pane}>
      <Shell />
    </PaneProvider>,
    element,
  );
  return {
    setTheme,
    unmount: () => {
      unsubscribe();
      element.removeEventListener('keydown', takeScan, { capture: true });
      element.removeEventListener('keydown', takeEscape);
      render(null, element);
    },
  };
}

function booksIn({ state }: SessionView): Books | null {
  return state.kind === 'open' ? state.books : null;
}
