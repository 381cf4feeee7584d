/** An element to be written. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly content: readonly XmlElement[] | string;
}

export function element(
  name: string,
  attributes: Readonly<Record<string, string>>,
  content: readonly XmlElement[] | string = [],
): XmlElement {
  return { name, attributes, content };
}

/** The text of an XML file with this root. */
export function xmlText(root: XmlElement): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${written(root, '')}`;
}

function written({ name, attributes, content }: XmlElement, indent: string): string {
  const tag = [name, ...Object.entries(attributes).map(([key, value]) => `${key}="${escaped(value)}"`)].join(
    ' ',
  );
  if (typeof content === 'string') return `${indent}<${tag}>${escaped(content)}</${name}>\n`;
  if (content.length === 0) return `${indent}<${tag}/>\n`;
  const inside = content.map((child) => written(child, `${indent}  `)).join('');
  return `${indent}<${tag}>\n${inside}${indent}</${name}>\n`;
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

function escaped(text: string): string {
  return text.replaceAll(/[&<>"]/g, (character) => ENTITIES[character] ?? character);
}
