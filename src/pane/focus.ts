/** Marks where the focus goes in a section when what had it is gone: its heading, or its first field. */
export const FOCUS_HOME = 'data-focus-home';

/** Marks one of several things of a kind: when it goes, the focus goes to the one that takes its place. */
export const FOCUS_ROW = 'data-focus-row';

/** Marks what takes the focus itself when a button in it is gone; it can be focused (tabIndex -1), and does not as long as it is empty. */
export const FOCUS_KEEPER = 'data-focus-keeper';

/** Moves the focus to a field once it shows what it now holds, with its text selected. */
export function focusField(id: string): void {
  requestAnimationFrame(() => {
    const field = document.getElementById(id);
    field?.focus();
    if (field instanceof HTMLInputElement) field.select();
  });
}

const SCOPE = '[role="tabpanel"], [data-focus-scope]';

/**
 * Does something, and puts the focus back if what had it is gone afterwards: to what keeps it, to the thing in the
 * same place, or to where the section begins.
 */
export async function keepingFocus<T>(action: () => T | Promise<T>): Promise<T> {
  const restore = rememberFocus();
  const result = await action();
  // What is shown changes in the next frame: only then is it known whether the focus was lost.
  requestAnimationFrame(() => requestAnimationFrame(restore));
  return result;
}

function rememberFocus(): () => void {
  const focused = document.activeElement;
  const keeper = focused?.closest<HTMLElement>(`[${FOCUS_KEEPER}]`) ?? null;
  const scope = focused?.closest(SCOPE) ?? null;
  const row = focused?.closest(`[${FOCUS_ROW}]`) ?? null;
  const place = row === null || scope === null ? -1 : rowsIn(scope).indexOf(row);
  return () => {
    if (focused === null || focused === document.body || focused.isConnected) return;
    if (document.activeElement !== null && document.activeElement !== document.body) return;
    // She has gone on to the cells meanwhile: what she types there must not land here.
    if (!document.hasFocus()) return;
    const rows = place < 0 || scope === null ? [] : rowsIn(scope);
    const next = rows[Math.min(place, rows.length - 1)]?.querySelector<HTMLElement>('button');
    const target = keeper?.isConnected === true && keeper.textContent !== '' ? keeper : next;
    (target ?? document.querySelector<HTMLElement>(`[${FOCUS_HOME}]`))?.focus();
  };
}

function rowsIn(scope: Element): Element[] {
  return [...scope.querySelectorAll(`[${FOCUS_ROW}]`)];
}
