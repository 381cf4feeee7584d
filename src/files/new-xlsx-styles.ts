import type { ColumnBlueprint } from '../workbook/blueprint.ts';

const INK = 'FF2B2F33';
const GREY = 'FF6B7278';
const HEADER_FILL = 'FF3F5B57';
const BAND_FILL = 'FFF3F6F5';
const LINE = 'FFD5DCDA';

export const TABLE_STYLE = 'Jarleaf';

const DAY_FORMAT = 164;
const FORMAT_IDS: Readonly<Record<ColumnBlueprint['format'], number>> = {
  text: 49,
  'long text': 49,
  number: 0,
  day: DAY_FORMAT,
  money: 4,
  percent: 10,
};
const FORMATS = Object.keys(FORMAT_IDS) as ColumnBlueprint['format'][];

/** The style numbers of a made workbook: 0 plain, then these, then four for each format of a column. */
export const TITLE_STYLE = 1;
export const LINE_STYLE = 2;
export const TOTALS_LABEL_STYLE = 3;
const FIRST_COLUMN_STYLE = 4;
const VARIANTS = ['header', 'body', 'muted', 'totals'] as const;

/** The style number of a column's cells in one part of its table. */
export function columnStyleNumber(column: ColumnBlueprint, part: 'header' | 'body' | 'totals'): number {
  const variant = part === 'body' && column.muted ? 'muted' : part;
  return FIRST_COLUMN_STYLE + FORMATS.indexOf(column.format) * VARIANTS.length + VARIANTS.indexOf(variant);
}

/** The styles part: a calm look that doesn't depend on table styles, which not every program draws. */
export function newStyles(): string {
  const fonts = [
    font(11, INK),
    font(16, HEADER_FILL, '<b/>'),
    font(10, GREY),
    font(11, 'FFFFFFFF', '<b/>'),
    font(11, GREY),
    font(11, INK, '<b/>'),
  ];
  const fills = [
    '<fill><patternFill patternType="none"/></fill>',
    '<fill><patternFill patternType="gray125"/></fill>',
    fill(HEADER_FILL),
  ];
  const borders = [
    '<border><left/><right/><top/><bottom/><diagonal/></border>',
    `<border><left/><right/><top/>${edge('bottom', 'thin')}<diagonal/></border>`,
    `<border><left/><right/>${edge('top', 'medium')}<bottom/><diagonal/></border>`,
  ];
  const formats = [
    '<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>',
    format(0, 1, 0, 0, 'vertical="center"'),
    format(0, 2, 0, 0, 'vertical="top"'),
    format(0, 5, 0, 2, 'vertical="center"'),
    ...FORMATS.flatMap((name) => [
      format(0, 3, 2, 0, headerPlaced(name)),
      format(FORMAT_IDS[name], 0, 0, 1, placed(name)),
      format(FORMAT_IDS[name], 4, 0, 1, placed(name)),
      format(FORMAT_IDS[name], 5, 0, 2, 'vertical="center"'),
    ]),
  ];
  const differences = [
    `<dxf><font><b/><color rgb="FFFFFFFF"/></font>${solid(HEADER_FILL)}</dxf>`,
    `<dxf>${solid(BAND_FILL)}</dxf>`,
    '<dxf><font><b/></font></dxf>',
  ];
  return (
    '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">' +
    `<numFmts count="1"><numFmt numFmtId="${DAY_FORMAT}" formatCode="yyyy\\-mm\\-dd"/></numFmts>` +
    list('fonts', fonts) +
    list('fills', fills) +
    list('borders', borders) +
    '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
    list('cellXfs', formats) +
    '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>' +
    list('dxfs', differences) +
    `<tableStyles count="1" defaultTableStyle="${TABLE_STYLE}" defaultPivotStyle="PivotStyleLight16">` +
    `<tableStyle name="${TABLE_STYLE}" pivot="0" count="3"><tableStyleElement type="headerRow" dxfId="0"/>` +
    '<tableStyleElement type="totalRow" dxfId="2"/><tableStyleElement type="secondRowStripe" dxfId="1"/></tableStyle>' +
    '</tableStyles></styleSheet>'
  );
}

function font(size: number, colour: string, extra = ''): string {
  return `<font>${extra}<sz val="${size}"/><color rgb="${colour}"/><name val="Calibri"/><family val="2"/></font>`;
}

function fill(colour: string): string {
  const colours = `<fgColor rgb="${colour}"/><bgColor indexed="64"/>`;
  return `<fill><patternFill patternType="solid">${colours}</patternFill></fill>`;
}

function edge(name: string, style: string): string {
  return `<${name} style="${style}"><color rgb="${LINE}"/></${name}>`;
}

function format(id: number, fontId: number, fillId: number, borderId: number, alignment: string): string {
  return (
    `<xf numFmtId="${id}" fontId="${fontId}" fillId="${fillId}" borderId="${borderId}" xfId="0" ` +
    'applyNumberFormat="1" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1">' +
    `<alignment ${alignment}/></xf>`
  );
}

/** Text stands off a little, so that it does not run into a number before it. */
function placed(name: ColumnBlueprint['format']): string {
  if (name === 'long text') return 'horizontal="left" indent="1" vertical="top" wrapText="1"';
  return name === 'text' ? 'horizontal="left" indent="1" vertical="top"' : 'vertical="top"';
}

/** A header stands over its column's values. */
function headerPlaced(name: ColumnBlueprint['format']): string {
  const side =
    name === 'text' || name === 'long text' ? 'horizontal="left" indent="1"' : 'horizontal="right"';
  return `${side} vertical="center" wrapText="1"`;
}

/** A list of the styles part with its count. */
function list(name: string, items: readonly string[]): string {
  return `<${name} count="${items.length}">${items.join('')}</${name}>`;
}

/** What a table style's element looks like where it shows only a fill of its own. */
function solid(colour: string): string {
  return `<fill><patternFill patternType="solid"><bgColor rgb="${colour}"/></patternFill></fill>`;
}
