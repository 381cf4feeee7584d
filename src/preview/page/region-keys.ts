/** The regions of the page in the order in which F6 goes through them. */
const REGIONS = [
  '.toolbar button',
  '.line-field',
  '.grid',
  '.tab[aria-selected=true]',
  '.separator',
  '.pane-frame',
];

/** F6 goes to the next region of the page, Shift+F6 to the one before; regions that are not shown are left out. */
export function goToRegion(event: KeyboardEvent): void {
  if (event.key !== 'F6' || event.ctrlKey || event.altKey) return;
  event.preventDefault();
  const elements = REGIONS.map((each) => document.querySelector<HTMLElement>(each)).filter(
    (each) => each !== null && each.offsetParent !== null,
  );
  const at = elements.findIndex(isAt);
  // From no region, it begins with the first, or backwards with the last.
  const next = event.shiftKey ? (at < 0 ? elements.length : at) - 1 : at + 1;
  elements[(next + elements.length) % elements.length]?.focus();
}

/** Whether a region has the focus, or something within it; the bar's first button stands for the whole bar. */
function isAt(element: HTMLElement | null): boolean {
  return (element?.closest('.toolbar') ?? element)?.contains(document.activeElement) ?? false;
}
