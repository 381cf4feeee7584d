import type { TabShape } from '../../files/tab-shape.ts';

const CHARACTER = 8;
const PADDING = 20;
const USUAL_WIDTH = 88;
const NARROWEST = 40;
const WIDEST = 460;

/** The width of each column of a tab in pixels, hidden ones too: nothing is kept from view here. */
export function columnWidths(shape: TabShape, count: number): number[] {
  const widths = Array.from<number>({ length: count }).fill(USUAL_WIDTH);
  for (const { first, last, width } of shape.columns) {
    if (width === null) continue;
    const pixels = Math.round(Math.min(Math.max(width * CHARACTER + PADDING, NARROWEST), WIDEST));
    widths.fill(pixels, first - 1, Math.min(last, count));
  }
  return widths;
}
