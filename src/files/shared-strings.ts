import { escapeCellText, unescapeCellText } from './cell-text.ts';
import { XmlCursor } from './xml-cursor.ts';
import { attributeOf, openingTag, prefixOf, withAttribute } from './xml-tag.ts';
import { decodeXml, encodeXml } from './xml-text.ts';

/** The texts that cells refer to by number, and which of them carry formatting of their own. */
export interface SharedStrings {
  readonly texts: readonly string[];
  /** The numbers of the texts with rich formatting or a phonetic reading: not to be used for other cells. */
  readonly formatted: ReadonlySet<number>;
}

export function readSharedStrings(text: string, part: string): SharedStrings {
  const texts: string[] = [];
  const formatted = new Set<number>();
  const cursor = new XmlCursor(text, part);
  while (cursor.next()) {
    if (!cursor.begins('si')) continue;
    const item = readStringItem(cursor);
    if (item.formatted) formatted.add(texts.length);
    texts.push(item.text);
  }
  return { texts, formatted };
}

/**
 * Reads a string item (`si`, or `is` in a cell) that the cursor stands on: its runs without the phonetic
 * reading. The cursor is left on the closing tag.
 */
export function readStringItem(cursor: XmlCursor): { text: string; formatted: boolean } {
  let text = '';
  let formatted = false;
  if (cursor.isEmpty) return { text, formatted };
  const depth = cursor.depth;
  while (cursor.next() && cursor.depth >= depth) {
    if (cursor.isClosing) continue;
    if (cursor.is('t')) {
      if (cursor.isOpening) text += cursor.readText();
    } else if (cursor.is('rPh')) {
      formatted = true;
      cursor.skipElement();
    } else formatted = true;
  }
  return { text: unescapeCellText(text), formatted };
}

/** A text as the `t` element that holds it. */
export function textElement(text: string, prefix: string): string {
  const space = /^\s|\s$|[\n\t]| {2}/.test(text) ? ' xml:space="preserve"' : '';
  return `<${prefix}t${space}>${encodeXml(escapeCellText(text))}</${prefix}t>`;
}

/** Gives each new text its number, reusing unformatted texts that are there already. */
export class SharedStringNumbers {
  readonly added: string[] = [];
  readonly #numbers = new Map<string, number>();
  readonly #base: number;

  constructor(strings: SharedStrings) {
    this.#base = strings.texts.length;
    strings.texts.forEach((text, number) => {
      if (!strings.formatted.has(number) && !this.#numbers.has(text)) this.#numbers.set(text, number);
    });
  }

  numberOf(text: string): number {
    let number = this.#numbers.get(text);
    if (number === undefined) {
      number = this.#base + this.added.length;
      this.#numbers.set(text, number);
      this.added.push(text);
    }
    return number;
  }
}

/**
 * The text of the shared strings part with texts added at its end.
 * @param references by how many more (or fewer) cells the texts are now used
 */
export function withAddedStrings(
  source: string,
  part: string,
  added: readonly string[],
  references: number,
): string {
  const cursor = new XmlCursor(source, part);
  cursor.next();
  const { start, end, isEmpty, tag } = cursor;
  const prefix = prefixOf(tag);
  const contentEnd = cursor.skipElement();
  let root = tag;
  for (const [name, change] of [
    ['count', references],
    ['uniqueCount', added.length],
  ] as const) {
    const count = Number(attributeOf(tag, name) ?? 'none');
    if (Number.isInteger(count)) root = withAttribute(root, name, String(Math.max(0, count + change)));
  }
  const items = added.map((text) => `<${prefix}si>${textElement(text, prefix)}</${prefix}si>`).join('');
  const head = source.slice(0, start) + openingTag(root);
  if (isEmpty) return `${head}${items}</${prefix}sst>${source.slice(end)}`;
  return head + source.slice(end, contentEnd) + items + source.slice(contentEnd);
}

/** A text from the places where no string item is used (`<v>` of a formula's text). */
export function plainCellText(source: string): string {
  return unescapeCellText(decodeXml(source));
}
