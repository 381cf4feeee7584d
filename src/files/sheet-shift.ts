import { areaName, cellName, parseArea } from './cell-reference.ts';
import { escapeCellText, unescapeCellText } from './cell-text.ts';
import { FileRefused } from './file-refused.ts';
import { type RowShift, shiftAreaList, shiftFormula } from './formula-shift.ts';
import type { RowsTaken } from './rows-taken.ts';
import { rewriteRules } from './rule-shift.ts';
import { withoutSharedFormulas } from './shared-formulas-expand.ts';
import { plainCellText } from './shared-strings.ts';
import { columnAt, rowNumberAt, type SheetText } from './sheet-rows.ts';
import { type Splice, splice } from './sheet-splice.ts';
import { XmlCursor } from './xml-cursor.ts';
import { rewriteXml } from './xml-rewrite.ts';
import { withAttribute } from './xml-tag.ts';
import { encodeXml } from './xml-text.ts';

/** The text of a sheet's part after rows were put into it. */
export function shiftSheet(sheet: SheetText, shift: RowShift): string {
  const expanded = withoutSharedFormulas(sheet);
  const { part, tab } = sheet;
  const head = rewriteXml(expanded.head, part, {
    attributes: ['ref', 'sqref', 'activeCell', 'topLeftCell'],
    attribute: (value) => shiftAreaList(value, shift),
  });
  return head + shiftRows(expanded, shift) + shiftTail(expanded.tail, part, tab, shift);
}

/** The text of another sheet's part, its formulas following the cells that moved. */
export function shiftReferences(sheet: SheetText, shift: RowShift | RowsTaken): string {
  const { part, tab } = sheet;
  // Cells that share a formula may come to refer to places at different distances, so each is looked at alone.
  const { data: expanded } = withoutSharedFormulas(sheet);
  const shifted = rewriteXml(expanded, part, {
    elements: ['f'],
    text: (text) => escapeCellText(shiftFormula(unescapeCellText(text), tab, shift)),
  });
  const data = shifted === expanded ? sheet.data : shifted;
  return sheet.head + data + shiftRuleFormulas(sheet.tail, part, tab, shift);
}

function shiftRows(sheet: SheetText, shift: RowShift): string {
  const { data, part, tab } = sheet;
  const splices: Splice[] = [];
  const cursor = new XmlCursor(data, part);
  let row = 0;
  let column = 0;
  const number = (): number => (row >= shift.at ? row + shift.count : row);
  while (cursor.next()) {
    if (cursor.isClosing) continue;
    let { tag } = cursor;
    if (cursor.is('row')) {
      row = rowNumberAt(cursor, row, tab);
      column = 0;
      if (row >= shift.at) tag = withAttribute(tag, 'r', String(number()));
    } else if (cursor.is('c')) {
      column = columnAt(cursor, column, row, tab);
      if (row >= shift.at && cursor.attribute('r') !== undefined) {
        tag = withAttribute(tag, 'r', cellName(number(), column));
      }
    } else if (cursor.is('f')) {
      tag = shiftedFormulaTag(cursor, shift, tab);
    }
    if (tag !== cursor.tag) splices.push({ start: cursor.start, end: cursor.end, text: tag });
    if (!cursor.is('f') || !cursor.isOpening) continue;
    const start = cursor.end;
    const text = plainCellText(data.slice(start, cursor.skipElement()));
    const formula = shiftFormula(text, tab, shift);
    if (formula !== text)
      splices.push({ start, end: cursor.start, text: encodeXml(escapeCellText(formula)) });
  }
  return splice(data, splices);
}

function shiftedFormulaTag(cursor: XmlCursor, shift: RowShift, tab: string): string {
  let { tag } = cursor;
  const reference = cursor.attribute('ref');
  const area = reference === undefined ? null : parseArea(reference);
  if (area && area.firstRow < shift.at && area.lastRow >= shift.at) {
    throw new FileRefused(
      `On the tab ${tab} the formula that fills ${areaName(area)} is in the way: rows would have to be put in ` +
        `at row ${shift.at}, in the middle of it. Move it to another place.`,
    );
  }
  for (const name of ['ref', 'r1', 'r2']) {
    const value = cursor.attribute(name);
    if (value !== undefined) tag = withAttribute(tag, name, shiftAreaList(value, shift));
  }
  return tag;
}

function shiftTail(tail: string, part: string, tab: string, shift: RowShift): string {
  const rules = shiftRowBreaks(shiftRuleFormulas(tail, part, tab, shift), part, shift);
  return rewriteXml(
    rules,
    part,
    {
      attributes: ['ref', 'sqref', 'r', 'topLeftCell', 'activeCell'],
      attribute: (value, name, element) => {
        if (name === 'r' && element !== 'cellWatch' && element !== 'inputCells') return value;
        // What is consolidated is named with its own tab.
        return element === 'dataRef' ? value : shiftAreaList(value, shift);
      },
      elements: ['sqref', 'row'],
      text: (text, element) =>
        element === 'sqref' ? shiftAreaList(text, shift) : shiftAnchorRow(text, shift),
    },
    [0, rules.lastIndexOf('</')],
  );
}

function shiftRowBreaks(tail: string, part: string, shift: RowShift): string {
  const breaks = /<(?:[^\s:<>/]+:)?rowBreaks[\s>].*?<\/(?:[^\s:<>/]+:)?rowBreaks\s*>/s.exec(tail);
  if (!breaks) return tail;
  const rewrite = {
    attributes: ['id'],
    attribute: (row: string) => (Number(row) >= shift.at ? String(Number(row) + shift.count) : row),
  };
  return rewriteXml(tail, part, rewrite, [breaks.index, breaks.index + breaks[0].length]);
}

/** A row of a drawing's anchor, which counts from 0. */
export function shiftAnchorRow(text: string, shift: RowShift): string {
  const row = Number(text);
  return Number.isInteger(row) && row + 1 >= shift.at ? String(row + shift.count) : text;
}

function shiftRuleFormulas(tail: string, part: string, tab: string, shift: RowShift | RowsTaken): string {
  return rewriteRules(tail, part, (formula, firstRow) => {
    const staysInPlace = firstRow !== null && (firstRow < shift.at || shift.taken !== undefined);
    return shiftFormula(formula, tab, shift, staysInPlace);
  });
}
