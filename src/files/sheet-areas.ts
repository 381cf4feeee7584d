import { areaName, type CellArea, parseArea } from './cell-reference.ts';
import type { SheetText } from './sheet-rows.ts';
import { type Splice, splice } from './sheet-splice.ts';
import { XmlCursor } from './xml-cursor.ts';
import { withAttribute } from './xml-tag.ts';

/**
 * The list of areas to which a rule applies, after a table has grown below `lastRow` by `count` rows: an area
 * that ends at the table's last row goes on over its new rows, within the columns of the table.
 */
export function grownAreas(list: string, table: CellArea, lastRow: number, count: number): string {
  const areas = list.split(/\s+/).filter((each) => each !== '');
  return areas
    .flatMap((name) => {
      const area = parseArea(name);
      if (!area || area.lastRow !== lastRow) return [name];
      const firstColumn = Math.max(area.firstColumn, table.firstColumn);
      const lastColumn = Math.min(area.lastColumn, table.lastColumn);
      if (firstColumn > lastColumn) return [name];
      if (firstColumn === area.firstColumn && lastColumn === area.lastColumn) {
        return [areaName({ ...area, lastRow: lastRow + count })];
      }
      return [name, areaName({ firstRow: lastRow + 1, lastRow: lastRow + count, firstColumn, lastColumn })];
    })
    .join(' ');
}

/** The sheet with its validations and conditional formats, old form and new (x14), reaching over the new rows. */
export function withGrownRules(sheet: SheetText, table: CellArea, lastRow: number, count: number): SheetText {
  const { tail, part } = sheet;
  const splices: Splice[] = [];
  const cursor = new XmlCursor(tail, part, [0, tail.lastIndexOf('</')]);
  while (cursor.next()) {
    if (cursor.isClosing) continue;
    if (cursor.is('dataValidation') || cursor.is('conditionalFormatting')) {
      const list = cursor.attribute('sqref');
      if (list === undefined) continue;
      const grown = grownAreas(list, table, lastRow, count);
      if (grown === list) continue;
      splices.push({ start: cursor.start, end: cursor.end, text: withAttribute(cursor.tag, 'sqref', grown) });
    } else if (cursor.is('sqref') && cursor.isOpening) {
      const start = cursor.end;
      const list = cursor.readText();
      const grown = grownAreas(list, table, lastRow, count);
      if (grown !== list) splices.push({ start, end: cursor.start, text: grown });
    }
  }
  return splices.length === 0 ? sheet : { ...sheet, tail: splice(tail, splices) };
}

/** The areas of merged cells. */
export function mergedAreas({ tail, part }: SheetText): CellArea[] {
  const areas: CellArea[] = [];
  const cursor = new XmlCursor(tail, part, [0, tail.lastIndexOf('</')]);
  while (cursor.next()) {
    const area = cursor.begins('mergeCell') ? parseArea(cursor.attribute('ref') ?? '') : null;
    if (area) areas.push(area);
  }
  return areas;
}
