import { closeLatest } from '../parts/use-escape.ts';
import { openedSection } from '../route.ts';
import { tabId } from './section-tabs.tsx';

/** Escape closes what is open in the section; where nothing is, it goes to the row of tabs. */
export function takeEscape(event: KeyboardEvent): void {
  if (event.key !== 'Escape' || event.defaultPrevented || !(event.target instanceof Element)) return;
  if (event.target.closest('dialog') !== null) return;
  if (event.target.closest('[role="tabpanel"]') !== null && closeLatest()) return;
  document.getElementById(tabId(openedSection.peek()))?.focus();
}
