import { damaged } from './file-refused.ts';
import * as zip from './zip-entry.ts';

/** Where the list of entries at the end of a zip file stands. */
export interface ZipDirectory {
  readonly count: number;
  readonly start: number;
  readonly end: number;
  readonly comment: Uint8Array;
}

const ZIP64_LOCATOR_SIGNATURE = 0x07064b50;
const ZIP64_LOCATOR_LENGTH = 20;
const ZIP64_END_SIGNATURE = 0x06064b50;
const ZIP64_END_LENGTH = 56;
const MAX_COMMENT = 0xffff;

/**
 * Finds the central directory, in the plain or the zip64 form.
 * @throws FileRefused where the file has none or it contradicts itself.
 */
export function findDirectory(bytes: Uint8Array, view: DataView): ZipDirectory {
  const endRecord = findEndRecord(bytes, view);
  if (endRecord === null) throw damaged('its end is missing, as after a download or copy that broke off');
  if (view.getUint16(endRecord + 4, true) !== 0 || view.getUint16(endRecord + 6, true) !== 0) {
    throw damaged('it is one of several volumes');
  }
  let count = view.getUint16(endRecord + 10, true);
  let size = view.getUint32(endRecord + 12, true);
  let start = view.getUint32(endRecord + 16, true);
  if (count === zip.IN_ZIP64_16 || size === zip.IN_ZIP64_32 || start === zip.IN_ZIP64_32) {
    const wide = findZip64End(view, endRecord);
    count = Number(view.getBigUint64(wide + 32, true));
    size = Number(view.getBigUint64(wide + 40, true));
    start = Number(view.getBigUint64(wide + 48, true));
  } else if (view.getUint16(endRecord + 8, true) !== count) {
    throw damaged('its list of parts contradicts itself');
  }
  const end = start + size;
  if (!(end <= endRecord) || count * zip.CENTRAL_LENGTH > size) {
    throw damaged('its list of parts is not where it should be');
  }
  return { count, start, end, comment: bytes.subarray(endRecord + zip.END_LENGTH) };
}

function findEndRecord(bytes: Uint8Array, view: DataView): number | null {
  const last = bytes.length - zip.END_LENGTH;
  for (let at = last; at >= Math.max(0, last - MAX_COMMENT); at--) {
    if (view.getUint32(at, true) !== zip.END_SIGNATURE) continue;
    if (at + zip.END_LENGTH + view.getUint16(at + 20, true) === bytes.length) return at;
  }
  return null;
}

function findZip64End(view: DataView, endRecord: number): number {
  const locator = endRecord - ZIP64_LOCATOR_LENGTH;
  if (locator >= 0 && view.getUint32(locator, true) === ZIP64_LOCATOR_SIGNATURE) {
    const at = Number(view.getBigUint64(locator + 8, true));
    if (at + ZIP64_END_LENGTH <= locator && view.getUint32(at, true) === ZIP64_END_SIGNATURE) return at;
  }
  throw damaged('its list of parts is not where it should be');
}
