import { type DateSystem, serialOfDay } from '../core/serial-date.ts';
import type { ColumnBlueprint, TabBlueprint, TableBlueprint } from '../workbook/blueprint.ts';
import { listName } from '../workbook/blueprint-names.ts';
import type { CellWrite } from '../workbook/port.ts';
import { type CellContent, cellXml, type NumberOfText } from './cell-edit.ts';
import { areaName, type CellArea, cellName } from './cell-reference.ts';
import * as styles from './new-xlsx-styles.ts';
import { placeTable, type TablePlace, totalFormula } from './new-xlsx-table.ts';
import { encodeAttribute, encodeXml } from './xml-text.ts';

const HEADER_HEIGHT = 32;
const TITLE_HEIGHT = 26;
const LINE_HEIGHT = 15;
/** Characters of a column's width that padding and breaks between words take off a wrapped line. */
const LOST_IN_WRAPPING = 4;
const NOTE_LIMIT = 255;
const NOTE_TITLE_LIMIT = 32;
const WORDS_LIMIT = 255;

export interface SheetContext {
  readonly dateSystem: DateSystem;
  readonly numberOfText: NumberOfText;
}

/** The row of a tab's table headers, below its lines and a free row. */
export function headerRowOf(tab: TabBlueprint): number {
  const lines = tab.lines?.length ?? 0;
  return lines === 0 ? 1 : lines + 2;
}

/** The part of one tab; its first relationship leads to its table, the second to the drawing that holds its chart. */
export function newSheetPart(tab: TabBlueprint, context: SheetContext, selected: boolean): string {
  const headerRow = headerRowOf(tab);
  const place = tab.table ? placeTable(tab.table, headerRow) : null;
  const rows = [
    ...lineRows(tab, context),
    ...(tab.table && place ? tableRows(tab.table, place, context) : []),
  ];
  const used: CellArea = {
    firstRow: 1,
    lastRow: place?.area.lastRow ?? Math.max(1, tab.lines?.length ?? 0),
    firstColumn: 1,
    lastColumn: place?.area.lastColumn ?? 1,
  };
  const colour = tab.colour ? `<tabColor rgb="FF${tab.colour}"/>` : '';
  return (
    '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" ' +
    'xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships">' +
    `<sheetPr>${colour}<pageSetUpPr fitToPage="1"/></sheetPr><dimension ref="${areaName(used)}"/>` +
    sheetView(headerRow, place, selected) +
    '<sheetFormatPr defaultRowHeight="15"/>' +
    columnWidths(tab.table) +
    `<sheetData>${rows.join('')}</sheetData>` +
    (tab.table && place ? validations(tab.table, place) : '') +
    '<pageMargins left="0.5" right="0.5" top="0.6" bottom="0.6" header="0.3" footer="0.3"/>' +
    '<pageSetup orientation="landscape" fitToHeight="0"/>' +
    '<headerFooter><oddFooter>&amp;L&amp;A&amp;R&amp;P / &amp;N</oddFooter></headerFooter>' +
    (tab.table?.chart ? '<drawing r:id="rId2"/>' : '') +
    (tab.table ? '<tableParts count="1"><tablePart r:id="rId1"/></tableParts>' : '') +
    '</worksheet>'
  );
}

function sheetView(headerRow: number, place: TablePlace | null, selected: boolean): string {
  const chosen = selected ? ' tabSelected="1"' : '';
  if (!place) return `<sheetViews><sheetView showGridLines="0"${chosen} workbookViewId="0"/></sheetViews>`;
  const first = cellName(place.body.firstRow, 1);
  return (
    `<sheetViews><sheetView showGridLines="0"${chosen} workbookViewId="0">` +
    `<pane ySplit="${headerRow}" topLeftCell="${first}" activePane="bottomLeft" state="frozen"/>` +
    `<selection pane="bottomLeft" activeCell="${first}" sqref="${first}"/></sheetView></sheetViews>`
  );
}

function columnWidths(table: TableBlueprint | undefined): string {
  if (!table) return '<cols><col min="1" max="1" width="100" customWidth="1"/></cols>';
  const columns = table.columns.map(({ width }, index) => {
    const number = index + 1;
    return `<col min="${number}" max="${number}" width="${width}" customWidth="1"/>`;
  });
  return `<cols>${columns.join('')}</cols>`;
}

function lineRows(tab: TabBlueprint, context: SheetContext): string[] {
  return (tab.lines ?? []).map((text, index) => {
    const style = index === 0 ? styles.TITLE_STYLE : styles.LINE_STYLE;
    const height = index === 0 ? ` ht="${TITLE_HEIGHT}" customHeight="1"` : '';
    const cell = cellXml(index + 1, 1, { style, content: { kind: 'text', text } }, '', context.numberOfText);
    return `<row r="${index + 1}"${height}>${cell}</row>`;
  });
}
/** The height that a row needs for its wrapped text: not every program works it out when it opens a file. */
function heightOf(table: TableBlueprint, cells: readonly (CellWrite | null | undefined)[]): string {
  const lines = table.columns.map(({ format, width }, index) => {
    const cell = cells[index];
    return format === 'long text' && cell?.kind === 'text'
      ? Math.ceil(cell.text.length / Math.max(width - LOST_IN_WRAPPING, 1))
      : 1;
  });
  const most = Math.max(...lines);
  return most === 1 ? '' : ` ht="${most * LINE_HEIGHT}" customHeight="1"`;
}

function tableRows(table: TableBlueprint, place: TablePlace, context: SheetContext): string[] {
  const { numberOfText } = context;
  const row = (
    number: number,
    attributes: string,
    cell: (column: ColumnBlueprint, index: number) => string,
  ) => `<row r="${number}"${attributes}>${table.columns.map(cell).join('')}</row>`;
  const rows = [
    row(place.area.firstRow, ` ht="${HEADER_HEIGHT}" customHeight="1"`, (column, index) => {
      const content: CellContent = { kind: 'text', text: column.header };
      return cellXml(
        place.area.firstRow,
        index + 1,
        { style: styles.columnStyleNumber(column, 'header'), content },
        '',
        numberOfText,
      );
    }),
  ];
  for (let number = place.body.firstRow; number <= place.body.lastRow; number++) {
    const given = table.rows[number - place.body.firstRow] ?? [];
    rows.push(
      row(number, heightOf(table, given), (column, index) => {
        const content = contentOf(column, given[index], context.dateSystem);
        const style = styles.columnStyleNumber(column, 'body');
        return cellXml(number, index + 1, { style, content }, '', numberOfText);
      }),
    );
  }
  const { totals } = table;
  if (totals) {
    rows.push(
      row(place.area.lastRow, '', (column, index) => {
        const style = index === 0 ? styles.TOTALS_LABEL_STYLE : styles.columnStyleNumber(column, 'totals');
        let content: CellContent = { kind: 'blank' };
        if (totals.sums.includes(column.header)) {
          content = { kind: 'formula', formula: totalFormula(table.name, column.header), isArray: false };
        } else if (index === 0) content = { kind: 'text', text: totals.label };
        return cellXml(place.area.lastRow, index + 1, { style, content }, '', numberOfText);
      }),
    );
  }
  return rows;
}

function contentOf(
  column: ColumnBlueprint,
  write: CellWrite | null | undefined,
  dateSystem: DateSystem,
): CellContent {
  if (!write) {
    return column.formula === undefined
      ? { kind: 'blank' }
      : { kind: 'formula', formula: column.formula, isArray: false };
  }
  return write.kind === 'day' ? { kind: 'number', number: serialOfDay(write.day, dateSystem) } : write;
}

function validations(table: TableBlueprint, place: TablePlace): string {
  const items = table.columns.flatMap((column, index) => {
    if (column.note === undefined && column.choices === undefined) return [];
    const area = areaName({ ...place.body, firstColumn: index + 1, lastColumn: index + 1 });
    return [validation(column, area)];
  });
  return items.length === 0
    ? ''
    : `<dataValidations count="${items.length}">${items.join('')}</dataValidations>`;
}

function validation(column: ColumnBlueprint, area: string): string {
  const { choices, note, header } = column;
  let attributes = choices === undefined ? '' : ' type="list"';
  attributes += ' allowBlank="1"';
  if (note !== undefined) {
    if (note.length > NOTE_LIMIT)
      throw new Error(`The note of ${header} is longer than ${NOTE_LIMIT} characters`);
    const title = encodeAttribute(header.slice(0, NOTE_TITLE_LIMIT));
    attributes += ` showInputMessage="1" promptTitle="${title}" prompt="${encodeAttribute(note)}"`;
  }
  if (choices !== undefined && column.strict) {
    attributes += ` showErrorMessage="1" errorTitle="${encodeAttribute(header.slice(0, NOTE_TITLE_LIMIT))}"`;
    attributes += ' error="Choose one of the list."';
  }
  const formula =
    choices === undefined ? '' : `<formula1>${encodeXml(listFormula(column, choices))}</formula1>`;
  return `<dataValidation${attributes} sqref="${area}"${formula === '' ? '/>' : `>${formula}</dataValidation>`}`;
}

function listFormula(column: ColumnBlueprint, choices: NonNullable<ColumnBlueprint['choices']>): string {
  if ('table' in choices) return listName(choices.table, choices.column);
  const words = choices.join(',');
  if (words.length > WORDS_LIMIT || choices.some((word) => /[",]/.test(word))) {
    throw new Error(`The choices of ${column.header} don't fit into a validation list`);
  }
  return `"${words}"`;
}
