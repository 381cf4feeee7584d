import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';

/** Builds workbook files from XML written by hand, so that each test shows what it is about. */

export const TRANSITIONAL = {
  main: 'http://schemas.openxmlformats.org/spreadsheetml/2006/main',
  office: 'http://schemas.openxmlformats.org/officeDocument/2006/relationships',
};
export const STRICT = {
  main: 'http://purl.oclc.org/ooxml/spreadsheetml/main',
  office: 'http://purl.oclc.org/ooxml/officeDocument/relationships',
};
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

export interface FixtureTable {
  readonly name: string;
  readonly ref: string;
  readonly columns: readonly string[];
  readonly totalsRow?: boolean;
  /** Calculated-column formulas by header. */
  readonly formulas?: Readonly<Record<string, string>>;
}

export interface FixtureSheet {
  readonly name: string;
  /** What stands inside sheetData. */
  readonly rows: string;
  readonly before?: string;
  readonly after?: string;
  readonly tables?: readonly FixtureTable[];
  /** Further relationships of the sheet: kind and target part. */
  readonly links?: readonly (readonly [kind: string, target: string])[];
  /** The namespace prefix of the sheet's elements, with colon. */
  readonly prefix?: string;
}

export interface FixtureOptions {
  readonly sheets: readonly FixtureSheet[];
  /** Items of the shared strings part; without them the workbook has none. */
  readonly strings?: readonly string[];
  readonly styles?: string;
  readonly date1904?: boolean;
  readonly definedNames?: string;
  /** What stands behind the defined names in the workbook's part. */
  readonly workbookTail?: string;
  readonly calculationChain?: boolean;
  readonly strict?: boolean;
  /** More parts, by name; and their content types. */
  readonly parts?: Readonly<Record<string, string>>;
  readonly types?: Readonly<Record<string, string>>;
}

export function fixtureParts(options: FixtureOptions): Record<string, string> {
  const { main, office } = options.strict ? STRICT : TRANSITIONAL;
  const parts: Record<string, string> = {};
  const types: Record<string, string> = { 'xl/workbook.xml': `${TYPE}.sheet.main+xml`, ...options.types };
  const links: [string, string][] = [];
  let tableNumber = 0;
  options.sheets.forEach((sheet, index) => {
    const part = `xl/worksheets/sheet${index + 1}.xml`;
    links.push(['worksheet', `worksheets/sheet${index + 1}.xml`]);
    types[part] = `${TYPE}.worksheet+xml`;
    const tableLinks = (sheet.tables ?? []).map((table) => {
      tableNumber++;
      parts[`xl/tables/table${tableNumber}.xml`] = tableXml(table, tableNumber, main);
      types[`xl/tables/table${tableNumber}.xml`] = `${TYPE}.table+xml`;
      return ['table', `../tables/table${tableNumber}.xml`] as [string, string];
    });
    const all = [...tableLinks, ...(sheet.links ?? [])];
    if (all.length > 0) parts[`xl/worksheets/_rels/sheet${index + 1}.xml.rels`] = relationships(all, office);
    parts[part] = sheetXml(sheet, tableLinks.length, main, office);
  });
  if (options.strings) {
    links.push(['sharedStrings', 'sharedStrings.xml']);
    types['xl/sharedStrings.xml'] = `${TYPE}.sharedStrings+xml`;
    const items = options.strings.map((item) => `<si>${item.startsWith('<') ? item : `<t>${item}</t>`}</si>`);
    parts['xl/sharedStrings.xml'] =
      `<sst xmlns="${main}" count="${items.length}" uniqueCount="${items.length}">${items.join('')}</sst>`;
  }
  if (options.styles !== undefined) {
    links.push(['styles', 'styles.xml']);
    types['xl/styles.xml'] = `${TYPE}.styles+xml`;
    parts['xl/styles.xml'] = `<styleSheet xmlns="${main}">${options.styles}</styleSheet>`;
  }
  if (options.calculationChain) {
    links.push(['calcChain', '/xl/calcChain.xml']);
    types['xl/calcChain.xml'] = `${TYPE}.calcChain+xml`;
    parts['xl/calcChain.xml'] = `<calcChain xmlns="${main}"><c r="C2" i="1"/></calcChain>`;
  }
  const sheets = options.sheets.map((sheet, index) => {
    return `<sheet name="${sheet.name}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`;
  });
  parts['xl/workbook.xml'] =
    `<workbook xmlns="${main}" xmlns:r="${office}"><workbookPr${options.date1904 ? ' date1904="1"' : ''}/>` +
    `<sheets>${sheets.join('')}</sheets>` +
    (options.definedNames ? `<definedNames>${options.definedNames}</definedNames>` : '') +
    `${options.workbookTail ?? ''}</workbook>`;
  parts['xl/_rels/workbook.xml.rels'] = relationships(links, office);
  parts['_rels/.rels'] = relationships([['officeDocument', 'xl/workbook.xml']], office);
  Object.assign(parts, options.parts);
  const overrides = Object.entries(types).map(
    ([part, type]) => `<Override PartName="/${part}" ContentType="${type}"/>`,
  );
  return {
    '[Content_Types].xml':
      `<Types xmlns="${PACKAGE}/content-types">` +
      '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
      `<Default Extension="xml" ContentType="application/xml"/>${overrides.join('')}</Types>`,
    ...parts,
  };
}

/** A workbook file with the parts given. */
export function fixture(options: FixtureOptions): Uint8Array {
  return pack(fixtureParts(options));
}

export function pack(parts: Readonly<Record<string, string>>): Uint8Array {
  const contents = Object.entries(parts).map(([name, text]) => [name, strToU8(text)] as const);
  return zipSync(Object.fromEntries(contents), { mtime: new Date(2026, 0, 2, 3, 4, 6) });
}

/** The parts of a file as text, read by another zip library than the adapter's own. */
export function unpack(bytes: Uint8Array): Record<string, string> {
  return Object.fromEntries(
    Object.entries(unzipSync(bytes)).map(([name, content]) => [name, strFromU8(content)]),
  );
}

/** The names of the parts that differ between two files, came or went. */
export function changedParts(before: Uint8Array, after: Uint8Array): string[] {
  const [old, now] = [unpack(before), unpack(after)];
  const names = new Set([...Object.keys(old), ...Object.keys(now)]);
  return [...names].filter((name) => old[name] !== now[name]).toSorted();
}

/** Styles with General, percent, a built-in date, text, and a custom date. */
export const SOME_STYLES =
  '<numFmts count="1"><numFmt numFmtId="170" formatCode="d\\ mmm\\ yyyy"/></numFmts>' +
  '<fonts count="1"><font><sz val="11"/><name val="Calibri"/></font></fonts>' +
  '<fills count="1"><fill><patternFill patternType="none"/></fill></fills>' +
  '<borders count="1"><border/></borders>' +
  '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
  '<cellXfs count="5"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>' +
  '<xf numFmtId="9" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="14" fontId="0" fillId="0" borderId="0" xfId="0"/>' +
  '<xf numFmtId="49" fontId="0" fillId="0" borderId="0" xfId="0"><alignment wrapText="1"/></xf>' +
  '<xf numFmtId="170" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs>';

/** A cell with a number, a formula or an inline text. */
export function numberCell(ref: string, value: number, style?: number): string {
  return `<c r="${ref}"${style === undefined ? '' : ` s="${style}"`}><v>${value}</v></c>`;
}

export function textCell(ref: string, text: string, style?: number): string {
  return `<c r="${ref}"${style === undefined ? '' : ` s="${style}"`} t="inlineStr"><is><t>${text}</t></is></c>`;
}

function sheetXml(sheet: FixtureSheet, tables: number, main: string, office: string): string {
  const prefix = sheet.prefix ?? '';
  const name = prefix === '' ? 'xmlns' : `xmlns:${prefix.slice(0, -1)}`;
  const parts = Array.from({ length: tables }, (_, index) => `<${prefix}tablePart r:id="rId${index + 1}"/>`);
  return (
    `<?xml version="1.0" encoding="UTF-8"?>\n<${prefix}worksheet ${name}="${main}" xmlns:r="${office}">` +
    `${sheet.before ?? ''}<${prefix}sheetData>${sheet.rows}</${prefix}sheetData>${sheet.after ?? ''}` +
    (tables > 0 ? `<${prefix}tableParts count="${tables}">${parts.join('')}</${prefix}tableParts>` : '') +
    `</${prefix}worksheet>`
  );
}

function tableXml(table: FixtureTable, id: number, main: string): string {
  const columns = table.columns.map((header, index) => {
    const formula = table.formulas?.[header];
    const start = `<tableColumn id="${index + 1}" name="${header}"`;
    if (formula === undefined) return `${start}/>`;
    return `${start}><calculatedColumnFormula>${formula}</calculatedColumnFormula></tableColumn>`;
  });
  const filter = table.totalsRow ? table.ref.replace(/\d+$/, (row) => String(Number(row) - 1)) : table.ref;
  return (
    `<table xmlns="${main}" id="${id}" name="${table.name}" displayName="${table.name}" ref="${table.ref}"` +
    `${table.totalsRow ? ' totalsRowCount="1"' : ''}><autoFilter ref="${filter}"/>` +
    `<tableColumns count="${columns.length}">${columns.join('')}</tableColumns></table>`
  );
}

function relationships(links: readonly (readonly [string, string])[], office: string): string {
  const items = links.map(
    ([kind, target], index) =>
      `<Relationship Id="rId${index + 1}" Type="${office}/${kind}" Target="${target}"/>`,
  );
  return `<Relationships xmlns="${PACKAGE}/relationships">${items.join('')}</Relationships>`;
}
