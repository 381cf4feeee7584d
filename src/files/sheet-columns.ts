import type { SheetText } from './sheet-rows.ts';
import { XmlCursor } from './xml-cursor.ts';

/** The style of a whole column, which cells without an element of their own show. */
export function columnStyle({ head, part }: SheetText, column: number): number | undefined {
  const start = head.search(/<(?:[^\s:/>]+:)?cols[\s>]/);
  if (start < 0) return undefined;
  const cursor = new XmlCursor(head, part, [start, head.length]);
  while (cursor.next() && !cursor.closes('cols')) {
    if (!cursor.begins('col')) continue;
    const covers = Number(cursor.attribute('min')) <= column && column <= Number(cursor.attribute('max'));
    const style = cursor.attribute('style');
    if (covers) return style === undefined ? undefined : Number(style);
  }
  return undefined;
}
