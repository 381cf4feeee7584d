import { type CellArea, parseArea } from './cell-reference.ts';
import type { SheetText } from './sheet-rows.ts';
import { attributeOf } from './xml-tag.ts';

/** The areas of formulas that fill several cells at once (array formulas, data tables). */
export function arrayAreas({ data }: SheetText): CellArea[] {
  if (!/\st\s*=\s*["'](?:array|dataTable)["']/.test(data)) return [];
  const areas: CellArea[] = [];
  for (const [tag] of data.matchAll(/<(?:[^\s:<>/]+:)?f\s[^>]*>/g)) {
    if (!/^(?:array|dataTable)$/.test(attributeOf(tag, 't') ?? '')) continue;
    const reference = attributeOf(tag, 'ref') ?? '';
    const area = reference.includes(':') ? parseArea(reference) : null;
    if (area) areas.push(area);
  }
  return areas;
}
