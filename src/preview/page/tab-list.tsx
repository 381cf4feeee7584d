import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { Workbench } from '../model/workbench.ts';

/** The tabs of the workbook; arrow keys go from one to the next. */
export function TabList({ bench }: { readonly bench: Workbench }): JSX.Element {
  const tabs = bench.tabs.value;
  const chosen = bench.tab.value;
  const list = useRef<HTMLDivElement>(null);
  useEffect(() => {
    list.current
      ?.querySelector('[aria-selected=true]')
      ?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [chosen]);
  const onKeyDown = (event: KeyboardEvent): void => {
    const at = tabs.findIndex(({ name }) => name === chosen);
    const to = nextPlace(event.key, at, tabs.length);
    const next = to === null ? undefined : tabs[to];
    if (!next) return;
    event.preventDefault();
    bench.chooseTab(next.name);
    list.current?.querySelectorAll<HTMLElement>('[role=tab]')[to ?? 0]?.focus();
  };
  return (
    <div ref={list} class="tabs" role="tablist" aria-label="Tabs of the workbook" onKeyDown={onKeyDown}>
      {tabs.map(({ name, hidden }, index) => (
        <button
          key={name}
          type="button"
          role="tab"
          id={`tab-${index}`}
          class="tab"
          aria-selected={name === chosen}
          aria-controls="tab-panel"
          tabIndex={name === chosen ? 0 : -1}
          onClick={() => bench.chooseTab(name)}
        >
          {name}
          {hidden ? <span class="tab-hidden"> (hidden)</span> : null}
        </button>
      ))}
    </div>
  );
}

function nextPlace(key: string, at: number, count: number): number | null {
  switch (key) {
    case 'ArrowRight':
      return (at + 1) % count;
    case 'ArrowLeft':
      return (at - 1 + count) % count;
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return null;
  }
}
