import { XmlCursor } from './xml-cursor.ts';
import { encodeAttribute } from './xml-text.ts';

/** The value of an attribute in a tag given as text (from `<` to `>`), or undefined. */
export function attributeOf(tag: string, name: string): string | undefined {
  return cursorOn(tag).attribute(name);
}

/** The tag with an attribute set, everything else as it is written. */
export function withAttribute(tag: string, name: string, value: string): string {
  const place = placeOf(tag, name);
  const written = `"${encodeAttribute(value)}"`;
  if (place) return tag.slice(0, place.valueStart - 1) + written + tag.slice(place.valueEnd + 1);
  const end = tag.endsWith('/>') ? tag.length - 2 : tag.length - 1;
  return `${tag.slice(0, end).trimEnd()} ${name}=${written}${tag.slice(end)}`;
}

/** The tag without an attribute. */
export function withoutAttribute(tag: string, name: string): string {
  const place = placeOf(tag, name);
  return place ? tag.slice(0, place.nameStart).trimEnd() + tag.slice(place.valueEnd + 1) : tag;
}

/** An empty element's tag (`<a/>`) as an opening tag (`<a>`); an opening tag stays. */
export function openingTag(tag: string): string {
  return tag.endsWith('/>') ? `${tag.slice(0, -2).trimEnd()}>` : tag;
}

/** The prefix of a tag's name, colon included (`x:`), or ''. */
export function prefixOf(tag: string): string {
  return /^<\/?([^\s:/>]+:)/.exec(tag)?.[1] ?? '';
}

function cursorOn(tag: string): XmlCursor {
  const cursor = new XmlCursor(tag, 'a tag', [0, tag.length]);
  cursor.next();
  return cursor;
}

function placeOf(tag: string, name: string) {
  const { attributeCount, attributePlaces } = cursorOn(tag);
  for (let index = 0; index < attributeCount * 4; index += 4) {
    const [nameStart = 0, nameEnd = 0, valueStart = 0, valueEnd = 0] = attributePlaces.slice(
      index,
      index + 4,
    );
    if (tag.slice(nameStart, nameEnd) === name) return { nameStart, valueStart, valueEnd };
  }
  return null;
}
