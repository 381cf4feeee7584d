import { escapeCellText } from './cell-text.ts';
import { translateFormula } from './formula-shift.ts';
import { plainCellText } from './shared-strings.ts';
import type { SheetText } from './sheet-rows.ts';
import { readRow } from './sheet-rows.ts';
import { replaceInData, type Splice } from './sheet-splice.ts';
import { attributeOf, openingTag, withoutAttribute } from './xml-tag.ts';
import { encodeXml } from './xml-text.ts';

/**
 * The sheet with every formula that cells share written out in each of them: where rows move, cells of a group
 * may come to stand at different distances.
 */
export function withoutSharedFormulas(sheet: SheetText): SheetText {
  if (!/\st\s*=\s*["']shared["']/.test(sheet.data)) return sheet;
  const heads = new Map<string, { row: number; column: number; formula: string }>();
  const splices: Splice[] = [];
  sheet.rows.numbers.forEach((row, place) => {
    for (const { column, formula } of readRow(sheet, place).cells) {
      if (!formula || attributeOf(formula.tag, 't') !== 'shared') continue;
      const group = attributeOf(formula.tag, 'si') ?? '';
      let text = plainCellText(formula.source);
      if (text !== '') heads.set(group, { row, column, formula: text });
      else {
        const head = heads.get(group);
        if (head) text = translateFormula(head.formula, row - head.row, column - head.column);
      }
      let tag = openingTag(formula.tag);
      for (const name of ['t', 'si', 'ref']) tag = withoutAttribute(tag, name);
      const element = `${tag}${encodeXml(escapeCellText(text))}</${sheet.prefix}f>`;
      splices.push({ start: formula.start, end: formula.end, text: element });
    }
  });
  return replaceInData(sheet, splices);
}
