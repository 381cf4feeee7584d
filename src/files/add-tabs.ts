import type { ColumnBlueprint, TabBlueprint, TableBlueprint } from '../workbook/blueprint.ts';
import { freeTabName } from '../workbook/blueprint-names.ts';
import { withNewStyles } from './added-styles.ts';
import { folderOf, freePart, linkFromWorkbook, officeNamespace, putLinks, putPart } from './new-part.ts';
import { chosenLists } from './new-xlsx.ts';
import {
  CHART_TYPE,
  type ChartSource,
  DRAWING_TYPE,
  newChartPart,
  newDrawingPart,
} from './new-xlsx-chart.ts';
import { headerRowOf, newSheetPart } from './new-xlsx-sheet.ts';
import { newTablePart, placeTable } from './new-xlsx-table.ts';
import { blankGrid } from './sheet-grid.ts';
import { type BodyToRead, readSheet } from './sheet-read.ts';
import { DerivedStyles, readStyles } from './styles-part.ts';
import { firstBodyRow, lastBodyRow, readTablePart } from './table-part.ts';
import type { Tab } from './workbook-part.ts';
import { ensureStyles } from './workbook-save.ts';
import type { WorkbookState } from './workbook-state.ts';
import { listItems, rootTag, withItems } from './xml-list.ts';
import { rewriteXml } from './xml-rewrite.ts';
import { attributeOf, prefixOf } from './xml-tag.ts';
import { encodeAttribute, encodeXml } from './xml-text.ts';

const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/**
 * Adds tabs with their tables and charts behind the tabs that are there. A tab whose name is taken gets a number behind it;
 * one whose table is there already is left out.
 */
export function addTabs(state: WorkbookState, tabs: readonly TabBlueprint[]): void {
  const tableNames = new Set(state.tables.map(({ part }) => part.name.toLowerCase()));
  const added = tabs.filter(({ table }) => table === undefined || !tableNames.has(table.name.toLowerCase()));
  if (added.length === 0) return;
  const tables = [
    ...state.tables.map(columnsOf),
    ...added.flatMap(({ table }) => (table ? [headersOf(table)] : [])),
  ];
  const base = addStyles(state);
  const sound = added.map((tab) => withKnownChoices(tab, tables));
  for (const tab of sound) addTab(state, tab, base);
  nameLists(state, sound);
  state.noteChange();
  if (sound.some(({ table }) => table?.totals || table?.columns.some((each) => each.formula !== undefined))) {
    state.formulasChanged = true;
  }
}

interface KnownTable {
  readonly name: string;
  readonly headers: readonly string[];
}

function columnsOf({ part }: WorkbookState['tables'][number]): KnownTable {
  return { name: part.name, headers: part.columns.map(({ header }) => header) };
}

function headersOf(table: TableBlueprint): KnownTable {
  return { name: table.name, headers: table.columns.map(({ header }) => header) };
}

/** The tab without choices from tables or columns that the workbook hasn't got. */
function withKnownChoices(tab: TabBlueprint, tables: readonly KnownTable[]): TabBlueprint {
  if (!tab.table) return tab;
  const isKnown = ({ choices }: ColumnBlueprint): boolean =>
    choices === undefined ||
    !('table' in choices) ||
    tables.some(({ name, headers }) => name === choices.table && headers.includes(choices.column));
  const columns = tab.table.columns.map((column) => {
    if (isKnown(column)) return column;
    const { choices: _, ...without } = column;
    return without;
  });
  return { ...tab, table: { ...tab.table, columns } };
}

/** Adds the styles of new tabs, after those that were derived so far, whose numbers are in use. */
function addStyles(state: WorkbookState): number {
  const part = ensureStyles(state, state.parts);
  const { text, base } = withNewStyles(state.parts.text(part), part);
  state.parts.replace(part, text);
  state.names = { ...state.names, styles: part };
  state.styles = new DerivedStyles(readStyles(text, part));
  return base;
}

function addTab(state: WorkbookState, blueprint: TabBlueprint, base: number): void {
  const name = freeTabName(
    blueprint.name,
    state.tabs.map((tab) => tab.name),
  );
  const part = freePart(state, `${folderOf(state)}worksheets/sheet`);
  const context = { dateSystem: state.dateSystem, numberOfText: () => null };
  const source = newSheetPart({ ...blueprint, name }, context, false);
  const styled = rewriteXml(source, part, {
    attributes: ['s'],
    attribute: (value) => String(base + Number(value)),
  });
  const text = putPart(state, part, styled, `${TYPE}.worksheet+xml`);
  linkFromWorkbook(state, 'worksheet', part);
  const tab: Tab = { name, part, hidden: false };
  const bodies: BodyToRead[] = [];
  if (blueprint.table) bodies.push(addTable(state, headerRowOf(blueprint), blueprint.table, tab));
  state.tabs = [...state.tabs, tab];
  listTab(state, tab);
  const look = (style: number | undefined) => state.styles.look(style);
  const read = readSheet(text, part, name, bodies, { strings: state.strings, look });
  state.takeSheet({ text: read, edits: new Map(), rewritten: false });
}

function addTable(state: WorkbookState, headerRow: number, table: TableBlueprint, tab: Tab): BodyToRead {
  const { parts } = state;
  const part = freePart(state, `${folderOf(state)}tables/table`);
  const ids = state.tables.map((each) => {
    return Number(attributeOf(rootTag(parts.text(each.part.part), each.part.part), 'id') ?? 0);
  });
  const place = placeTable(table, headerRow);
  const source = newTablePart(table, place, Math.max(0, ...ids) + 1);
  const text = putPart(state, part, source, `${TYPE}.table+xml`);
  const links: [string, string][] = [['table', part]];
  if (table.chart) {
    const { dateSystem } = state;
    links.push(['drawing', addChart(state, { tab: tab.name, table, chart: table.chart, place, dateSystem })]);
  }
  putLinks(state, tab.part, links);
  const read = readTablePart(text, part);
  const body = { ...read.area, firstRow: firstBodyRow(read), lastRow: lastBodyRow(read) };
  const grid = blankGrid(read.columns.length, body.lastRow - body.firstRow + 1);
  state.takeGrid({ part: read, sheet: tab.part, grid });
  return { body, grid };
}

/** Adds a chart with the drawing that holds it; gives the drawing's part. */
function addChart(state: WorkbookState, source: ChartSource): string {
  const chart = freePart(state, `${folderOf(state)}charts/chart`);
  putPart(state, chart, newChartPart(source), CHART_TYPE);
  const drawing = freePart(state, `${folderOf(state)}drawings/drawing`);
  putPart(state, drawing, newDrawingPart(source), DRAWING_TYPE);
  putLinks(state, drawing, [['chart', chart]]);
  return drawing;
}

/** Names the tab in the workbook's part. */
function listTab(state: WorkbookState, { name, part }: Tab): void {
  const { parts, names } = state;
  const text = parts.text(names.workbook);
  const root = rootTag(text, names.workbook);
  const prefix = prefixOf(root);
  const listed = listItems(text, names.workbook, 'sheets');
  const ids = listed.map((each) => Number(attributeOf(each.slice(0, each.indexOf('>') + 1), 'sheetId') ?? 0));
  const id = parts.relationships(names.workbook).find((each) => each.target === part)?.id ?? '';
  const idName = /\s([^\s:=]+:id)\s*=/.exec(listed[0] ?? '')?.[1] ?? 'r:id';
  const declaration = `xmlns:${idName.slice(0, -':id'.length)}`;
  // Some writers declare the prefix on each sheet anew, where it counts for that one only.
  const declared = new RegExp(`\\s${declaration}\\s*=`).test(root)
    ? ''
    : ` ${declaration}="${officeNamespace(state)}"`;
  const item = `<${prefix}sheet${declared} name="${encodeAttribute(name)}" sheetId="${Math.max(0, ...ids) + 1}" ${idName}="${id}"/>`;
  parts.replace(
    names.workbook,
    withItems(text, names.workbook, 'sheets', [item], () => false, false),
  );
}

const BEHIND_NAMES = new Set([
  'calcPr',
  'oleSize',
  'customWorkbookViews',
  'pivotCaches',
  'smartTagPr',
  'smartTagTypes',
  'webPublishing',
  'fileRecoveryPr',
  'webPublishObjects',
  'extLst',
]);

/** Defines the names of the lists that the new columns choose from. */
function nameLists(state: WorkbookState, tabs: readonly TabBlueprint[]): void {
  const { parts, names } = state;
  const text = parts.text(names.workbook);
  const prefix = prefixOf(rootTag(text, names.workbook));
  const known = new Set(
    listItems(text, names.workbook, 'definedNames').map((each) => {
      return (attributeOf(each.slice(0, each.indexOf('>') + 1), 'name') ?? '').toLowerCase();
    }),
  );
  const items = [...chosenLists(tabs)]
    .filter(([name]) => !known.has(name.toLowerCase()))
    .map(
      ([name, reference]) =>
        `<${prefix}definedName name="${encodeAttribute(name)}">${encodeXml(reference)}</${prefix}definedName>`,
    );
  if (items.length === 0) return;
  const isBehind = (name: string): boolean => BEHIND_NAMES.has(name);
  parts.replace(names.workbook, withItems(text, names.workbook, 'definedNames', items, isBehind, false));
}
