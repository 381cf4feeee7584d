import type { PanePage } from './pane-page.ts';
import { plain } from './shown-text.ts';

/** Names and values of what is open in Stock, as they are shown. */
export async function factsIn({ page }: PanePage): Promise<Record<string, string>> {
  const pairs = await page
    .locator('.facts .fact')
    .evaluateAll((facts) =>
      facts.map((fact) => ['dt', 'dd'].map((part) => fact.querySelector(part)?.textContent ?? '')),
    );
  return Object.fromEntries(pairs.map((pair) => pair.map(plain))) as Record<string, string>;
}
