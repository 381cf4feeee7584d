import { posix } from 'node:path';
import { SaxesParser } from 'saxes';
import { unpack } from './fixture.ts';
import { parseStrictly } from './well-formed.ts';

/** Fails where a prefix is used that isn't declared. */
function checkNamespaces(name: string, text: string): void {
  const parser = new SaxesParser({ xmlns: true });
  parser.on('error', (error) => {
    throw new Error(`${name}: ${error.message}`);
  });
  parser.write(text).close();
}

/**
 * Checks that a file is whole: what each relationship leads to is there, every part has a content type, each override
 * names a part, every prefix is declared, no relationship has another's name, and every r:id and the like that a part uses is one of its own.
 */
export function checkPackage(bytes: Uint8Array): void {
  const parts = unpack(bytes);
  const types = contentTypesIn(parts['[Content_Types].xml'] ?? '');
  for (const part of types.overrides) {
    if (parts[part] === undefined) throw new Error(`A content type is given for ${part}, which isn't there`);
  }
  for (const name of Object.keys(parts)) {
    const isTyped = types.overrides.has(name) || types.extensions.has(name.split('.').pop() ?? '');
    if (name !== '[Content_Types].xml' && !name.endsWith('/') && !isTyped)
      throw new Error(`${name} has no content type`);
  }
  for (const [name, text] of Object.entries(parts)) {
    if (!name.endsWith('.xml') || name === '[Content_Types].xml') continue;
    checkNamespaces(name, text);
    const own = relationshipsOf(parts, name);
    parseStrictly(text, (element, attributes) => {
      const id = attributes['r:id'];
      if (id !== undefined && !own.has(id)) throw new Error(`${name}: ${element} refers to ${id}`);
    });
  }
}

function contentTypesIn(text: string) {
  const overrides = new Set<string>();
  const extensions = new Set<string>();
  parseStrictly(text, (element, attributes) => {
    const part = (attributes['PartName'] ?? '').slice(1);
    if (element === 'Override' && overrides.has(part)) throw new Error(`${part} has two content types`);
    if (element === 'Override') overrides.add(part);
    if (element === 'Default') extensions.add(attributes['Extension'] ?? '');
  });
  return { overrides, extensions };
}

function relationshipsOf(parts: Readonly<Record<string, string>>, part: string): Set<string> {
  const own = new Set<string>();
  const folder = posix.dirname(part);
  const text = parts[posix.join(folder, '_rels', `${posix.basename(part)}.rels`)];
  if (text === undefined) return own;
  parseStrictly(text, (element, { Id = '', Target = '', TargetMode }) => {
    if (element !== 'Relationship') return;
    if (own.has(Id)) throw new Error(`${part} has two relationships ${Id}`);
    own.add(Id);
    if (TargetMode === 'External') return;
    const target = Target.startsWith('/') ? Target.slice(1) : posix.join(folder, Target);
    if (parts[target] === undefined) throw new Error(`${part} leads to ${target}, which isn't there`);
  });
  return own;
}
