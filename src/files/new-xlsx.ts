import type {
  ColumnBlueprint,
  TabBlueprint,
  TableBlueprint,
  WorkbookBlueprint,
} from '../workbook/blueprint.ts';
import { columnReference, listName } from '../workbook/blueprint-names.ts';
import { CONTENT_TYPES_PART } from './content-types.ts';
import { CHART_TYPE, DRAWING_TYPE, newChartPart, newDrawingPart } from './new-xlsx-chart.ts';
import { headerRowOf, newSheetPart, type SheetContext } from './new-xlsx-sheet.ts';
import { newStyles } from './new-xlsx-styles.ts';
import { newTablePart, placeTable } from './new-xlsx-table.ts';
import { SharedStringNumbers, textElement } from './shared-strings.ts';
import { encodeAttribute, encodeXml } from './xml-text.ts';
import { writeZip } from './zip-write.ts';

export type { ColumnBlueprint, WorkbookBlueprint } from '../workbook/blueprint.ts';

const DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/**
 * Makes a workbook file from a blueprint; the same blueprint gives the same bytes.
 * @throws Error where the blueprint can't be carried out: two tables of one name, a choice from no table, …
 */
export function createXlsx(blueprint: WorkbookBlueprint): Uint8Array {
  checkNames(blueprint);
  const strings = new SharedStringNumbers({ texts: [], formatted: new Set() });
  let uses = 0;
  const context: SheetContext = {
    dateSystem: blueprint.dateSystem ?? 1900,
    numberOfText: (text) => {
      uses++;
      return strings.numberOf(text);
    },
  };
  const tables = blueprint.tabs.flatMap((tab) => (tab.table ? [{ tab, table: tab.table }] : []));
  const charts = tables.filter(({ table }) => table.chart !== undefined);
  const parts = new Map<string, string>();
  parts.set(CONTENT_TYPES_PART, contentTypes(blueprint.tabs.length, tables.length, charts.length));
  parts.set(
    '_rels/.rels',
    relationships([
      [`${OFFICE}/officeDocument`, 'xl/workbook.xml'],
      [`${PACKAGE}/relationships/metadata/core-properties`, 'docProps/core.xml'],
    ]),
  );
  parts.set('docProps/core.xml', coreProperties(blueprint.title ?? ''));
  parts.set('xl/workbook.xml', workbookPart(blueprint));
  parts.set(
    'xl/_rels/workbook.xml.rels',
    relationships([
      ...blueprint.tabs.map(
        (_, index) => [`${OFFICE}/worksheet`, `worksheets/sheet${index + 1}.xml`] as const,
      ),
      [`${OFFICE}/styles`, 'styles.xml'],
      [`${OFFICE}/sharedStrings`, 'sharedStrings.xml'],
    ]),
  );
  blueprint.tabs.forEach((tab, index) => {
    parts.set(`xl/worksheets/sheet${index + 1}.xml`, newSheetPart(tab, context, index === 0));
    const table = tables.findIndex((each) => each.tab === tab) + 1;
    if (table === 0) return;
    const chart = charts.findIndex((each) => each.tab === tab) + 1;
    const links: [string, string][] = [[`${OFFICE}/table`, `../tables/table${table}.xml`]];
    if (chart > 0) links.push([`${OFFICE}/drawing`, `../drawings/drawing${chart}.xml`]);
    parts.set(`xl/worksheets/_rels/sheet${index + 1}.xml.rels`, relationships(links));
  });
  tables.forEach(({ tab, table }, index) => {
    parts.set(
      `xl/tables/table${index + 1}.xml`,
      newTablePart(table, placeTable(table, headerRowOf(tab)), index + 1),
    );
  });
  charts.forEach(({ tab, table }, index) => {
    if (table.chart === undefined) return;
    const place = placeTable(table, headerRowOf(tab));
    const source = { tab: tab.name, table, chart: table.chart, place, dateSystem: context.dateSystem };
    const number = index + 1;
    parts.set(`xl/charts/chart${number}.xml`, newChartPart(source));
    parts.set(`xl/drawings/drawing${number}.xml`, newDrawingPart(source));
    const link = relationships([[`${OFFICE}/chart`, `../charts/chart${number}.xml`]]);
    parts.set(`xl/drawings/_rels/drawing${number}.xml.rels`, link);
  });
  parts.set('xl/styles.xml', newStyles());
  const items = strings.added.map((text) => `<si>${textElement(text, '')}</si>`).join('');
  parts.set(
    'xl/sharedStrings.xml',
    `<sst xmlns="${MAIN}" count="${uses}" uniqueCount="${strings.added.length}">${items}</sst>`,
  );
  const encoder = new TextEncoder();
  return writeZip(new Map([...parts].map(([name, text]) => [name, encoder.encode(DECLARATION + text)])));
}

function checkNames({ tabs }: WorkbookBlueprint): void {
  const tables = tabs.flatMap((tab) => (tab.table ? [tab.table] : []));
  refuseTwins(
    tabs.map((tab) => tab.name),
    'tab',
  );
  refuseTwins(
    tables.map((table) => table.name),
    'table',
  );
  for (const tab of tabs) {
    if (tab.name === '' || tab.name.length > 31 || /[\\/?*[\]:]|^'|'$/.test(tab.name)) {
      throw new Error(`A tab can't be called "${tab.name}"`);
    }
  }
  for (const table of tables) {
    refuseTwins(
      table.columns.map((column) => column.header),
      `column of ${table.name}`,
    );
    for (const { choices } of table.columns) {
      if (choices && 'table' in choices && !hasColumn(tables, choices.table, choices.column)) {
        throw new Error(
          `${table.name} offers a choice from ${choices.table}[${choices.column}], which isn't there`,
        );
      }
    }
  }
}

function hasColumn(tables: readonly TableBlueprint[], name: string, header: string): boolean {
  return tables.some(
    (table) => table.name === name && table.columns.some((column) => column.header === header),
  );
}

function refuseTwins(names: readonly string[], what: string): void {
  const seen = new Set<string>();
  for (const name of names) {
    if (seen.has(name.toLowerCase())) throw new Error(`More than one ${what} is called ${name}`);
    seen.add(name.toLowerCase());
  }
}

function workbookPart(blueprint: WorkbookBlueprint): string {
  const sheets = blueprint.tabs.map(
    (tab, index) =>
      `<sheet name="${encodeAttribute(tab.name)}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`,
  );
  const names = definedNames(blueprint.tabs);
  const hasFormula = blueprint.tabs.some(
    ({ table }) => table?.totals || table?.columns.some((column) => column.formula !== undefined),
  );
  return (
    `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}">` +
    `<workbookPr${blueprint.dateSystem === 1904 ? ' date1904="1"' : ''}/>` +
    '<bookViews><workbookView xWindow="0" yWindow="0" windowWidth="24000" windowHeight="14000"/></bookViews>' +
    `<sheets>${sheets.join('')}</sheets>` +
    (names.length === 0 ? '' : `<definedNames>${names.join('')}</definedNames>`) +
    (hasFormula ? '<calcPr fullCalcOnLoad="1"/>' : '') +
    '</workbook>'
  );
}

/** The lists that columns choose from, and the rows that print on every page. */
function definedNames(tabs: readonly TabBlueprint[]): string[] {
  const titles = tabs.flatMap((tab, index) => {
    if (!tab.table) return [];
    const row = headerRowOf(tab);
    const rows = `'${tab.name.replaceAll("'", "''")}'!$${row}:$${row}`;
    return [
      `<definedName name="_xlnm.Print_Titles" localSheetId="${index}">${encodeXml(rows)}</definedName>`,
    ];
  });
  const named = [...chosenLists(tabs)].map(
    ([name, reference]) =>
      `<definedName name="${encodeAttribute(name)}">${encodeXml(reference)}</definedName>`,
  );
  return [...titles, ...named];
}

/** The defined names of the lists that columns choose from, and what they stand for; in order of the names. */
export function chosenLists(tabs: readonly TabBlueprint[]): Map<string, string> {
  const columns: ColumnBlueprint[] = tabs.flatMap((tab) => tab.table?.columns ?? []);
  const lists = columns.flatMap(({ choices }): [string, string][] =>
    choices && 'table' in choices
      ? [[listName(choices.table, choices.column), columnReference(choices.table, choices.column)]]
      : [],
  );
  return new Map(lists.toSorted(([a], [b]) => (a < b ? -1 : 1)));
}

function relationships(links: readonly (readonly [type: string, target: string])[]): string {
  const items = links.map(
    ([type, target], index) => `<Relationship Id="rId${index + 1}" Type="${type}" Target="${target}"/>`,
  );
  return `<Relationships xmlns="${PACKAGE}/relationships">${items.join('')}</Relationships>`;
}

function contentTypes(tabs: number, tables: number, charts: number): string {
  const numbered = (count: number, part: string, type: string): string =>
    Array.from({ length: count }, (_, index) => override(`/xl/${part}${index + 1}.xml`, type)).join('');
  return (
    `<Types xmlns="${PACKAGE}/content-types">` +
    `<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
    '<Default Extension="xml" ContentType="application/xml"/>' +
    override('/xl/workbook.xml', `${TYPE}.sheet.main+xml`) +
    numbered(tabs, 'worksheets/sheet', `${TYPE}.worksheet+xml`) +
    numbered(tables, 'tables/table', `${TYPE}.table+xml`) +
    numbered(charts, 'drawings/drawing', DRAWING_TYPE) +
    numbered(charts, 'charts/chart', CHART_TYPE) +
    override('/xl/styles.xml', `${TYPE}.styles+xml`) +
    override('/xl/sharedStrings.xml', `${TYPE}.sharedStrings+xml`) +
    override('/docProps/core.xml', 'application/vnd.openxmlformats-package.core-properties+xml') +
    '</Types>'
  );
}

function override(part: string, type: string): string {
  return `<Override PartName="${part}" ContentType="${type}"/>`;
}

function coreProperties(title: string): string {
  return (
    '<cp:coreProperties xmlns:cp="http://schemas.openxmlformats.org/package/2006/metadata/core-properties" ' +
    `xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title>${encodeXml(title)}</dc:title></cp:coreProperties>`
  );
}
