import type { CellScalar } from '../../../src/office-host/workbook-description.ts';
import type { PanePage } from './pane-page.ts';
import { plain } from './shown-text.ts';

/** A line of the plan as it is shown: the material, how much of it, and what is taken from which lot. */
export interface ShownLine {
  readonly material: string;
  readonly quantity: string;
  readonly takes: readonly string[];
}

/** Fills in the head of the form by keyboard alone; Enter in each list takes what stands there and goes on. */
export async function fillIn(
  { keys }: Pick<PanePage, 'keys'>,
  { job, treatment, extent }: { readonly job: string; readonly treatment: string; readonly extent: string },
): Promise<void> {
  await keys.fill('Job', job, 'combobox');
  await keys.press('Enter');
  await keys.fill('Treatment', treatment, 'combobox');
  await keys.press('Enter');
  await keys.fill('How much', extent);
}

/** The lines of the plan below the form. */
export async function shownPlan({ page }: PanePage): Promise<ShownLine[]> {
  // In one look: the lines are put anew with every letter that is typed.
  const lines = await page.locator('.log-plan .log-line').evaluateAll((found) =>
    found.map((line) => ({
      material: line.querySelector('.log-line-name')?.textContent ?? '',
      quantity: line.querySelector('.log-line-figures > :first-child')?.textContent ?? '',
      takes: [...line.querySelectorAll('.log-takes > li')].map(({ textContent }) => textContent),
    })),
  );
  return lines.map(({ material, quantity, takes }) => ({
    material: plain(material),
    quantity: plain(quantity),
    takes: takes.map(plain),
  }));
}

/** The rows that a table has gained, from a number of rows on. */
export async function rowsFrom(
  pane: PanePage,
  table: string,
  count: number,
): Promise<Record<string, CellScalar>[]> {
  return (await pane.rows(table)).filter((row) => Object.keys(row).length > 0).slice(count);
}

/** How many rows of a table hold anything. */
export async function filledRows(pane: PanePage, table: string): Promise<number> {
  return (await rowsFrom(pane, table, 0)).length;
}
