import { XmlCursor } from './xml-cursor.ts';
import { attributeOf, openingTag, prefixOf, withAttribute } from './xml-tag.ts';

/** The elements in a list under the root, as written. */
export function listItems(source: string, part: string, list: string): string[] {
  const cursor = new XmlCursor(source, part);
  cursor.next();
  while (cursor.next() && !cursor.isClosing) {
    if (!cursor.begins(list)) {
      cursor.skipElement();
      continue;
    }
    const items: string[] = [];
    if (cursor.isEmpty) return items;
    while (cursor.next() && !cursor.isClosing) {
      const { start } = cursor;
      cursor.skipElement();
      items.push(source.slice(start, cursor.end));
    }
    return items;
  }
  return [];
}

/**
 * Adds items to a list under the root, made before the first element that `isBehind` where missing.
 * @param counted whether the list says how many items it has
 */
export function withItems(
  source: string,
  part: string,
  list: string,
  items: readonly string[],
  isBehind: (name: string) => boolean,
  counted = true,
): string {
  const cursor = new XmlCursor(source, part);
  let place: number | null = null;
  let root = '';
  while (cursor.next()) {
    if (root === '') {
      root = cursor.tag;
      continue;
    }
    if (!cursor.isOpening && cursor.depth === 0) {
      place ??= cursor.start;
      break;
    }
    if (cursor.begins(list)) {
      const { start, end, tag, isOpening } = cursor;
      const contentEnd = cursor.skipElement();
      const count = Number(attributeOf(tag, 'count') ?? 'none');
      const recounted = Number.isInteger(count)
        ? withAttribute(tag, 'count', String(count + items.length))
        : tag;
      const closing = isOpening ? '' : `</${prefixOf(tag)}${list}>`;
      const old = isOpening ? source.slice(end, contentEnd) : '';
      const rest = source.slice(isOpening ? contentEnd : end);
      return source.slice(0, start) + openingTag(recounted) + old + items.join('') + closing + rest;
    }
    if (place === null && isBehind(cursor.name)) place = cursor.start;
    cursor.skipElement();
  }
  const prefix = prefixOf(root);
  const count = counted ? ` count="${items.length}"` : '';
  const made = `<${prefix}${list}${count}>${items.join('')}</${prefix}${list}>`;
  const at = place ?? source.length;
  return source.slice(0, at) + made + source.slice(at);
}

/** The tag of the root element. */
export function rootTag(source: string, part: string): string {
  const cursor = new XmlCursor(source, part);
  cursor.next();
  return cursor.tag;
}
