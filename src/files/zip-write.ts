import { deflateSync } from 'fflate';
import { crc32 } from './crc32.ts';
import * as zip from './zip-entry.ts';
import type { ZipFile } from './zip-read.ts';

/** Content for an entry of the file: replaces the one of that name, or is added at the end. */
export type ZipChanges = ReadonlyMap<string, Uint8Array | null>;

/** Above this many bytes speed counts more than the last percent of size. */
const LARGE_CONTENT = 8 * 1024 * 1024;
/** 1980-01-01 00:00, the earliest time that a zip file can say: made files are the same every time. */
const FIXED_TIME = 0x00210000;
const VERSION_NEEDED = 20;
const UTF8_NAME = 0x0800;

interface NewEntry {
  readonly local: Uint8Array;
  readonly data: Uint8Array;
  readonly central: Uint8Array;
}

/**
 * Writes a zip file in which every entry that isn't changed keeps its bytes, compressed ones and headers too;
 * a changed entry keeps its place, name and time; `null` takes an entry out. Same input, same bytes.
 */
export function rewriteZip(file: ZipFile, changes: ZipChanges): Uint8Array {
  const pieces: Uint8Array[] = [];
  const central: Uint8Array[] = [];
  let offset = 0;
  const put = (record: Uint8Array, ...content: readonly Uint8Array[]): void => {
    new DataView(record.buffer).setUint32(42, offset, true);
    central.push(record);
    for (const piece of content) {
      pieces.push(piece);
      offset += piece.length;
    }
  };
  const inPlace = file.entries.toSorted((a, b) => a.localStart - b.localStart);
  const known = new Set<string>();
  for (const entry of inPlace) {
    known.add(entry.name);
    const content = changes.get(entry.name);
    if (content === null) continue;
    if (content === undefined) {
      put(centralRecord(file, entry, entry), file.bytes.subarray(entry.localStart, entry.localEnd));
    } else {
      const { local, data, central: record } = replacedEntry(file, entry, content);
      put(record, local, data);
    }
  }
  for (const [name, content] of changes) {
    if (content === null || known.has(name)) continue;
    const { local, data, central: record } = newEntry(name, content);
    put(record, local, data);
  }
  return concatenate([...pieces, ...central, endRecord(central, offset, file.comment)]);
}

/** Writes a fresh zip file, the same bytes for the same content. */
export function writeZip(contents: ReadonlyMap<string, Uint8Array>): Uint8Array {
  return rewriteZip({ bytes: new Uint8Array(), entries: [], comment: new Uint8Array() }, contents);
}

interface Sizes {
  readonly crc: number;
  readonly compressedSize: number;
  readonly size: number;
  readonly method: number;
  readonly flags: number;
}

function compress(content: Uint8Array): { data: Uint8Array; crc: number } {
  const level = content.length > LARGE_CONTENT ? 3 : 6;
  return { data: deflateSync(content, { level }), crc: crc32(content) };
}

function replacedEntry(file: ZipFile, entry: zip.ZipEntry, content: Uint8Array): NewEntry {
  const { data, crc } = compress(content);
  const sizes: Sizes = {
    crc,
    compressedSize: data.length,
    size: content.length,
    method: zip.DEFLATED,
    flags: entry.flags & ~(zip.FLAG_DATA_DESCRIPTOR | zip.FLAG_DEFLATE_LEVEL),
  };
  const view = viewOf(file.bytes);
  const nameEnd = entry.localStart + zip.LOCAL_LENGTH + view.getUint16(entry.localStart + 26, true);
  const extra = withoutZip64(file.bytes, view, nameEnd, entry.dataStart);
  const local = concatenate([file.bytes.subarray(entry.localStart, nameEnd), extra]);
  const header = viewOf(local);
  writeSizes(header, 6, sizes);
  header.setUint16(4, VERSION_NEEDED, true);
  header.setUint16(28, extra.length, true);
  return { local, data, central: centralRecord(file, entry, sizes) };
}

/** The entry's record in the central directory, with the sizes given and without zip64 fields. */
function centralRecord(file: ZipFile, entry: zip.ZipEntry, sizes: Sizes): Uint8Array<ArrayBuffer> {
  const view = viewOf(file.bytes);
  const nameEnd = entry.centralStart + zip.CENTRAL_LENGTH + view.getUint16(entry.centralStart + 28, true);
  const extraEnd = nameEnd + view.getUint16(entry.centralStart + 30, true);
  const extra = withoutZip64(file.bytes, view, nameEnd, extraEnd);
  const record = concatenate([
    file.bytes.subarray(entry.centralStart, nameEnd),
    extra,
    file.bytes.subarray(extraEnd, entry.centralEnd),
  ]);
  const header = viewOf(record);
  if (sizes !== entry) header.setUint16(6, VERSION_NEEDED, true);
  writeSizes(header, 8, sizes);
  header.setUint16(30, extra.length, true);
  return record;
}

function newEntry(name: string, content: Uint8Array): NewEntry {
  const { data, crc } = compress(content);
  const sizes: Sizes = {
    crc,
    compressedSize: data.length,
    size: content.length,
    method: zip.DEFLATED,
    flags: UTF8_NAME,
  };
  const nameBytes = new TextEncoder().encode(name);
  const local = new Uint8Array(zip.LOCAL_LENGTH + nameBytes.length);
  const localView = viewOf(local);
  localView.setUint32(0, zip.LOCAL_SIGNATURE, true);
  localView.setUint16(4, VERSION_NEEDED, true);
  writeSizes(localView, 6, sizes);
  localView.setUint32(10, FIXED_TIME, true);
  localView.setUint16(26, nameBytes.length, true);
  local.set(nameBytes, zip.LOCAL_LENGTH);
  const central = new Uint8Array(zip.CENTRAL_LENGTH + nameBytes.length);
  const centralView = viewOf(central);
  centralView.setUint32(0, zip.CENTRAL_SIGNATURE, true);
  centralView.setUint16(4, VERSION_NEEDED, true);
  centralView.setUint16(6, VERSION_NEEDED, true);
  writeSizes(centralView, 8, sizes);
  centralView.setUint32(12, FIXED_TIME, true);
  centralView.setUint16(28, nameBytes.length, true);
  central.set(nameBytes, zip.CENTRAL_LENGTH);
  return { local, data, central };
}

/** Writes flags, method, checksum and sizes, which stand in the same order in both kinds of header. */
function writeSizes(header: DataView, at: number, sizes: Sizes): void {
  header.setUint16(at, sizes.flags, true);
  header.setUint16(at + 2, sizes.method, true);
  header.setUint32(at + 8, sizes.crc, true);
  header.setUint32(at + 12, sizes.compressedSize, true);
  header.setUint32(at + 16, sizes.size, true);
}

function withoutZip64(bytes: Uint8Array, view: DataView, start: number, end: number): Uint8Array {
  const kept: Uint8Array[] = [];
  let hadZip64 = false;
  zip.eachExtraField(view, start, end, (id, contentStart, contentEnd) => {
    if (id === zip.ZIP64_FIELD) hadZip64 = true;
    else kept.push(bytes.subarray(contentStart - 4, contentEnd));
  });
  return hadZip64 ? concatenate(kept) : bytes.subarray(start, end);
}

function endRecord(central: readonly Uint8Array[], offset: number, comment: Uint8Array): Uint8Array {
  const record = new Uint8Array(zip.END_LENGTH + comment.length);
  const view = viewOf(record);
  view.setUint32(0, zip.END_SIGNATURE, true);
  view.setUint16(8, central.length, true);
  view.setUint16(10, central.length, true);
  const length = central.reduce((sum, each) => sum + each.length, 0);
  view.setUint32(12, length, true);
  view.setUint32(16, offset, true);
  view.setUint16(20, comment.length, true);
  record.set(comment, zip.END_LENGTH);
  return record;
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function concatenate(pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
