import { CONTENT_TYPES_PART, readContentTypes } from './content-types.ts';
import { damaged, FileRefused } from './file-refused.ts';
import { type Relationship, readRelationships, relationshipsPartOf } from './relationships.ts';
import type { ZipEntry } from './zip-entry.ts';
import { readEntry, readZip, type ZipFile } from './zip-read.ts';
import { rewriteZip } from './zip-write.ts';

/**
 * The parts of a package (ISO/IEC 29500-2) as text, and what is to become of them. Changed parts lie over the
 * file's own; a fork can be changed and thrown away without touching what it came from.
 */
export class PackageParts {
  readonly #file: ZipFile;
  readonly #entries: ReadonlyMap<string, ZipEntry>;
  readonly #changed: Map<string, string | null>;
  /** The entries whose content has been read, and so checked, once. */
  readonly #read: Set<ZipEntry>;

  /** Opens a package; the content of an entry is checked when it is read. */
  static open(bytes: Uint8Array): PackageParts {
    const file = readZip(bytes);
    const entries = new Map<string, ZipEntry>();
    for (const entry of file.entries) {
      if (entry.name.endsWith('/')) continue;
      if (entries.has(keyOf(entry.name))) throw damaged(`it holds ${entry.name} twice`);
      entries.set(keyOf(entry.name), entry);
    }
    return new PackageParts(file, entries, new Map(), new Set());
  }

  private constructor(
    file: ZipFile,
    entries: ReadonlyMap<string, ZipEntry>,
    changed: Map<string, string | null>,
    read: Set<ZipEntry>,
  ) {
    this.#file = file;
    this.#entries = entries;
    this.#changed = changed;
    this.#read = read;
  }

  fork(): PackageParts {
    return new PackageParts(this.#file, this.#entries, new Map(this.#changed), this.#read);
  }

  /** The names of the parts as the file spells them, in its order, and then those that have come to it. */
  get names(): string[] {
    const names = new Set([...this.#entries.values()].map((entry) => entry.name));
    for (const name of this.#changed.keys()) names.add(name);
    return [...names].filter((name) => this.has(name));
  }

  has(part: string): boolean {
    const changed = this.#changed.get(this.#spelt(part));
    return changed === undefined ? this.#entries.has(keyOf(part)) : changed !== null;
  }

  /** The text of a part; undefined where there is no such part. */
  find(part: string): string | undefined {
    const changed = this.#changed.get(this.#spelt(part));
    if (changed !== undefined) return changed ?? undefined;
    const entry = this.#entries.get(keyOf(part));
    if (!entry) return undefined;
    this.#read.add(entry);
    return decode(readEntry(this.#file, entry), entry.name);
  }

  /** The text of a part that must be there. */
  text(part: string): string {
    const text = this.find(part);
    if (text === undefined) throw damaged(`its part ${part} is missing`);
    return text;
  }

  replace(part: string, text: string): void {
    this.#changed.set(this.#spelt(part), text);
  }

  remove(part: string): void {
    this.#changed.set(this.#spelt(part), null);
  }

  /** What a part refers to; '' asks for the package itself. */
  relationships(part: string): Relationship[] {
    const text = this.find(relationshipsPartOf(part));
    return text === undefined ? [] : readRelationships(text, part);
  }

  contentType(part: string): string | undefined {
    return readContentTypes(this.text(CONTENT_TYPES_PART))(part);
  }

  /** Reads every entry that nobody has asked for, so that damage in it is found too. */
  checkRest(): void {
    for (const entry of this.#file.entries) {
      if (!this.#read.has(entry)) readEntry(this.#file, entry);
    }
  }

  /** The package as bytes, every part that isn't changed byte for byte as it was. */
  save(): Uint8Array {
    const encoder = new TextEncoder();
    const contents = [...this.#changed].map(
      ([name, text]) => [name, text === null ? null : encoder.encode(text)] as const,
    );
    return rewriteZip(this.#file, new Map(contents));
  }

  #spelt(part: string): string {
    return this.#entries.get(keyOf(part))?.name ?? part;
  }
}

/** Part names are compared without letter case; some writers spell them with a percent sign in one place only. */
function keyOf(part: string): string {
  const plain = part.toLowerCase();
  if (!plain.includes('%')) return plain;
  try {
    return decodeURIComponent(plain);
  } catch {
    return plain;
  }
}

function decode(bytes: Uint8Array, part: string): string {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new FileRefused(
      `${part} in the workbook is not written in UTF-8. Open the workbook in your spreadsheet program and ` +
        'save it again as .xlsx.',
    );
  }
  const encoding = /^\uFEFF?<\?xml[^>]*?\sencoding\s*=\s*["']([^"']*)["']/.exec(text)?.[1] ?? 'utf-8';
  if (!/^(?:utf-?8|us-ascii|ascii)$/i.test(encoding)) {
    throw new FileRefused(
      `${part} in the workbook is written in ${encoding}, not in UTF-8. Open the workbook in your spreadsheet ` +
        'program and save it again as .xlsx.',
    );
  }
  return text;
}
