import { XmlCursor } from './xml-cursor.ts';
import { openingTag, prefixOf } from './xml-tag.ts';
import { encodeAttribute } from './xml-text.ts';

export const CONTENT_TYPES_PART = '[Content_Types].xml';

/** The content type that a package declares for each part, asked by part name without leading slash. */
export function readContentTypes(text: string): (part: string) => string | undefined {
  const byPart = new Map<string, string>();
  const byExtension = new Map<string, string>();
  const cursor = new XmlCursor(text, CONTENT_TYPES_PART);
  while (cursor.next()) {
    const type = cursor.attribute('ContentType');
    if (type === undefined) continue;
    if (cursor.begins('Override')) byPart.set(keyOf(cursor.attribute('PartName')), type);
    else if (cursor.begins('Default'))
      byExtension.set((cursor.attribute('Extension') ?? '').toLowerCase(), type);
  }
  return (part) => byPart.get(keyOf(part)) ?? byExtension.get(part.split('.').pop()?.toLowerCase() ?? '');
}

/** The content types without the entry of a part that goes. */
export function withoutContentType(text: string, part: string): string {
  const cursor = new XmlCursor(text, CONTENT_TYPES_PART);
  while (cursor.next()) {
    if (!cursor.begins('Override') || keyOf(cursor.attribute('PartName')) !== keyOf(part)) continue;
    const { start } = cursor;
    cursor.skipElement();
    return text.slice(0, start) + text.slice(cursor.end);
  }
  return text;
}

/** The content types with an entry for a part that comes. */
export function withContentType(text: string, part: string, type: string): string {
  const cursor = new XmlCursor(text, CONTENT_TYPES_PART);
  cursor.next();
  const { tag } = cursor;
  const entry = `<${prefixOf(tag)}Override PartName="/${encodeAttribute(part)}" ContentType="${type}"/>`;
  const end = cursor.end;
  return text.slice(0, cursor.start) + openingTag(tag) + entry + text.slice(end);
}

function keyOf(part: string | undefined): string {
  return (part ?? '').replace(/^\//, '').toLowerCase();
}
