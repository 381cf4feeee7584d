import type { NumberLook } from '../workbook/port.ts';
import { lookOfBuiltIn, lookOfCode } from './number-formats.ts';
import { XmlCursor } from './xml-cursor.ts';
import { attributeOf, openingTag, prefixOf, withAttribute } from './xml-tag.ts';
import { encodeAttribute } from './xml-text.ts';

/** The cell formats of a workbook: what a cell's style number stands for. */
export interface CellStyles {
  /** By style number. */
  readonly looks: readonly NumberLook[];
  /** The `xf` elements as written, by style number. */
  readonly formats: readonly string[];
  readonly numberFormats: ReadonlyMap<number, string>;
  /** The highest number of a custom number format, those of conditional formats and tables included. */
  readonly lastNumberFormat: number;
}

const DAY_FORMAT_CODE = 'yyyy-mm-dd';
const FIRST_CUSTOM_FORMAT = 164;
const PLAIN_FORMAT = 'xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"';

export function readStyles(text: string, part: string): CellStyles {
  const numberFormats = new Map<number, string>();
  const formats: string[] = [];
  const ids: number[] = [];
  const cursor = new XmlCursor(text, part);
  let inCellFormats = false;
  let inNumberFormats = false;
  let lastNumberFormat = FIRST_CUSTOM_FORMAT - 1;
  while (cursor.next()) {
    if (cursor.is('cellXfs')) inCellFormats = cursor.isOpening;
    else if (cursor.is('numFmts')) inNumberFormats = cursor.isOpening;
    else if (cursor.begins('numFmt')) {
      const id = Number(cursor.attribute('numFmtId'));
      if (id > lastNumberFormat) lastNumberFormat = id;
      if (inNumberFormats) numberFormats.set(id, cursor.attribute('formatCode') ?? '');
    } else if (inCellFormats && cursor.begins('xf')) {
      const { start } = cursor;
      ids.push(Number(cursor.attribute('numFmtId') ?? 0));
      cursor.skipElement();
      formats.push(text.slice(start, cursor.end));
    }
  }
  const looks = ids.map((id) => {
    const code = numberFormats.get(id);
    return code === undefined ? lookOfBuiltIn(id) : lookOfCode(code);
  });
  return { looks, formats, numberFormats, lastNumberFormat };
}

/** The cell formats of a workbook that has no styles part. */
export const NO_STYLES: CellStyles = {
  looks: [],
  formats: [],
  numberFormats: new Map(),
  lastNumberFormat: FIRST_CUSTOM_FORMAT - 1,
};

/**
 * Finds for a style the one that differs only in showing a day, deriving it where the workbook has none.
 * The numbers of derived styles follow those of the workbook.
 */
export class DayStyles {
  readonly #styles: CellStyles;
  /** Style number by the style that it was derived from. */
  readonly #derived: Map<number | undefined, number>;

  constructor(styles: CellStyles, derived: ReadonlyMap<number | undefined, number> = new Map()) {
    this.#styles = styles;
    this.#derived = new Map(derived);
  }

  fork(): DayStyles {
    return new DayStyles(this.#styles, this.#derived);
  }

  look(style: number | undefined): NumberLook {
    const own = this.#styles.looks[style ?? 0];
    if (own !== undefined) return own;
    return [...this.#derived.values()].includes(style ?? 0) ? 'date' : 'plain';
  }

  /** The style for a day in a cell that has `style` so far. */
  styleForDay(style: number | undefined): number | undefined {
    if (this.look(style) === 'date') return style;
    const known = this.#derived.get(style);
    if (known !== undefined) return known;
    // A part without any cell format gets the plain one first, which style 0 means everywhere.
    const number = Math.max(1, this.#styles.formats.length) + this.#derived.size;
    this.#derived.set(style, number);
    return number;
  }

  get changed(): boolean {
    return this.#derived.size > 0;
  }

  /** The text of the styles part with the derived styles added. */
  write(source: string, part: string): string {
    if (!this.changed) return source;
    const { formats, numberFormats, lastNumberFormat } = this.#styles;
    const known = [...numberFormats].find(([, code]) => code === DAY_FORMAT_CODE)?.[0];
    const id = known ?? lastNumberFormat + 1;
    const prefix = prefixOf(rootTag(source, part));
    const added = [...this.#derived.keys()].map((from) => {
      const base = formats[from ?? 0] ?? `<${prefix}${PLAIN_FORMAT}/>`;
      const tagEnd = base.indexOf('>') + 1;
      const tag = withAttribute(base.slice(0, tagEnd), 'numFmtId', String(id));
      return withAttribute(tag, 'applyNumberFormat', '1') + base.slice(tagEnd);
    });
    if (formats.length === 0) added.unshift(`<${prefix}${PLAIN_FORMAT}/>`);
    const before = ['cellStyles', 'dxfs', 'tableStyles', 'colors', 'extLst'];
    const styled = withItems(source, part, 'cellXfs', added, (name) => before.includes(name));
    if (known !== undefined) return styled;
    const item = `<${prefix}numFmt numFmtId="${id}" formatCode="${encodeAttribute(DAY_FORMAT_CODE)}"/>`;
    return withItems(styled, part, 'numFmts', [item], () => true);
  }
}

/** Adds items to a counted list under the root, made before the first element that `isBehind` where missing. */
function withItems(
  source: string,
  part: string,
  list: string,
  items: readonly string[],
  isBehind: (name: string) => boolean,
): string {
  const cursor = new XmlCursor(source, part);
  let place: number | null = null;
  let root = '';
  while (cursor.next()) {
    if (root === '') {
      root = cursor.tag;
      continue;
    }
    if (!cursor.isOpening && cursor.depth === 0) {
      place ??= cursor.start;
      break;
    }
    if (cursor.begins(list)) {
      const { start, end, tag, isOpening } = cursor;
      const contentEnd = cursor.skipElement();
      const count = Number(attributeOf(tag, 'count') ?? 'none');
      const counted = Number.isInteger(count)
        ? withAttribute(tag, 'count', String(count + items.length))
        : tag;
      const closing = isOpening ? '' : `</${prefixOf(tag)}${list}>`;
      const old = isOpening ? source.slice(end, contentEnd) : '';
      const rest = source.slice(isOpening ? contentEnd : end);
      return source.slice(0, start) + openingTag(counted) + old + items.join('') + closing + rest;
    }
    if (place === null && isBehind(cursor.name)) place = cursor.start;
    cursor.skipElement();
  }
  const prefix = prefixOf(root);
  const made = `<${prefix}${list} count="${items.length}">${items.join('')}</${prefix}${list}>`;
  const at = place ?? source.length;
  return source.slice(0, at) + made + source.slice(at);
}

function rootTag(source: string, part: string): string {
  const cursor = new XmlCursor(source, part);
  cursor.next();
  return cursor.tag;
}

export const STYLES_CONTENT_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml';

/** A styles part for a workbook that has none, in the namespace of the workbook's own part. */
export function plainStyles(workbookText: string): string {
  const strict = workbookText.includes('http://purl.oclc.org/ooxml/spreadsheetml/main');
  const namespace = strict
    ? 'http://purl.oclc.org/ooxml/spreadsheetml/main'
    : 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
  return (
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<styleSheet xmlns="${namespace}">` +
    '<fonts count="1"><font><sz val="11"/><name val="Calibri"/></font></fonts>' +
    '<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>' +
    '<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders>' +
    '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs></styleSheet>'
  );
}
