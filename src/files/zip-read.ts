import { Inflate } from 'fflate';
import { crc32 } from './crc32.ts';
import { damaged, FileRefused } from './file-refused.ts';
import { MAX_ENTRIES, MAX_PART_BYTES, MAX_RATIO, MAX_TOTAL_BYTES, RATIO_FREE_BYTES } from './limits.ts';
import { findDirectory } from './zip-directory.ts';
import * as zip from './zip-entry.ts';

/** The entries of a zip file and its closing comment. */
export interface ZipFile {
  readonly bytes: Uint8Array;
  readonly entries: readonly zip.ZipEntry[];
  readonly comment: Uint8Array;
}

const INFLATE_STEP = 128 * 1024;

/**
 * Reads the directory of a zip file and checks it against the local headers: entries lie side by side, and
 * their declared sizes keep within the limits.
 * @throws FileRefused where it is no zip file, damaged, encrypted or absurdly large.
 */
export function readZip(bytes: Uint8Array): ZipFile {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const directory = findDirectory(bytes, view);
  if (directory.count > MAX_ENTRIES) throw tooLarge(`it has ${directory.count} parts`);
  const found: Omit<zip.ZipEntry, 'localEnd' | 'dataStart'>[] = [];
  let at = directory.start;
  for (let index = 0; index < directory.count; index++) {
    if (at + zip.CENTRAL_LENGTH > directory.end || view.getUint32(at, true) !== zip.CENTRAL_SIGNATURE) {
      throw damaged('its list of parts breaks off');
    }
    const entry = readCentralRecord(bytes, view, at);
    if (entry.centralEnd > directory.end) throw damaged('its list of parts breaks off');
    found.push(entry);
    at = entry.centralEnd;
  }
  if (at !== directory.end) throw damaged('its list of parts is longer than declared');
  const entries = locate(bytes, view, found, directory.start);
  checkSizes(entries);
  return { bytes, entries, comment: directory.comment };
}

/**
 * The uncompressed content of an entry. Never inflates beyond the declared size.
 * @throws FileRefused where content and declaration (size, checksum) differ.
 */
export function readEntry(file: ZipFile, entry: zip.ZipEntry): Uint8Array {
  const raw = file.bytes.subarray(entry.dataStart, entry.dataStart + entry.compressedSize);
  const content = entry.method === zip.DEFLATED ? inflate(raw, entry) : raw;
  if (content.length !== entry.size || crc32(content) !== entry.crc) {
    throw damaged(`the content of ${entry.name} is not what its checksum says`);
  }
  return content;
}

function inflate(raw: Uint8Array, entry: zip.ZipEntry): Uint8Array {
  const content = new Uint8Array(entry.size);
  let filled = 0;
  let ended = false;
  const stream = new Inflate((chunk, final) => {
    if (filled + chunk.length > entry.size) throw damaged(`${entry.name} holds more than it declares`);
    content.set(chunk, filled);
    filled += chunk.length;
    ended = final;
  });
  try {
    for (let at = 0; at < raw.length || at === 0; at += INFLATE_STEP) {
      stream.push(raw.subarray(at, at + INFLATE_STEP), at + INFLATE_STEP >= raw.length);
    }
  } catch (error) {
    if (error instanceof FileRefused) throw error;
    throw damaged(`the compressed content of ${entry.name} is broken`);
  }
  if (!ended || filled !== entry.size) throw damaged(`the content of ${entry.name} breaks off`);
  return content;
}

function readCentralRecord(bytes: Uint8Array, view: DataView, at: number) {
  const nameEnd = at + zip.CENTRAL_LENGTH + view.getUint16(at + 28, true);
  const extraEnd = nameEnd + view.getUint16(at + 30, true);
  const centralEnd = extraEnd + view.getUint16(at + 32, true);
  if (centralEnd > bytes.length) throw damaged('its list of parts breaks off');
  let compressedSize = view.getUint32(at + 20, true);
  let size = view.getUint32(at + 24, true);
  let localStart = view.getUint32(at + 42, true);
  zip.eachExtraField(view, nameEnd, extraEnd, (id, start, end) => {
    if (id !== zip.ZIP64_FIELD) return;
    let field = start;
    const next = (): number => {
      if (field + 8 > end) throw damaged('its list of parts contradicts itself');
      const value = Number(view.getBigUint64(field, true));
      field += 8;
      return value;
    };
    if (size === zip.IN_ZIP64_32) size = next();
    if (compressedSize === zip.IN_ZIP64_32) compressedSize = next();
    if (localStart === zip.IN_ZIP64_32) localStart = next();
  });
  const name = decodeName(bytes.subarray(at + zip.CENTRAL_LENGTH, nameEnd));
  const flags = view.getUint16(at + 8, true);
  const method = view.getUint16(at + 10, true);
  if (flags & (zip.FLAG_ENCRYPTED | zip.FLAG_STRONG_ENCRYPTION)) {
    throw new FileRefused(
      `The file is encrypted (${name} needs a password). Save a copy without a password and use that.`,
    );
  }
  if (method !== zip.STORED && method !== zip.DEFLATED) {
    throw new FileRefused(
      `${name} in the file is compressed in an unusual way. Open the workbook in your spreadsheet program ` +
        'and save it again as .xlsx.',
    );
  }
  const crc = view.getUint32(at + 16, true);
  return { name, flags, method, crc, compressedSize, size, centralStart: at, centralEnd, localStart };
}

/** Names that aren't in UTF-8 (parts of a workbook never have such) are told apart byte by byte. */
function decodeName(bytes: Uint8Array): string {
  let name: string;
  try {
    name = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    name = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  }
  return name.replaceAll('\\', '/');
}

/** Finds the local header of each entry, and checks that no two entries share bytes. */
function locate(
  bytes: Uint8Array,
  view: DataView,
  found: readonly Omit<zip.ZipEntry, 'localEnd' | 'dataStart'>[],
  directoryStart: number,
): zip.ZipEntry[] {
  const starts = found.map((entry) => entry.localStart).toSorted((a, b) => a - b);
  const nextStart = new Map(starts.map((start, index) => [start, starts[index + 1] ?? directoryStart]));
  if (nextStart.size !== found.length) throw damaged('two of its parts stand in the same place');
  return found.map((entry) => {
    const { localStart } = entry;
    const localEnd = nextStart.get(localStart) as number;
    if (
      localStart + zip.LOCAL_LENGTH > localEnd ||
      view.getUint32(localStart, true) !== zip.LOCAL_SIGNATURE
    ) {
      throw damaged(`${entry.name} is not where the list of parts says`);
    }
    const nameStart = localStart + zip.LOCAL_LENGTH;
    const nameLength = view.getUint16(localStart + 26, true);
    const dataStart = nameStart + nameLength + view.getUint16(localStart + 28, true);
    if (dataStart + entry.compressedSize > localEnd) throw damaged(`the content of ${entry.name} breaks off`);
    const centralName = bytes.subarray(entry.centralStart + zip.CENTRAL_LENGTH);
    const sameName =
      nameLength === view.getUint16(entry.centralStart + 28, true) &&
      bytes.subarray(nameStart, nameStart + nameLength).every((byte, index) => byte === centralName[index]);
    if (
      !sameName ||
      view.getUint16(localStart + 8, true) !== entry.method ||
      view.getUint16(localStart + 6, true) !== entry.flags
    ) {
      throw damaged(`${entry.name} is described in two ways`);
    }
    return { ...entry, localEnd, dataStart };
  });
}

function checkSizes(entries: readonly zip.ZipEntry[]): void {
  let total = 0;
  for (const { name, size, compressedSize, method } of entries) {
    if (size > MAX_PART_BYTES) throw tooLarge(`${name} would take ${megabytes(size)}`);
    if (size > RATIO_FREE_BYTES && size > compressedSize * MAX_RATIO) {
      throw tooLarge(`${name} is compressed far more than any sheet can be`);
    }
    // Deflate never makes content much longer; a part that claims so hides what it inflates to.
    if (method === zip.DEFLATED && compressedSize > size + size / 500 + 1024) {
      throw damaged(`${name} holds more than it declares`);
    }
    if (method === zip.STORED && compressedSize !== size) throw damaged(`${name} has two sizes`);
    total += size;
  }
  if (total > MAX_TOTAL_BYTES) throw tooLarge(`unpacked it would take ${megabytes(total)}`);
}

function tooLarge(detail: string): FileRefused {
  return new FileRefused(
    `The file is too large to be a bench's workbook: ${detail}. If it really is yours, ` +
      'move old years, pictures or other sheets into a workbook of their own.',
  );
}

function megabytes(bytes: number): string {
  return `${Math.ceil(bytes / 1024 / 1024)} MB`;
}
