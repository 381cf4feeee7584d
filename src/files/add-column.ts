import type { NewColumn } from '../workbook/port.ts';
import { areaName, areasOverlap, type CellArea, cellName, parseArea } from './cell-reference.ts';
import { escapeCellText } from './cell-text.ts';
import { putCell, styleAt, writtenStyle } from './cell-writing.ts';
import { withColumnWidth } from './column-widths.ts';
import { FileRefused } from './file-refused.ts';
import { MAX_COLUMNS, MAX_TABLE_CELLS } from './limits.ts';
import { mergedAreas } from './sheet-areas.ts';
import { markOf } from './sheet-grid.ts';
import { readRow, rowPlace } from './sheet-rows.ts';
import type { DerivedLook } from './styles-part.ts';
import { cellsOfRow } from './tab-cells.ts';
import { firstBodyRow, lastBodyRow, type TablePart } from './table-part.ts';
import type { TableState, WorkbookState } from './workbook-state.ts';
import { listItems, rootTag, withItems } from './xml-list.ts';
import { rewriteXml } from './xml-rewrite.ts';
import { attributeOf, prefixOf } from './xml-tag.ts';
import { encodeAttribute } from './xml-text.ts';

const LOOK_OF_FORMAT: Readonly<Record<NewColumn['format'], DerivedLook>> = {
  text: 'text',
  'long text': 'text',
  number: 'number',
  day: 'day',
  money: 'money',
  percent: 'exact percent',
};

/**
 * Adds a blank column behind the last one of a table. It looks like the table's other columns of its format.
 * @throws FileRefused where something stands right of the table, or its rows come from elsewhere
 */
export function addColumn(state: WorkbookState, name: string, column: NewColumn): void {
  const { part } = state.table(name);
  if (part.columns.some(({ header }) => header.toLowerCase() === column.header.toLowerCase())) {
    throw new Error(`There is a column ${column.header} in ${name} already`);
  }
  refuseNoRoom(state, state.table(name), column.header);
  const look = modelFor(state, state.table(name), column.format);
  widenPart(state, part, column.header);
  const place = part.columns.length;
  const written = state.tableToWrite(name);
  const rows = lastBodyRow(part) - firstBodyRow(part) + 1;
  written.grid.values.push(Array.from({ length: rows }, () => null));
  written.grid.marks.push(Array.from({ length: rows }, () => markOf(state.styles.look(look.body), false)));
  state.putTable({
    ...written,
    part: {
      ...part,
      area: { ...part.area, lastColumn: part.area.lastColumn + 1 },
      columns: [...part.columns, { header: column.header, formula: null, isArray: false }],
    },
  });
  dressFrame(state, written, column, look);
  if (look.body !== undefined) {
    for (let row = 0; row < rows; row++)
      putCell(state, name, { row, column: place }, look.body, { kind: 'blank' });
  }
  const sheet = state.sheet(written.sheet);
  const text = withColumnWidth(sheet.text, part.area.lastColumn + 1, column.width);
  state.putSheet({ ...sheet, text, rewritten: true });
  state.noteChange();
}

function refuseNoRoom(state: WorkbookState, { part, sheet }: TableState, header: string): void {
  const { area, name } = part;
  const { text } = state.sheet(sheet);
  const column = area.lastColumn + 1;
  const refuse = (what: string, first: CellArea | string): FileRefused =>
    new FileRefused(
      `The column ${header} can't be added to the table ${name}: right of it, on the tab ${text.tab}, ` +
        `${what} (${typeof first === 'string' ? first : areaName(first)}). Move it away, and try again.`,
    );
  if (
    column > MAX_COLUMNS ||
    (area.lastRow - area.firstRow + 1) * (part.columns.length + 1) > MAX_TABLE_CELLS
  ) {
    throw new FileRefused(
      `The table ${name} can't become any wider, so the column ${header} can't be added.`,
    );
  }
  const kind = attributeOf(rootTag(state.parts.text(part.part), part.part), 'tableType') ?? 'worksheet';
  if (kind !== 'worksheet') {
    throw new FileRefused(
      `The rows of the table ${name} come from elsewhere (${kind}), so a column can only be added in a spreadsheet program.`,
    );
  }
  const room: CellArea = { ...area, firstColumn: column, lastColumn: column };
  const other = state.tables.find((each) => each.sheet === sheet && areasOverlap(each.part.area, room));
  if (other) throw refuse(`the table ${other.part.name} stands`, other.part.area);
  const merged = mergedAreas(text).find((each) => areasOverlap(each, room));
  if (merged) throw refuse('cells are joined', merged);
  for (const row of rowsReaching(state, sheet, room)) {
    const filled = cellsOfRow(state, sheet, row).find(
      (cell) => cell.column === column && (cell.value !== null || cell.formula !== null),
    );
    if (filled) throw refuse('something stands', cellName(row, column));
  }
}

/** The rows of an area that may hold a cell in its column: only these are looked at more closely. */
function rowsReaching(
  state: WorkbookState,
  sheet: string,
  { firstRow, lastRow, lastColumn }: CellArea,
): number[] {
  const { text, edits } = state.sheet(sheet);
  const rows = new Set<number>();
  for (let place = rowPlace(text.rows, firstRow); place < text.rows.numbers.length; place++) {
    const row = text.rows.numbers[place] as number;
    if (row > lastRow) break;
    if ((readRow(text, place).cells.at(-1)?.column ?? 0) >= lastColumn) rows.add(row);
  }
  for (const [row, cells] of edits) {
    if (row >= firstRow && row <= lastRow && cells.has(lastColumn)) rows.add(row);
  }
  return [...rows].toSorted((a, b) => a - b);
}

/** The styles that a new column takes over: of its header, its body, and the totals row. */
interface ColumnLook {
  readonly header: number | undefined;
  readonly body: number | undefined;
  readonly totals: number | undefined;
}

/**
 * What a column of this format looks like in the table: as most of those that show their cells so, else as the last
 * one, with the number format in place of its own.
 */
function modelFor(state: WorkbookState, table: TableState, format: NewColumn['format']): ColumnLook {
  const { part, sheet } = table;
  const look = LOOK_OF_FORMAT[format];
  const last = part.columns.length - 1;
  const styles = part.columns.map((_, column) => styleAt(state, table, { row: 0, column }));
  const alike = styles.filter((style) => state.styles.isShownAs(look, style));
  const times = (style: number | undefined): number => alike.filter((each) => each === style).length;
  const usual = alike.toSorted((a, b) => times(b) - times(a))[0];
  const model = alike.length === 0 ? last : styles.indexOf(usual);
  const frame = (row: number): number | undefined =>
    writtenStyle(state, sheet, row, part.area.firstColumn + model).style;
  return {
    header: part.headerRows === 0 ? undefined : frame(part.area.firstRow),
    body: alike.length === 0 ? state.styles.styleFor(look, styles[last]) : usual,
    totals: part.totalsRows === 0 ? undefined : frame(part.area.lastRow),
  };
}

/** Writes the header, and makes the totals row go on below the new column. */
function dressFrame(
  state: WorkbookState,
  { part, sheet }: TableState,
  { header }: NewColumn,
  look: ColumnLook,
): void {
  const edits = state.editsToWrite(sheet);
  const column = part.area.lastColumn + 1;
  const put = (row: number, style: number | undefined, text: string | null): void => {
    const cells = edits.get(row) ?? new Map();
    edits.set(row, cells);
    cells.set(column, { style, content: text === null ? { kind: 'blank' } : { kind: 'text', text } });
  };
  if (part.headerRows > 0) put(part.area.firstRow, look.header, header);
  if (part.totalsRows > 0) put(part.area.lastRow, look.totals, null);
}

/** The table's part with one more column: its own area, its filter and its sorting reach over it. */
function widenPart(state: WorkbookState, { part, area }: TablePart, header: string): void {
  const text = state.parts.text(part);
  const reaching = rewriteXml(text, part, {
    attributes: ['ref'],
    attribute: (value, _name, element) => {
      const own = WIDENED.has(element) ? parseArea(value) : null;
      const isWhole = own?.firstColumn === area.firstColumn && own.lastColumn === area.lastColumn;
      return own && isWhole ? areaName({ ...own, lastColumn: own.lastColumn + 1 }) : value;
    },
  });
  const ids = listItems(text, part, 'tableColumns').map((each) =>
    Number(attributeOf(each.slice(0, each.indexOf('>') + 1), 'id') ?? 0),
  );
  const prefix = prefixOf(rootTag(text, part));
  const name = encodeAttribute(escapeCellText(header));
  const item = `<${prefix}tableColumn id="${Math.max(0, ...ids) + 1}" name="${name}"/>`;
  state.parts.replace(
    part,
    withItems(reaching, part, 'tableColumns', [item], () => false),
  );
}

const WIDENED = new Set(['table', 'autoFilter', 'sortState']);
