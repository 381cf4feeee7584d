/**
 * Cells write characters that XML can't hold as `_xHHHH_`, and what merely looks so as `_x005F_xHHHH_`
 * (ISO/IEC 29500-1, 22.9.2.19, ST_Xstring).
 */
const ESCAPED = /_x([0-9A-Fa-f]{4})_/g;
const UNWRITABLE = [
  String.raw`[\u0000-\u0008\u000b-\u001f\ufffe\uffff]`,
  // Halves of a character beyond the basic plane that stand alone.
  String.raw`[\ud800-\udbff](?![\udc00-\udfff])`,
  String.raw`(?<![\ud800-\udbff])[\udc00-\udfff]`,
].join('|');
const UNWRITABLE_CHARACTERS = new RegExp(UNWRITABLE, 'g');
const NEEDS_ESCAPE = new RegExp(`${UNWRITABLE}|_(?=x[0-9A-Fa-f]{4}_)`, 'g');

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

/** The text to stand in the XML (before entities) where characters can't be escaped: those that XML can't hold are blanks. */
export function writableText(text: string): string {
  return text.replace(UNWRITABLE_CHARACTERS, ' ');
}
