import { type RowShift, shiftAreaList, shiftFormula } from './formula-shift.ts';
import { shiftAnchorRow } from './sheet-shift.ts';
import { type Splice, splice } from './sheet-splice.ts';
import { XmlCursor } from './xml-cursor.ts';
import { rewriteXml } from './xml-rewrite.ts';

/** A drawing's part after rows were put in: what stands below moves, what they fall into grows if it may. */
export function shiftDrawing(text: string, part: string, shift: RowShift): string {
  const splices: Splice[] = [];
  const cursor = new XmlCursor(text, part);
  while (cursor.next()) {
    if (!cursor.begins('twoCellAnchor') && !cursor.begins('oneCellAnchor')) continue;
    const keepsSize = cursor.attribute('editAs') === 'oneCell';
    const keepsPlace = cursor.attribute('editAs') === 'absolute';
    const { start } = cursor;
    cursor.skipElement();
    if (keepsPlace) continue;
    const source = text.slice(start, cursor.end);
    const firstRow = Number(/<(?:[^\s:<>/]+:)?from>.*?<(?:[^\s:<>/]+:)?row>\s*(\d+)/s.exec(source)?.[1] ?? 0);
    if (keepsSize && firstRow + 1 < shift.at) continue;
    const written = rewriteXml(source, part, {
      elements: ['row'],
      text: (row) => shiftAnchorRow(row, shift),
    });
    if (written !== source) splices.push({ start, end: cursor.end, text: written });
  }
  return splice(text, splices);
}

/** A comments part (old form or threaded) after rows were put in. */
export function shiftComments(text: string, part: string, shift: RowShift): string {
  return rewriteXml(text, part, {
    attributes: ['ref'],
    attribute: (value, _, element) =>
      element.toLowerCase().endsWith('comment') ? shiftAreaList(value, shift) : value,
  });
}

/**
 * The drawing behind comments and old form controls after rows were put in. It is HTML-like text that isn't
 * always well formed, so only the elements that name rows are looked for.
 */
export function shiftVml(text: string, tab: string, shift: RowShift): string {
  return text
    .replace(
      /(<x:Row>\s*)(\d+)(?=\s*<)/g,
      (_, before: string, row: string) => before + shiftAnchorRow(row, shift),
    )
    .replace(/(<x:Anchor>)([^<]*)(?=<)/g, (whole, before: string, list: string) => {
      const numbers = list.split(',');
      if (numbers.length !== 8) return whole;
      // Left column, offset, top row, offset, right column, offset, bottom row, offset.
      for (const index of [2, 6]) {
        const number = numbers[index] as string;
        numbers[index] = number.replace(/\d+/, (row) => shiftAnchorRow(row, shift));
      }
      return before + numbers.join(',');
    })
    .replace(
      /(<x:Fmla(?:Link|Range|Macro|Txbx|Pict|Group)>)([^<]*)(?=<)/g,
      (_, before: string, formula: string) => {
        return before + shiftFormula(formula, tab, shift);
      },
    );
}
