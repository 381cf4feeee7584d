import { areaName, parseArea } from './cell-reference.ts';
import { escapeCellText, unescapeCellText } from './cell-text.ts';
import { CONTENT_TYPES_PART, readContentTypes } from './content-types.ts';
import { shiftComments, shiftDrawing, shiftVml } from './drawing-shift.ts';
import { FileRefused } from './file-refused.ts';
import { type RowShift, shiftAreaList, shiftFormula } from './formula-shift.ts';
import type { PackageParts } from './package-parts.ts';
import type { RowsTaken } from './rows-taken.ts';
import { rewriteXml } from './xml-rewrite.ts';

/**
 * Refuses where something on the tab can't follow rows put into it.
 * @param sheet the part of the tab
 */
export function refuseWhatCantMove(
  parts: PackageParts,
  workbook: string,
  sheet: string,
  shift: RowShift,
): void {
  if (parts.relationships(workbook).some((each) => each.kind === 'revisionHeaders')) {
    throw new FileRefused(
      `The workbook keeps a history of changes (it is shared in the old way), so rows can't be put into the tab ` +
        `${shift.tab}. Switch sharing off in your spreadsheet program and save it.`,
    );
  }
  for (const { kind, target } of parts.relationships(sheet)) {
    if (kind !== 'pivotTable' && kind !== 'tableSingleCells') continue;
    const references = [
      ...parts
        .text(target)
        .matchAll(/<(?:[^\s:<>/]+:)?(?:location|singleXmlCell)\b[^>]*?\s(?:ref|r)="([^"]*)"/g),
    ];
    for (const [, reference = ''] of references) {
      const area = parseArea(reference);
      if (!area || area.lastRow < shift.at) continue;
      const what = kind === 'pivotTable' ? 'the pivot table' : 'the cell mapped to XML';
      throw new FileRefused(
        `On the tab ${shift.tab} ${what} at ${areaName(area)} is in the way: rows have to be put in at row ` +
          `${shift.at}, and it can't be moved safely. Move it to a tab of its own.`,
      );
    }
  }
}

/** Moves what belongs to the tab but stands in parts of its own: drawings and comments. */
export function shiftPartsOfTab(parts: PackageParts, sheet: string, shift: RowShift): void {
  for (const { kind, target, external } of parts.relationships(sheet)) {
    if (external) continue;
    if (kind === 'drawing') change(parts, target, (text) => shiftDrawing(text, target, shift));
    else if (kind === 'comments' || kind === 'threadedComment') {
      change(parts, target, (text) => shiftComments(text, target, shift));
    } else if (kind === 'vmlDrawing') change(parts, target, (text) => shiftVml(text, shift.tab, shift));
    else if (kind === 'ctrlProp') {
      change(parts, target, (text) =>
        rewriteXml(text, target, {
          attributes: ['fmlaLink', 'fmlaRange', 'fmlaTxbx', 'fmlaGroup'],
          attribute: (value) => shiftFormula(value, shift.tab, shift),
        }),
      );
    }
  }
}

/** Lets names, charts and pivot sources of the whole workbook follow the cells that moved. */
export function shiftSharedParts(parts: PackageParts, workbook: string, shift: RowShift | RowsTaken): void {
  change(parts, workbook, (text) =>
    rewriteXml(text, workbook, {
      elements: ['definedName'],
      text: (formula) => shiftFormula(formula, null, shift),
    }),
  );
  const typeOf = readContentTypes(parts.text(CONTENT_TYPES_PART));
  for (const part of parts.names) {
    const type = typeOf(part) ?? '';
    if (/drawingml\.chart\+xml$|chartex\+xml$/.test(type)) {
      change(parts, part, (text) =>
        rewriteXml(text, part, { elements: ['f'], text: (formula) => shiftFormula(formula, null, shift) }),
      );
    } else if (type.includes('pivotCacheDefinition')) {
      change(parts, part, (text) => shiftPivotSource(text, part, shift));
    }
  }
}

/** Lets the formulas that a table's part holds follow the cells that moved. */
export function shiftTableFormulas(
  parts: PackageParts,
  part: string,
  tab: string,
  shift: RowShift | RowsTaken,
): void {
  change(parts, part, (text) =>
    rewriteXml(text, part, {
      elements: ['calculatedColumnFormula', 'totalsRowFormula'],
      text: (formula) => escapeCellText(shiftFormula(unescapeCellText(formula), tab, shift)),
    }),
  );
}

function shiftPivotSource(text: string, part: string, shift: RowShift | RowsTaken): string {
  const tab = /<(?:[^\s:<>/]+:)?worksheetSource\b[^>]*?\ssheet="([^"]*)"/.exec(text)?.[1];
  if (tab === undefined || tab.toLowerCase() !== shift.tab.toLowerCase()) return text;
  return rewriteXml(text, part, {
    attributes: ['ref'],
    attribute: (value, _, element) => (element === 'worksheetSource' ? shiftAreaList(value, shift) : value),
  });
}

function change(parts: PackageParts, part: string, rewrite: (text: string) => string): void {
  const text = parts.find(part);
  if (text === undefined) return;
  const written = rewrite(text);
  if (written !== text) parts.replace(part, written);
}
