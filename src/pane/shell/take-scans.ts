import type { Studio } from '../../core/studio.ts';
import type { Books } from '../../session/session-state.ts';
import { recipeMeant } from '../make/make-options.ts';
import { openedSection, openedStock, openMake } from '../route.ts';
import { openExactly } from '../stock/open-exactly.ts';
import { askForLot } from '../stocktake/count-state.ts';
import { NO_SCAN, scanStep } from './scan.ts';

const FIELDS = 'input, textarea, select, [contenteditable]';

export interface ScanTarget {
  /** Null while no workbook is open. */
  readonly books: () => Books | null;
  readonly fail: (message: string) => void;
}

/**
 * Takes codes that are scanned while no field has the focus: in Today and Stock they open what they name, in a
 * stocktake the lot's field, in Make the recipe by which it is made; elsewhere they at least press no button.
 * @returns a listener for keys, to be told of them before what has the focus
 */
export function scanTaker({ books, fail }: ScanTarget): (event: KeyboardEvent) => void {
  let scanning = NO_SCAN;
  let begunIn = openedSection.peek();
  return (event) => {
    const isInField = event.target instanceof Element && event.target.closest(FIELDS) !== null;
    if (isInField || event.ctrlKey || event.altKey || event.metaKey) {
      scanning = NO_SCAN;
      return;
    }
    const step = scanStep(scanning, event.key, event.timeStamp);
    scanning = step.scanning;
    // On the row of tabs the first letter of a code may open another section: the code was meant for this one.
    if (scanning.text.length === 1) begunIn = openedSection.peek();
    if (!step.belongs) return;
    event.preventDefault();
    event.stopPropagation();
    const opened = books();
    if (step.code === null || opened === null) return;
    if (begunIn === 'make' && !openRecipe(opened.ledger.studio, step.code)) {
      fail(`${step.code} was scanned: no recipe is called that, nor is anything that is made by one.`);
    }
    if (begunIn !== 'today' && begunIn !== 'stock') return;
    if (begunIn === 'stock' && openedStock.peek().kind === 'count') {
      if (!askForLot(opened.ledger.studio, step.code))
        fail(`${step.code} was scanned: no lot is called that.`);
      return;
    }
    if (!openExactly(opened.ledger.studio, step.code)) {
      fail(`${step.code} was scanned: no lot and no material is called that.`);
    }
  };
}

/** Opens Make with the recipe that a text means; says whether there is one. */
function openRecipe(studio: Studio, text: string): boolean {
  const recipe = recipeMeant(studio, text);
  if (recipe !== null) openMake({ recipe: recipe.name, amount: null, unit: null });
  return recipe !== null;
}
