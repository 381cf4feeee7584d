import type { DateSystem } from '../core/serial-date.ts';
import { damaged } from './file-refused.ts';
import type { Relationship } from './relationships.ts';
import { XmlCursor } from './xml-cursor.ts';
import { prefixOf, withAttribute } from './xml-tag.ts';

/** A tab and the part that holds its cells. */
export interface Tab {
  readonly name: string;
  readonly part: string;
  /** Whether spreadsheet programs keep it from view. */
  readonly hidden: boolean;
}

export interface WorkbookPart {
  readonly dateSystem: DateSystem;
  /** The tabs that hold cells, in their order; chart tabs are left out. */
  readonly tabs: readonly Tab[];
}

/** Reads the workbook's own part: its tabs and how it counts days. */
export function readWorkbookPart(
  text: string,
  part: string,
  relationships: readonly Relationship[],
): WorkbookPart {
  let dateSystem: DateSystem = 1900;
  const tabs: Tab[] = [];
  const cursor = new XmlCursor(text, part);
  let inSheets = false;
  while (cursor.next()) {
    if (cursor.is('sheets')) inSheets = cursor.isOpening;
    else if (cursor.begins('workbookPr') && cursor.depth <= 2) {
      if (/^(?:1|true|on)$/.test(cursor.attribute('date1904') ?? '')) dateSystem = 1904;
    } else if (inSheets && cursor.begins('sheet')) {
      const name = cursor.attribute('name') ?? '';
      const id = cursor.prefixedAttribute('id');
      const relationship = relationships.find((each) => each.id === id);
      if (!relationship) throw damaged(`the tab ${name} is named but not there`);
      const hidden = (cursor.attribute('state') ?? 'visible') !== 'visible';
      if (relationship.kind === 'worksheet') tabs.push({ name, part: relationship.target, hidden });
    }
  }
  return { dateSystem, tabs };
}

/** What may stand before the calculation properties in the workbook's part, in the order of the schema. */
const BEFORE_CALCULATION = new Set([
  'fileVersion',
  'fileSharing',
  'workbookPr',
  'workbookProtection',
  'bookViews',
  'sheets',
  'functionGroups',
  'externalReferences',
  'definedNames',
]);

/** The workbook's part, telling the spreadsheet program to calculate every formula when it opens the file. */
export function withCalculationOnLoad(text: string, part: string): string {
  const cursor = new XmlCursor(text, part);
  cursor.next();
  const prefix = prefixOf(cursor.tag);
  let place = cursor.end;
  while (cursor.next()) {
    if (cursor.isClosing) break;
    if (cursor.is('calcPr')) {
      const { start, end, tag } = cursor;
      return text.slice(0, start) + withAttribute(tag, 'fullCalcOnLoad', '1') + text.slice(end);
    }
    const before = BEFORE_CALCULATION.has(cursor.name);
    cursor.skipElement();
    if (before) place = cursor.end;
  }
  return `${text.slice(0, place)}<${prefix}calcPr fullCalcOnLoad="1"/>${text.slice(place)}`;
}
