import { expect } from 'vitest';
import { booksOf } from '../../../src/actions/books.ts';
import { type BatchPlan, type BatchToMake, planBatch } from '../../../src/actions/make-batch.ts';
import { keyOf } from '../../../src/core/identifier.ts';
import { spokenQuantity } from '../../../src/core/wording.ts';
import { usualPlace } from '../../../src/pane/make/make-options.ts';
import type { WorkbookSnapshot } from '../../../src/workbook/port.ts';
import type { ShownLine } from './log-form.ts';
import { PanePage } from './pane-page.ts';
import { TODAY } from './studio-in-node.ts';

/** The section Make of the sample studio. */
export async function openMake(width: number): Promise<PanePage> {
  const pane = await PanePage.open({ width });
  await pane.page.getByRole('tab', { name: 'Today' }).waitFor();
  await pane.keys.openSection('Make');
  return pane;
}

/** Fills in the head of the form by keyboard alone; Enter in the list takes what stands there and goes on. */
export async function fillInBatch(
  { keys }: Pick<PanePage, 'keys'>,
  recipe: string,
  amount: string,
): Promise<void> {
  await keys.fill('Recipe', recipe, 'combobox');
  await keys.press('Enter');
  await expect.poll(() => keys.isOn({ role: 'textbox', name: 'How much' })).toBe(true);
  await keys.type(amount);
}

/** Opens what may be poured at once and fills it in by keyboard alone. */
export async function fillInPour(
  { keys, page }: Pick<PanePage, 'keys' | 'page'>,
  pour: {
    readonly job: string;
    readonly treatment: string;
    readonly extent: string;
    readonly amount: string;
  },
): Promise<void> {
  const summary = page.locator('summary', { hasText: 'Pour it at once for a job' });
  for (let stops = 0; stops < 40; stops += 1) {
    if (await summary.evaluate((element) => element === document.activeElement)) break;
    await keys.press('Tab');
  }
  await keys.press('Enter');
  await keys.fill('Job', pour.job, 'combobox');
  await keys.press('Enter');
  await keys.fill('Treatment', pour.treatment, 'combobox');
  await keys.press('Enter');
  await keys.fill('Treated', pour.extent);
  await keys.fill(/^Poured/, pour.amount);
}

/** What the core plans for a batch of the sample's day, kept where the last one was, worked out here. */
export function planInNode(
  snapshot: WorkbookSnapshot,
  asked: Pick<BatchToMake, 'recipe' | 'amount' | 'unit'> & Partial<BatchToMake>,
): BatchPlan {
  const { studio } = booksOf(snapshot).ledger;
  const recipe = studio.recipesByKey.get(keyOf(asked.recipe));
  if (recipe === undefined) throw new Error(`The sample has no recipe ${asked.recipe}`);
  const plan = planBatch(
    snapshot,
    {
      yielded: null,
      date: TODAY,
      storedAt: usualPlace(studio, recipe),
      asUsed: [],
      by: null,
      notes: null,
      pour: null,
      ...asked,
    },
    TODAY,
  );
  if (!plan.ok) throw new Error(plan.message);
  return plan;
}

/** The parts of a plan in the words of the pane: those that are counted first. */
export function partsInWords({ parts }: BatchPlan): Pick<ShownLine, 'material' | 'quantity'>[] {
  return parts
    .toSorted((a, b) => Number(b.material.counted) - Number(a.material.counted))
    .map(({ material, needed, unit }) => ({
      material: material.name,
      quantity: spokenQuantity(needed, unit),
    }));
}
