import type { Locator } from 'playwright-core';

/** Text on one line with plain spaces. */
export function plain(text: string): string {
  return text.replaceAll(/\s+/g, ' ').trim();
}

/** What stands in an element, on one line. */
export async function textOf(element: Locator): Promise<string> {
  return plain((await element.textContent()) ?? '');
}
