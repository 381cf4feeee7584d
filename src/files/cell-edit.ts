import type { CellValue } from '../workbook/port.ts';
import { cellName } from './cell-reference.ts';
import { escapeCellText } from './cell-text.ts';
import { textElement } from './shared-strings.ts';
import { encodeXml } from './xml-text.ts';

/** What is to stand in a cell of a sheet, in the file's own terms. */
export interface CellEdit {
  readonly style: number | undefined;
  readonly content: CellContent;
}

export type CellContent =
  | { readonly kind: 'blank' }
  | { readonly kind: 'number'; readonly number: number }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'boolean'; readonly value: boolean }
  /** A formula whose result isn't known yet. */
  | { readonly kind: 'formula'; readonly formula: string; readonly isArray: boolean };

/** What a reader of the file finds in a cell with this content. */
export function valueOfContent(content: CellContent): CellValue {
  switch (content.kind) {
    case 'blank':
      return null;
    case 'number':
      return content.number;
    case 'text':
      return content.text;
    case 'boolean':
      return content.value;
    case 'formula':
      return { shown: `=${content.formula}` };
  }
}

/** Where texts go: a number in the shared strings, or null where they stand in the cells themselves. */
export type NumberOfText = (text: string) => number | null;

/** The cell as XML; '' where there is nothing to say about it. */
export function cellXml(
  row: number,
  column: number,
  edit: CellEdit,
  prefix: string,
  numberOfText: NumberOfText,
): string {
  const { style, content } = edit;
  const name = cellName(row, column);
  const start = `<${prefix}c r="${name}"${style === undefined ? '' : ` s="${style}"`}`;
  const end = `</${prefix}c>`;
  switch (content.kind) {
    case 'blank':
      return style === undefined ? '' : `${start}/>`;
    case 'number':
      return `${start}><${prefix}v>${content.number}</${prefix}v>${end}`;
    case 'text': {
      const number = numberOfText(content.text);
      if (number !== null) return `${start} t="s"><${prefix}v>${number}</${prefix}v>${end}`;
      return `${start} t="inlineStr"><${prefix}is>${textElement(content.text, prefix)}</${prefix}is>${end}`;
    }
    case 'boolean':
      return `${start} t="b"><${prefix}v>${content.value ? 1 : 0}</${prefix}v>${end}`;
    case 'formula': {
      const array = content.isArray ? ` t="array" ref="${name}"` : '';
      return `${start}><${prefix}f${array}>${encodeXml(escapeCellText(content.formula))}</${prefix}f>${end}`;
    }
  }
}
