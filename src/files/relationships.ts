import { XmlCursor } from './xml-cursor.ts';
import { prefixOf } from './xml-tag.ts';

/** How one part of a package refers to another (ISO/IEC 29500-2, 8.5). */
export interface Relationship {
  readonly id: string;
  /** The last segment of the relationship type, the same in transitional and strict files: `worksheet`. */
  readonly kind: string;
  /** The name of the part that it leads to, without leading slash; for an external one, what is written. */
  readonly target: string;
  readonly external: boolean;
}

/** Where the relationships of a part are kept; '' is the package itself. */
export function relationshipsPartOf(part: string): string {
  const slash = part.lastIndexOf('/');
  return `${part.slice(0, slash + 1)}_rels/${part.slice(slash + 1)}.rels`;
}

/** Reads the relationships of a part from the text of its relationships part. */
export function readRelationships(text: string, part: string): Relationship[] {
  const found: Relationship[] = [];
  const cursor = new XmlCursor(text, relationshipsPartOf(part));
  while (cursor.next()) {
    if (!cursor.begins('Relationship')) continue;
    const external = cursor.attribute('TargetMode') === 'External';
    const target = cursor.attribute('Target') ?? '';
    found.push({
      id: cursor.attribute('Id') ?? '',
      kind: (cursor.attribute('Type') ?? '').split('/').pop() ?? '',
      target: external ? target : resolveTarget(target, part),
      external,
    });
  }
  return found;
}

/** The text of a relationships part without the relationships that lead to `target`. */
export function withoutRelationship(text: string, part: string, target: string): string {
  const cursor = new XmlCursor(text, relationshipsPartOf(part));
  let kept = '';
  let at = 0;
  while (cursor.next()) {
    if (!cursor.begins('Relationship') || cursor.attribute('TargetMode') === 'External') continue;
    if (resolveTarget(cursor.attribute('Target') ?? '', part) !== target) continue;
    kept += text.slice(at, cursor.start);
    cursor.skipElement();
    at = cursor.end;
  }
  return kept + text.slice(at);
}

function resolveTarget(target: string, part: string): string {
  const path = target.replaceAll('\\', '/');
  const segments = path.startsWith('/') ? [] : part.split('/').slice(0, -1);
  for (const segment of path.split('/')) {
    if (segment === '..') segments.pop();
    else if (segment !== '' && segment !== '.') segments.push(segment);
  }
  return segments.join('/');
}

/** The text of a relationships part with one more relationship, to a part beside the one that refers to it. */
export function withRelationship(text: string, part: string, kind: string, target: string): string {
  const known = readRelationships(text, part);
  const ids = new Set(known.map((each) => each.id));
  let number = known.length + 1;
  while (ids.has(`rId${number}`)) number++;
  const cursor = new XmlCursor(text, relationshipsPartOf(part));
  let family: string | undefined;
  let root = '';
  while (cursor.next()) {
    if (root === '') root = cursor.tag;
    const type = cursor.attribute('Type');
    if (type?.endsWith('/worksheet')) family = type.slice(0, -'worksheet'.length);
    if (!cursor.closes('Relationships') || family === undefined) continue;
    const entry = `<${prefixOf(root)}Relationship Id="rId${number}" Type="${family}${kind}" Target="/${target}"/>`;
    return text.slice(0, cursor.start) + entry + text.slice(cursor.start);
  }
  return text;
}
