import type { ColumnBlueprint, TableBlueprint } from '../workbook/blueprint.ts';
import { columnReference } from '../workbook/blueprint-names.ts';
import { areaName, type CellArea } from './cell-reference.ts';
import { escapeCellText } from './cell-text.ts';
import { TABLE_STYLE } from './new-xlsx-styles.ts';
import { encodeAttribute, encodeXml } from './xml-text.ts';

const NAMESPACE = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';

/** Where a table of a blueprint stands: everything, and its body alone. */
export interface TablePlace {
  readonly area: CellArea;
  readonly body: CellArea;
}

/** The place of a table whose header stands in a row; a table without rows has one blank row. */
export function placeTable(table: TableBlueprint, headerRow: number): TablePlace {
  const rows = Math.max(1, table.rows.length);
  const columns = { firstColumn: 1, lastColumn: table.columns.length };
  const body = { firstRow: headerRow + 1, lastRow: headerRow + rows, ...columns };
  const lastRow = body.lastRow + (table.totals ? 1 : 0);
  return { area: { firstRow: headerRow, lastRow, ...columns }, body };
}

/** The formula of a sum in the totals row, which leaves out filtered rows. */
export function totalFormula(table: string, header: string): string {
  return `SUBTOTAL(109,${columnReference(table, header)})`;
}

/** The part that declares a table. */
export function newTablePart(table: TableBlueprint, place: TablePlace, id: number): string {
  const filter = { ...place.area, lastRow: place.body.lastRow };
  const name = encodeAttribute(table.name);
  const columns = table.columns.map((column, index) => tableColumn(table, column, index));
  return (
    `<table xmlns="${NAMESPACE}" id="${id}" name="${name}" displayName="${name}" ref="${areaName(place.area)}"` +
    `${table.totals ? ' totalsRowCount="1"' : ' totalsRowShown="0"'}>` +
    `<autoFilter ref="${areaName(filter)}"/>` +
    `<tableColumns count="${columns.length}">${columns.join('')}</tableColumns>` +
    `<tableStyleInfo name="${TABLE_STYLE}" showFirstColumn="0" showLastColumn="0" showRowStripes="1" ` +
    'showColumnStripes="0"/></table>'
  );
}

function tableColumn(table: TableBlueprint, column: ColumnBlueprint, index: number): string {
  const name = encodeAttribute(escapeCellText(column.header).replaceAll('\n', '_x000a_'));
  let totals = '';
  if (table.totals?.sums.includes(column.header)) totals = ' totalsRowFunction="sum"';
  else if (table.totals && index === 0) totals = ` totalsRowLabel="${encodeAttribute(table.totals.label)}"`;
  const formula =
    column.formula === undefined
      ? ''
      : `<calculatedColumnFormula>${encodeXml(escapeCellText(column.formula))}</calculatedColumnFormula>`;
  return `<tableColumn id="${index + 1}" name="${name}"${totals}${formula === '' ? '/>' : `>${formula}</tableColumn>`}`;
}
