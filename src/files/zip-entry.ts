/** The signatures and fixed lengths of the records of a zip file (PKWARE APPNOTE 4.3). */
export const LOCAL_SIGNATURE = 0x04034b50;
export const CENTRAL_SIGNATURE = 0x02014b50;
export const END_SIGNATURE = 0x06054b50;
export const LOCAL_LENGTH = 30;
export const CENTRAL_LENGTH = 46;
export const END_LENGTH = 22;

/** What a value of 32 or 16 bits holds where the true one stands in a zip64 record. */
export const IN_ZIP64_32 = 0xffffffff;
export const IN_ZIP64_16 = 0xffff;

export const STORED = 0;
export const DEFLATED = 8;

/** Flag bits of an entry. */
export const FLAG_ENCRYPTED = 0x0001;
export const FLAG_DEFLATE_LEVEL = 0x0006;
export const FLAG_DATA_DESCRIPTOR = 0x0008;
export const FLAG_STRONG_ENCRYPTION = 0x0040;

/** One entry as the central directory declares it; offsets are into the bytes of the file. */
export interface ZipEntry {
  readonly name: string;
  readonly flags: number;
  readonly method: number;
  readonly crc: number;
  readonly compressedSize: number;
  readonly size: number;
  /** Where its record in the central directory stands. */
  readonly centralStart: number;
  readonly centralEnd: number;
  /** Where its local header stands, and where the next thing in the file begins. */
  readonly localStart: number;
  readonly localEnd: number;
  readonly dataStart: number;
}

/** Walks the extra fields of a header: calls back with each field's id and the range of its content. */
export function eachExtraField(
  view: DataView,
  start: number,
  end: number,
  visit: (id: number, start: number, end: number) => void,
): void {
  let at = start;
  while (at + 4 <= end) {
    const contentEnd = at + 4 + view.getUint16(at + 2, true);
    if (contentEnd > end) return;
    visit(view.getUint16(at, true), at + 4, contentEnd);
    at = contentEnd;
  }
}

export const ZIP64_FIELD = 0x0001;
