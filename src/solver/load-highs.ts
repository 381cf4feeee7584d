import type { Highs } from 'highs';

/**
 * Loads HiGHS: from the package's files in Node, from those that a bundler puts beside the scripts in a browser.
 * @throws where they can't be loaded
 */
export async function loadHighs(): Promise<Highs> {
  const { default: load } = await import('highs');
  return load();
}
