/**
 * Cells write characters that XML can't hold as `_xHHHH_`, and what merely looks so as `_x005F_xHHHH_`
 * (ISO/IEC 29500-1, 22.9.2.19, ST_Xstring).
 */
const ESCAPED = /_x([0-9A-Fa-f]{4})_/g;
const NEEDS_ESCAPE =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is escaped
  /[\u0000-\u0008\u000b-\u001f\ufffe\uffff]|_(?=x[0-9A-Fa-f]{4}_)|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** The text of a cell, from the text that stands in the XML. */
export function unescapeCellText(text: string): string {
  if (!text.includes('_x')) return text;
  return text.replace(ESCAPED, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}

/** The text to stand in the XML (before entities) for the text of a cell. */
export function escapeCellText(text: string): string {
  return text.replace(
    NEEDS_ESCAPE,
    (character) => `_x${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`,
  );
}
