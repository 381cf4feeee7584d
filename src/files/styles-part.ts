import { lookOfCode } from '../workbook/number-formats.ts';
import type { NumberLook } from '../workbook/port.ts';
import { builtInCode, lookOfBuiltIn } from './number-formats.ts';
import { XmlCursor } from './xml-cursor.ts';
import { rootTag, withItems } from './xml-list.ts';
import { prefixOf, withAttribute } from './xml-tag.ts';
import { encodeAttribute } from './xml-text.ts';

/** The cell formats of a workbook: what a cell's style number stands for. */
export interface CellStyles {
  /** By style number. */
  readonly looks: readonly NumberLook[];
  /** The number format codes, by style number; of a built-in one that has no code, General. */
  readonly codes: readonly string[];
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
  const codes = ids.map((id) => numberFormats.get(id) ?? builtInCode(id));
  return { looks, codes, formats, numberFormats, lastNumberFormat };
}

/** The cell formats of a workbook that has no styles part. */
export const NO_STYLES: CellStyles = {
  looks: [],
  codes: [],
  formats: [],
  numberFormats: new Map(),
  lastNumberFormat: FIRST_CUSTOM_FORMAT - 1,
};

/** What a derived style shows a cell as: a day, a percentage (whole, or with two decimals), text, a number, money. */
export type DerivedLook = 'day' | 'percent' | 'exact percent' | 'text' | 'number' | 'money';

const DERIVED_CODES: Readonly<Record<DerivedLook, string>> = {
  day: DAY_FORMAT_CODE,
  percent: '0%',
  'exact percent': '0.00%',
  text: '@',
  number: 'General',
  money: '#,##0.00',
};
const LOOKS: Readonly<Record<DerivedLook, NumberLook>> = {
  day: 'date',
  percent: 'percent',
  'exact percent': 'percent',
  text: 'plain',
  number: 'plain',
  money: 'plain',
};
/** The numbers of those that are built in. */
const DERIVED_IDS: Readonly<Partial<Record<DerivedLook, number>>> = {
  percent: 9,
  'exact percent': 10,
  text: 49,
  number: 0,
  money: 4,
};

interface Derived {
  readonly from: number | undefined;
  readonly look: DerivedLook;
}

/**
 * Finds for a style the one that differs only in how it shows a number, deriving it where the workbook has none.
 * The numbers of derived styles follow those of the workbook.
 */
export class DerivedStyles {
  readonly #styles: CellStyles;
  readonly #derived: Derived[];

  constructor(styles: CellStyles, derived: readonly Derived[] = []) {
    this.#styles = styles;
    this.#derived = [...derived];
  }

  fork(): DerivedStyles {
    return new DerivedStyles(this.#styles, this.#derived);
  }

  look(style: number | undefined): NumberLook {
    const own = this.#styles.looks[style ?? 0];
    if (own !== undefined) return own;
    const derived = this.#derivedOf(style);
    return derived === undefined ? 'plain' : LOOKS[derived.look];
  }

  /** The number format code that a cell of this style is shown by. */
  code(style: number | undefined): string {
    const derived = this.#derivedOf(style);
    return this.#styles.codes[style ?? 0] ?? (derived ? DERIVED_CODES[derived.look] : 'General');
  }

  /** The style for a number to be shown in such a way, in a cell that has `style` so far. */
  styleFor(look: DerivedLook, style: number | undefined): number | undefined {
    if (this.isShownAs(look, style)) return style;
    const known = this.#derived.findIndex((each) => each.from === style && each.look === look);
    return this.#firstDerived + (known < 0 ? this.#derived.push({ from: style, look }) - 1 : known);
  }

  /** Whether a cell of this style is shown so already. */
  isShownAs(look: DerivedLook, style: number | undefined): boolean {
    return LOOKS[look] === 'plain'
      ? this.code(style) === DERIVED_CODES[look]
      : this.look(style) === LOOKS[look];
  }

  get changed(): boolean {
    return this.#derived.length > 0;
  }

  /** A part without any cell format gets the plain one first, which style 0 means everywhere. */
  get #firstDerived(): number {
    return Math.max(1, this.#styles.formats.length);
  }

  #derivedOf(style: number | undefined): Derived | undefined {
    return style === undefined ? undefined : this.#derived[style - this.#firstDerived];
  }

  /** The text of the styles part with the derived styles added. */
  write(source: string, part: string): string {
    if (!this.changed) return source;
    const { formats, numberFormats, lastNumberFormat } = this.#styles;
    const known = [...numberFormats].find(([, code]) => code === DAY_FORMAT_CODE)?.[0];
    const dayId = known ?? lastNumberFormat + 1;
    const prefix = prefixOf(rootTag(source, part));
    const added = this.#derived.map(({ from, look }) => {
      // A style may be derived from a derived one: a day typed over a percentage.
      const base = formats[this.#original(from)] ?? `<${prefix}${PLAIN_FORMAT}/>`;
      const tagEnd = base.indexOf('>') + 1;
      const tag = withAttribute(base.slice(0, tagEnd), 'numFmtId', String(DERIVED_IDS[look] ?? dayId));
      return withAttribute(tag, 'applyNumberFormat', '1') + base.slice(tagEnd);
    });
    if (formats.length === 0) added.unshift(`<${prefix}${PLAIN_FORMAT}/>`);
    const before = ['cellStyles', 'dxfs', 'tableStyles', 'colors', 'extLst'];
    const styled = withItems(source, part, 'cellXfs', added, (name) => before.includes(name));
    if (known !== undefined || this.#derived.every(({ look }) => look !== 'day')) return styled;
    const item = `<${prefix}numFmt numFmtId="${dayId}" formatCode="${encodeAttribute(DAY_FORMAT_CODE)}"/>`;
    return withItems(styled, part, 'numFmts', [item], () => true);
  }

  #original(style: number | undefined): number {
    const derived = this.#derivedOf(style);
    return derived ? this.#original(derived.from) : (style ?? 0);
  }
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
