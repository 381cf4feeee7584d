import { parseArea } from './cell-reference.ts';
import { type Splice, splice } from './sheet-splice.ts';
import { XmlCursor } from './xml-cursor.ts';
import { rewriteXml } from './xml-rewrite.ts';

const RULES = new Set(['dataValidation', 'conditionalFormatting']);
const FORMULAS = ['formula', 'formula1', 'formula2', 'f'];

/**
 * Rewrites the formulas behind the cells of a sheet: those of validations and conditional formats (old form and
 * x14), of sparklines, and the places that hyperlinks lead to.
 * @param rewrite is told the first row of the rule's cells, or null outside a rule
 */
export function rewriteRules(
  tail: string,
  part: string,
  rewrite: (formula: string, firstRow: number | null) => string,
): string {
  const splices: Splice[] = [];
  const end = tail.lastIndexOf('</');
  const cursor = new XmlCursor(tail, part, [0, Math.max(0, end)]);
  while (cursor.next()) {
    if (cursor.isClosing) continue;
    const { start } = cursor;
    let isFormula = false;
    let firstRow: number | null = null;
    if (RULES.has(cursor.name)) {
      const list = cursor.attribute('sqref');
      cursor.skipElement();
      const areas = list ?? /<(?:[^\s:<>/]+:)?sqref>([^<]*)</.exec(tail.slice(start, cursor.end))?.[1];
      firstRow = parseArea(areas?.trim().split(/\s+/)[0] ?? '')?.firstRow ?? null;
      isFormula = true;
    } else if (cursor.is('hyperlink') || cursor.is('f')) {
      isFormula = true;
      cursor.skipElement();
    }
    if (!isFormula) continue;
    const source = tail.slice(start, cursor.end);
    const written = rewriteXml(source, part, {
      attributes: ['location'],
      attribute: (value) => rewrite(value, null),
      elements: FORMULAS,
      text: (text) => rewrite(text, firstRow),
    });
    if (written !== source) splices.push({ start, end: cursor.end, text: written });
  }
  return splices.length === 0 ? tail : splice(tail, splices);
}
