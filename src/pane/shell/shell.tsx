import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import type { Books } from '../../session/session-state.ts';
import { FOCUS_HOME } from '../focus.ts';
import { LogSection } from '../log/log-section.tsx';
import { MakeSection } from '../make/make-section.tsx';
import { usePane } from '../pane-context.ts';
import { later } from '../parts/later.tsx';
import { QuoteSection } from '../quote/quote-section.tsx';
import { arrivalCount, openedSection, openedStock, type SectionName } from '../route.ts';
import { StockSection } from '../stock/stock-section.tsx';
import { TodaySection } from '../today/today-section.tsx';
import { Failures } from './failures.tsx';
import { FromTheSheet } from './from-the-sheet.tsx';
import { NotOpen } from './not-open.tsx';
import { Questions } from './questions.tsx';
import { panelId, SectionTabs, tabId } from './section-tabs.tsx';
import { StatusLine } from './status-line.tsx';
import { WorkbookBanners } from './workbook-banners.tsx';

const BuySection = later(async () => (await import('../buy/buy-section.tsx')).BuySection, 'The section Buy');

/** The whole pane: what the session is at, around the open section. */
export function Shell() {
  const { state } = usePane().view.value;
  return (
    <div class="pane">
      {state.kind === 'open' ? <Open books={state.books} /> : <NotOpen state={state} />}
      <Failures />
      <StatusLine />
      {state.kind === 'open' && <FromTheSheet />}
    </div>
  );
}

function Open({ books }: { readonly books: Books }) {
  const section = openedSection.value;
  const page = openedStock.value;
  const arrivals = arrivalCount.value;
  const main = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    main.current?.scrollTo(0, 0);
    // Another page begins at its top.
  }, [section, page]);
  useEffect(
    () => (arrivals > 0 ? focusIn(section) : undefined),
    // Only an arrival moves the focus, not a choice of tab.
    [arrivals],
  );
  return (
    <>
      <SectionTabs />
      <main class="main" ref={main}>
        <WorkbookBanners books={books} />
        <Questions />
        <section role="tabpanel" id={panelId(section)} aria-labelledby={tabId(section)} class="panel">
          <Section name={section} books={books} />
        </section>
      </main>
    </>
  );
}

function Section({ name, books }: { readonly name: SectionName; readonly books: Books }) {
  switch (name) {
    case 'today':
      return <TodaySection books={books} />;
    case 'log':
      return <LogSection books={books} />;
    case 'stock':
      return <StockSection books={books} />;
    case 'make':
      return <MakeSection books={books} />;
    case 'quote':
      return <QuoteSection books={books} />;
    case 'buy':
      return <BuySection books={books} />;
  }
}

/**
 * Moves the focus to where a section begins; where its script is still being fetched, once that is here.
 * @returns gives it up
 */
function focusIn(section: SectionName): () => void {
  const panel = document.getElementById(panelId(section));
  const moved = (): boolean => {
    const home = panel?.querySelector<HTMLElement>(`[${FOCUS_HOME}]`) ?? null;
    home?.focus();
    return home !== null;
  };
  const observer = new MutationObserver(() => {
    if (moved()) observer.disconnect();
  });
  if (!moved() && panel !== null) observer.observe(panel, { childList: true, subtree: true });
  return () => observer.disconnect();
}
