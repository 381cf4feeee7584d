import type { SheetText } from './sheet-rows.ts';
import { type Splice, splice } from './sheet-splice.ts';
import { XmlCursor } from './xml-cursor.ts';
import { withAttribute, withoutAttribute } from './xml-tag.ts';

/**
 * The sheet with one of its columns as wide as asked for, and in view. What is said of its neighbours in one go with
 * it is said of them apart.
 * @param width in characters of the standard font
 */
export function withColumnWidth(sheet: SheetText, column: number, width: number): SheetText {
  const { head, part, prefix } = sheet;
  const own = `<${prefix}col min="${column}" max="${column}" width="${width}" customWidth="1"/>`;
  const start = head.search(/<(?:[^\s:/>]+:)?cols[\s>]/);
  // Columns are told of right before the rows (ISO/IEC 29500-1, 18.3.1.99).
  if (start < 0) return { ...sheet, head: `${head}<${prefix}cols>${own}</${prefix}cols>` };
  const cursor = new XmlCursor(head, part, [start, head.length]);
  let place: Splice | null = null;
  while (cursor.next() && !cursor.closes('cols')) {
    if (!cursor.begins('col')) continue;
    const first = Number(cursor.attribute('min'));
    const last = Number(cursor.attribute('max'));
    if (last < column) continue;
    if (first > column) place ??= { start: cursor.start, end: cursor.start, text: own };
    else
      place = { start: cursor.start, end: cursor.end, text: split(cursor.tag, first, last, column, width) };
    break;
  }
  place ??= { start: cursor.start, end: cursor.start, text: own };
  return { ...sheet, head: splice(head, [place]) };
}

/** What is said of columns in one go, said of one of them apart. */
function split(tag: string, first: number, last: number, column: number, width: number): string {
  const of = (from: number, to: number, source = tag): string =>
    withAttribute(withAttribute(source, 'min', String(from)), 'max', String(to));
  const bare = ['hidden', 'collapsed', 'outlineLevel', 'bestFit'].reduce(withoutAttribute, tag);
  const own = withAttribute(withAttribute(bare, 'width', String(width)), 'customWidth', '1');
  return [
    first < column ? of(first, column - 1) : '',
    of(column, column, own),
    last > column ? of(column + 1, last) : '',
  ].join('');
}
