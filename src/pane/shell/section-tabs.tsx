import { openedSection, SECTIONS, type SectionName, showSection } from '../route.ts';
import { tabAfterKey } from './tab-keys.ts';

/** The id of a section's tab. */
export function tabId(section: SectionName): string {
  return `tab-${section}`;
}

/** The id of a section's panel. */
export function panelId(section: SectionName): string {
  return `panel-${section}`;
}

/** The row of tabs: arrow keys, Home and End, or a section's first letter. */
export function SectionTabs() {
  const opened = openedSection.value;
  return (
    <header class="tabs-row">
      <h1 class="visually-hidden">Jarleaf</h1>
      <div
        role="tablist"
        aria-label="Sections"
        class="tabs"
        onKeyDown={(event) => {
          if (event.altKey || event.ctrlKey || event.metaKey) return;
          const next = tabAfterKey(
            SECTIONS.map(({ label }) => label),
            SECTIONS.findIndex(({ name }) => name === opened),
            event.key,
          );
          const section = next === null ? undefined : SECTIONS[next];
          if (section === undefined) return;
          event.preventDefault();
          showSection(section.name);
          document.getElementById(tabId(section.name))?.focus();
        }}
      >
        {SECTIONS.map(({ name, label }) => (
          <button
            key={name}
            type="button"
            role="tab"
            id={tabId(name)}
            class="tab"
            aria-selected={name === opened}
            aria-controls={name === opened ? panelId(name) : undefined}
            tabIndex={name === opened ? 0 : -1}
            onClick={() => showSection(name)}
          >
            {label}
          </button>
        ))}
      </div>
    </header>
  );
}
