import { CONTENT_TYPES_PART, withContentType } from './content-types.ts';
import { relationshipsPartOf, withRelationship } from './relationships.ts';
import type { WorkbookState } from './workbook-state.ts';

export const DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

/** The name of a part that isn't there yet: the stem with the first free number. */
export function freePart({ parts }: WorkbookState, stem: string): string {
  let number = 1;
  while (parts.has(`${stem}${number}.xml`)) number++;
  return `${stem}${number}.xml`;
}

/** The folder of the workbook's own part, with its slash, where parts of its kind are put. */
export function folderOf({ names }: WorkbookState): string {
  return names.workbook.slice(0, names.workbook.lastIndexOf('/') + 1);
}

/**
 * Puts a new part into the file, with its content type, its namespaces spelt as the workbook spells them.
 * @returns its text as it stands in the file
 */
export function putPart(state: WorkbookState, part: string, source: string, type: string): string {
  const text = DECLARATION + inNamespacesOf(state, source);
  state.parts.replace(part, text);
  const types = withContentType(state.parts.text(CONTENT_TYPES_PART), part, type);
  state.parts.replace(CONTENT_TYPES_PART, types);
  return text;
}

/** Lets the workbook's own part refer to one more part. */
export function linkFromWorkbook(state: WorkbookState, kind: string, target: string): void {
  const { workbook } = state.names;
  const part = relationshipsPartOf(workbook);
  state.parts.replace(part, withRelationship(state.parts.text(part), workbook, kind, target));
}

/** Gives a new part its relationships, which are called rId1, rId2 and so on. */
export function putLinks(
  state: WorkbookState,
  from: string,
  links: readonly (readonly [kind: string, target: string])[],
): void {
  const family = familyOf(state);
  const items = links.map(
    ([kind, target], index) =>
      `<Relationship Id="rId${index + 1}" Type="${family}${kind}" Target="/${target}"/>`,
  );
  state.parts.replace(
    relationshipsPartOf(from),
    `${DECLARATION}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${items.join('')}</Relationships>`,
  );
}

/** The start of relationship types, which strict files spell in their own way. */
function familyOf({ parts, names }: WorkbookState): string {
  const text = parts.text(relationshipsPartOf(names.workbook));
  return /\sType\s*=\s*["']([^"']*\/)worksheet["']/.exec(text)?.[1] ?? '';
}

const STRICT_MAIN = 'http://purl.oclc.org/ooxml/spreadsheetml/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const STRICT_OFFICE = 'http://purl.oclc.org/ooxml/officeDocument/relationships';
/** The namespaces of transitional files, and what strict ones call them (ISO/IEC 29500-1 and -4). */
const STRICT: readonly (readonly [transitional: string, strict: string])[] = [
  ['http://schemas.openxmlformats.org/spreadsheetml/2006/main', STRICT_MAIN],
  [OFFICE, STRICT_OFFICE],
  [
    'http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing',
    'http://purl.oclc.org/ooxml/drawingml/spreadsheetDrawing',
  ],
  ['http://schemas.openxmlformats.org/drawingml/2006/main', 'http://purl.oclc.org/ooxml/drawingml/main'],
  ['http://schemas.openxmlformats.org/drawingml/2006/chart', 'http://purl.oclc.org/ooxml/drawingml/chart'],
];

/** The namespace of the attributes by which parts name their relationships. */
export function officeNamespace(state: WorkbookState): string {
  return isStrict(state) ? STRICT_OFFICE : OFFICE;
}

function isStrict({ parts, names }: WorkbookState): boolean {
  return parts.text(names.workbook).includes(STRICT_MAIN);
}

function inNamespacesOf(state: WorkbookState, text: string): string {
  if (!isStrict(state)) return text;
  return STRICT.reduce(
    (written, [transitional, strict]) => written.replaceAll(`"${transitional}"`, `"${strict}"`),
    text,
  );
}
