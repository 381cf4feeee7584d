import { type DateSystem, serialOfDay } from '../core/serial-date.ts';
import type { ChartBlueprint, ColumnBlueprint, TableBlueprint } from '../workbook/blueprint.ts';
import {
  CHART_COLUMNS,
  CHART_ROWS,
  chartColumns,
  type SeriesLook,
  seriesLook,
} from '../workbook/chart-layout.ts';
import { type CellArea, columnLetters } from './cell-reference.ts';
import { escapeCellText, writableText } from './cell-text.ts';
import type { TablePlace } from './new-xlsx-table.ts';
import { encodeAttribute, encodeXml } from './xml-text.ts';

const CHART = 'http://schemas.openxmlformats.org/drawingml/2006/chart';
const DRAWING = 'http://schemas.openxmlformats.org/drawingml/2006/main';
const ON_SHEET = 'http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

export const CHART_TYPE = 'application/vnd.openxmlformats-officedocument.drawingml.chart+xml';
export const DRAWING_TYPE = 'application/vnd.openxmlformats-officedocument.drawing+xml';

const CATEGORY_AXIS = 1;
const VALUE_AXIS = 2;
const POINT = 12_700;
const DASHES: Readonly<Record<SeriesLook['dashes'], string>> = {
  none: 'solid',
  long: 'dash',
  dots: 'sysDot',
  both: 'dashDot',
};
const FORMATS: Readonly<Record<ColumnBlueprint['format'], string>> = {
  text: '@',
  'long text': '@',
  number: 'General',
  day: 'yyyy\\-mm\\-dd',
  money: '#,##0.00',
  percent: '0.00%',
};
/** A table with its chart, where it stands, and how the file counts days. */
export interface ChartSource {
  readonly tab: string;
  readonly table: TableBlueprint;
  readonly chart: ChartBlueprint;
  readonly place: TablePlace;
  readonly dateSystem: DateSystem;
}

/** The part of a tab's drawing, which holds the chart that its first relationship leads to. */
export function newDrawingPart({ chart, place }: Pick<ChartSource, 'chart' | 'place'>): string {
  // Rows and columns count from 0 here.
  const column = place.area.lastColumn + 1;
  const row = place.body.firstRow - 1;
  const corner = (name: string, atColumn: number, atRow: number): string =>
    `<xdr:${name}><xdr:col>${atColumn}</xdr:col><xdr:colOff>0</xdr:colOff>` +
    `<xdr:row>${atRow}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${name}>`;
  return (
    `<xdr:wsDr xmlns:xdr="${ON_SHEET}" xmlns:a="${DRAWING}"><xdr:twoCellAnchor editAs="oneCell">` +
    corner('from', column, row) +
    corner('to', column + CHART_COLUMNS, row + CHART_ROWS) +
    '<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr>' +
    `<xdr:cNvPr id="2" name="Chart 1" descr="${encodeAttribute(writableText(chart.title))}"/><xdr:cNvGraphicFramePr/>` +
    '</xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>' +
    `<a:graphic><a:graphicData uri="${CHART}"><c:chart xmlns:c="${CHART}" xmlns:r="${OFFICE}" r:id="rId1"/>` +
    '</a:graphicData></a:graphic></xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor></xdr:wsDr>'
  );
}

/**
 * The part of a chart, with the values that it shows, so that programs draw it without reading the cells.
 * @throws Error where the chart names a column that the table hasn't got
 */
export function newChartPart(source: ChartSource): string {
  const { table, chart, dateSystem } = source;
  const places = chartColumns(table);
  if (places === null) throw new Error(`${table.name} has no chart`);
  const categories = dataOf(source, places.categories);
  const series = places.series.map((place, index) => {
    const header = `${quoted(source.tab)}!$${columnLetters(place + 1)}$${source.place.area.firstRow}`;
    return (
      `<c:ser><c:idx val="${index}"/><c:order val="${index}"/>` +
      `<c:tx>${reference('str', header, [point(0, table.columns[place]?.header ?? '')], 1)}</c:tx>` +
      `<c:spPr>${line(seriesLook(index))}</c:spPr><c:marker><c:symbol val="none"/></c:marker>` +
      `<c:cat>${categories}</c:cat><c:val>${dataOf(source, place)}</c:val><c:smooth val="0"/></c:ser>`
    );
  });
  const format = table.columns[places.categories]?.format ?? 'text';
  return (
    `<c:chartSpace xmlns:c="${CHART}" xmlns:a="${DRAWING}" xmlns:r="${OFFICE}">` +
    `<c:date1904 val="${dateSystem === 1904 ? 1 : 0}"/><c:roundedCorners val="0"/><c:chart>` +
    `${title(chart.title)}<c:autoTitleDeleted val="0"/><c:plotArea><c:layout/>` +
    `<c:lineChart><c:grouping val="standard"/><c:varyColors val="0"/>${series.join('')}<c:marker val="1"/>` +
    `<c:axId val="${CATEGORY_AXIS}"/><c:axId val="${VALUE_AXIS}"/></c:lineChart>` +
    categoryAxis(format) +
    valueAxis() +
    '</c:plotArea><c:legend><c:legendPos val="b"/><c:overlay val="0"/></c:legend>' +
    '<c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart></c:chartSpace>'
  );
}

/** The body of a column as a chart refers to it: where it stands, and what stands there. */
function dataOf({ tab, table, place, dateSystem }: ChartSource, index: number): string {
  const { format = 'number' } = table.columns[index] ?? {};
  const isText = format === 'text' || format === 'long text';
  const points = table.rows.flatMap((row, number) => {
    const cell = row[index] ?? null;
    if (cell === null || cell.kind === 'blank') return [];
    if (cell.kind === 'text') return isText ? [point(number, cell.text)] : [];
    const value = cell.kind === 'day' ? serialOfDay(cell.day, dateSystem) : cell.number;
    return [point(number, String(value))];
  });
  const count = place.body.lastRow - place.body.firstRow + 1;
  const of = fullReference(tab, { ...place.body, firstColumn: index + 1, lastColumn: index + 1 });
  return reference(isText ? 'str' : 'num', of, points, count, FORMATS[format]);
}

function reference(
  kind: 'str' | 'num',
  to: string,
  points: readonly string[],
  count: number,
  format = '',
): string {
  const code = kind === 'num' ? `<c:formatCode>${encodeXml(format)}</c:formatCode>` : '';
  return (
    `<c:${kind}Ref><c:f>${encodeXml(to)}</c:f><c:${kind}Cache>${code}` +
    `<c:ptCount val="${count}"/>${points.join('')}</c:${kind}Cache></c:${kind}Ref>`
  );
}

const point = (index: number, value: string): string =>
  `<c:pt idx="${index}"><c:v>${encodeXml(escapeCellText(value))}</c:v></c:pt>`;

const quoted = (tab: string): string => `'${tab.replaceAll("'", "''")}'`;

function fullReference(tab: string, { firstRow, lastRow, firstColumn, lastColumn }: CellArea): string {
  return `${quoted(tab)}!$${columnLetters(firstColumn)}$${firstRow}:$${columnLetters(lastColumn)}$${lastRow}`;
}

function title(text: string): string {
  const look = 'sz="1200" b="1"';
  return (
    `<c:title><c:tx><c:rich><a:bodyPr/><a:lstStyle/><a:p><a:pPr><a:defRPr ${look}/></a:pPr>` +
    `<a:r><a:rPr lang="en-GB" ${look}/><a:t>${encodeXml(writableText(text))}</a:t></a:r></a:p></c:rich></c:tx>` +
    '<c:overlay val="0"/></c:title>'
  );
}

function line({ colour, dashes, weight }: SeriesLook): string {
  return (
    `<a:ln w="${weight * POINT}" cap="rnd"><a:solidFill><a:srgbClr val="${colour}"/></a:solidFill>` +
    `<a:prstDash val="${DASHES[dashes]}"/><a:round/></a:ln>`
  );
}

const GRID = '<a:ln w="6350"><a:solidFill><a:srgbClr val="D5DCDA"/></a:solidFill></a:ln>';

/** What all axes have, in the order that the schema asks for. */
function axis(id: number, side: 'b' | 'l', format: string, grid: string, end: string): string {
  const other = id === CATEGORY_AXIS ? VALUE_AXIS : CATEGORY_AXIS;
  return (
    `<c:axId val="${id}"/><c:scaling><c:orientation val="minMax"/></c:scaling><c:delete val="0"/>` +
    `<c:axPos val="${side}"/>${grid}<c:numFmt formatCode="${encodeAttribute(format)}" sourceLinked="1"/>` +
    '<c:majorTickMark val="out"/><c:minorTickMark val="none"/><c:tickLblPos val="low"/>' +
    `<c:crossAx val="${other}"/><c:crosses val="autoZero"/>${end}`
  );
}

function categoryAxis(format: ColumnBlueprint['format']): string {
  if (format === 'day') {
    const end = '<c:auto val="1"/><c:lblOffset val="100"/><c:baseTimeUnit val="days"/>';
    return `<c:dateAx>${axis(CATEGORY_AXIS, 'b', FORMATS.day, '', end)}</c:dateAx>`;
  }
  const end = '<c:auto val="0"/><c:lblAlgn val="ctr"/><c:lblOffset val="100"/><c:noMultiLvlLbl val="1"/>';
  return `<c:catAx>${axis(CATEGORY_AXIS, 'b', FORMATS[format], '', end)}</c:catAx>`;
}

function valueAxis(): string {
  const grid = `<c:majorGridlines><c:spPr>${GRID}</c:spPr></c:majorGridlines>`;
  return `<c:valAx>${axis(VALUE_AXIS, 'l', 'General', grid, '<c:crossBetween val="midCat"/>')}</c:valAx>`;
}
