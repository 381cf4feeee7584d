import { type Splice, splice } from './sheet-splice.ts';
import { XmlCursor } from './xml-cursor.ts';
import { withAttribute } from './xml-tag.ts';
import { decodeXml, encodeXml } from './xml-text.ts';

/** What to rewrite in an XML text; everything else stays byte for byte. Names are without prefix. */
export interface XmlRewrite {
  /** Attributes to look at, on whatever element. */
  readonly attributes?: readonly string[];
  readonly attribute?: (value: string, name: string, element: string) => string;
  /** Elements that hold nothing but text, to look at. */
  readonly elements?: readonly string[];
  readonly text?: (text: string, element: string) => string;
}

/** Rewrites attributes and texts of an XML document, or of a range of it. */
export function rewriteXml(
  source: string,
  part: string,
  rewrite: XmlRewrite,
  range: readonly [number, number] = [0, source.length],
): string {
  const splices: Splice[] = [];
  const cursor = new XmlCursor(source, part, range);
  while (cursor.next()) {
    if (cursor.isClosing) continue;
    const { name } = cursor;
    const tag = rewrittenTag(cursor, name, rewrite);
    if (tag !== cursor.tag) splices.push({ start: cursor.start, end: cursor.end, text: tag });
    if (!cursor.isOpening || !rewrite.elements?.includes(name) || !rewrite.text) continue;
    const start = cursor.end;
    const content = source.slice(start, cursor.skipElement());
    if (content.includes('<') && !content.includes('<![CDATA[')) continue;
    const text = decodeXml(content);
    const written = rewrite.text(text, name);
    if (written !== text) splices.push({ start, end: cursor.start, text: encodeXml(written) });
  }
  return splices.length === 0 ? source : splice(source, splices);
}

function rewrittenTag(cursor: XmlCursor, element: string, rewrite: XmlRewrite): string {
  let { tag } = cursor;
  if (!rewrite.attribute || cursor.attributeCount === 0) return tag;
  for (const name of rewrite.attributes ?? []) {
    const value = cursor.attribute(name);
    if (value === undefined) continue;
    const written = rewrite.attribute(value, name, element);
    if (written !== value) tag = withAttribute(tag, name, written);
  }
  return tag;
}
