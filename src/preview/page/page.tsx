import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { CellEditing } from '../grid/cell-editing.ts';
import { Grid } from '../grid/grid.tsx';
import { FormulaLine } from './formula-line.tsx';
import { goToRegion } from './region-keys.ts';
import { Separator } from './separator.tsx';
import { StatusLine } from './status-line.tsx';
import { TabList } from './tab-list.tsx';
import { type Half, Toolbar } from './toolbar.tsx';
import type { Workplace } from './workplace.ts';

const FIRST_WIDTH = 380;

function focusCells(): void {
  document.querySelector<HTMLElement>('.grid')?.focus({ preventScroll: true });
}

/** The workbook on the left, the pane on the right. */
export function Page({ workplace }: { readonly workplace: Workplace }): JSX.Element {
  const { bench } = workplace;
  const half = useSignal<Half>('workbook');
  const paneWidth = useSignal(FIRST_WIDTH);
  const editing = useMemo(() => new CellEditing(bench), [bench]);
  const { shape } = bench;
  // What the pane asks for is to be seen where there is room for one half only.
  useEffect(() => {
    if (bench.shows.value === 0 || half.value === 'workbook') return;
    half.value = 'workbook';
    // The focus was in the half that goes out of view.
    requestAnimationFrame(focusCells);
  }, [bench.shows.value]);
  const unsaved = bench.unsaved.value;
  useEffect(() => {
    if (!unsaved) return;
    const hold = (event: BeforeUnloadEvent): void => event.preventDefault();
    window.addEventListener('beforeunload', hold);
    return () => window.removeEventListener('beforeunload', hold);
  }, [unsaved]);
  useEffect(() => {
    document.addEventListener('keydown', goToRegion);
    return () => document.removeEventListener('keydown', goToRegion);
  }, []);
  useEffect(() => {
    document.title = `${unsaved ? '• ' : ''}${workplace.file.value.name} – Jarleaf preview`;
  }, [unsaved, workplace.file.value.name]);
  return (
    <div class={`page page-${half.value}`} style={{ '--pane-width': `${paneWidth.value}px` }}>
      <Toolbar workplace={workplace} half={half} />
      <main class="workbook" aria-label="Workbook">
        <FormulaLine bench={bench} editing={editing} />
        <p id="grid-keys" class="for-readers">
          Arrow keys go from cell to cell, Enter types, F6 leaves the cells. The button Keys tells of all
          keys.
        </p>
        <div class="sheet" id="tab-panel" role="tabpanel" aria-label={`Tab ${bench.tab.value}`}>
          {shape ? (
            <Grid
              key={`${workplace.paneNumber.value} ${shape.name}`}
              bench={bench}
              shape={shape}
              editing={editing}
            />
          ) : null}
        </div>
        <TabList bench={bench} />
        <StatusLine bench={bench} />
      </main>
      <aside class="pane" aria-label="Jarleaf pane">
        <Separator width={paneWidth} />
        <iframe
          key={workplace.paneNumber.value}
          src="pane/index.html"
          title="Jarleaf"
          class="pane-frame"
          // Keys in the frame are heard by its own window only.
          onLoad={(event) => event.currentTarget.contentDocument?.addEventListener('keydown', goToRegion)}
        />
      </aside>
    </div>
  );
}
