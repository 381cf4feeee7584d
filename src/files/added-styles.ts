import { newStyles, TABLE_STYLE } from './new-xlsx-styles.ts';
import { readStyles } from './styles-part.ts';
import { listItems, rootTag, withItems } from './xml-list.ts';
import { rewriteXml } from './xml-rewrite.ts';
import { prefixOf } from './xml-tag.ts';

/** The lists of a styles part in the order of the schema (ISO/IEC 29500-1, 18.8.39). */
const ORDER = [
  'numFmts',
  'fonts',
  'fills',
  'borders',
  'cellStyleXfs',
  'cellXfs',
  'cellStyles',
  'dxfs',
  'tableStyles',
  'colors',
  'extLst',
];

/** Adds the styles of a made workbook to another one's styles part; `base` is the number that its first style gets. */
export function withNewStyles(source: string, part: string): { text: string; base: number } {
  const { lastNumberFormat, formats } = readStyles(source, part);
  const made = newStyles();
  const prefix = prefixOf(rootTag(source, part));
  const numberFormat = lastNumberFormat + 1;
  const before = (list: string): number => listItems(source, part, list).length;
  const offsets: Readonly<Record<string, number>> = {
    fontId: before('fonts'),
    fillId: before('fills'),
    borderId: before('borders'),
    dxfId: before('dxfs'),
  };
  const moved = (item: string): string => {
    const numbered = rewriteXml(
      item,
      part,
      {
        attributes: [...Object.keys(offsets), 'numFmtId'],
        attribute: (value, name) => {
          if (name !== 'numFmtId') return String(Number(value) + (offsets[name] ?? 0));
          return value === '164' ? String(numberFormat) : value;
        },
      },
      [0, item.length],
    );
    return prefix === '' ? numbered : numbered.replace(/<(\/?)(?=\w)/g, `<$1${prefix}`);
  };
  let text = source;
  for (const list of ['numFmts', 'fonts', 'fills', 'borders', 'cellXfs', 'dxfs', 'tableStyles']) {
    if (list === 'tableStyles' && source.includes(`name="${TABLE_STYLE}"`)) continue;
    const behind = ORDER.slice(ORDER.indexOf(list) + 1);
    const items = listItems(made, part, list).map(moved);
    text = withItems(text, part, list, items, (name) => behind.includes(name));
  }
  return { text, base: formats.length };
}
