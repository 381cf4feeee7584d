import { damaged } from './file-refused.ts';

const NAMED_ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** The text that stands in XML as `source`: entities, CDATA and line ends resolved. */
export function decodeXml(source: string): string {
  let text = source;
  if (text.includes('\r')) text = text.replace(/\r\n?/g, '\n');
  if (text.includes('<')) {
    return text
      .split(/(<!\[CDATA\[.*?\]\]>|<!--.*?-->)/s)
      .map((piece) => {
        if (piece.startsWith('<![CDATA[')) return piece.slice(9, -3);
        return piece.startsWith('<!--') ? '' : decodeEntities(piece);
      })
      .join('');
  }
  return decodeEntities(text);
}

function decodeEntities(text: string): string {
  if (!text.includes('&')) return text;
  return text.replace(/&([^;&]{0,12};)?/g, (whole, reference: string | undefined) => {
    const name = reference?.slice(0, -1) ?? '';
    const number = /^#(?:x([0-9a-fA-F]+)|([0-9]+))$/.exec(name);
    const code = number?.[1] ? Number.parseInt(number[1], 16) : Number(number?.[2] ?? Number.NaN);
    const character = code <= 0x10ffff ? String.fromCodePoint(code) : NAMED_ENTITIES[name];
    if (character === undefined) throw damaged(`"${whole}" is not text that XML allows`);
    return character;
  });
}

/** Text as it stands between tags. Characters that XML can't hold must have been escaped before. */
export function encodeXml(text: string): string {
  return text.replace(/[&<>]/g, (sign) => (sign === '&' ? '&amp;' : sign === '<' ? '&lt;' : '&gt;'));
}

/** Text as it stands between the double quotes of an attribute. */
export function encodeAttribute(text: string): string {
  return encodeXml(text)
    .replaceAll('"', '&quot;')
    .replace(/[\t\n\r]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
