import type { PanePage } from './pane-page.ts';
import { textOf } from './shown-text.ts';

/** Names and values of what is open in Stock, as they are shown. */
export async function factsIn({ page }: PanePage): Promise<Record<string, string>> {
  const facts = await page.locator('.facts .fact').all();
  const pairs = await Promise.all(
    facts.map(async (fact) => [await textOf(fact.locator('dt')), await textOf(fact.locator('dd'))]),
  );
  return Object.fromEntries(pairs) as Record<string, string>;
}
