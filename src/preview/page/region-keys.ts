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
  const at = elements.findIndex((each) => each === document.activeElement || isAround(each));
  const step = event.shiftKey ? -1 : 1;
  elements[(at + step + elements.length) % elements.length]?.focus();
}

/** The bar's first button stands for the whole bar. */
function isAround(element: HTMLElement | null): boolean {
  return element?.closest('.toolbar')?.contains(document.activeElement) ?? false;
}
