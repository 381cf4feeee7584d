/** Tables for the polynomial of ISO/IEC 21320-1 zip files, four bytes at a time ("slicing by 4"). */
const TABLES = buildTables();

/** The CRC-32 checksum that zip files keep of every entry. */
export function crc32(bytes: Uint8Array): number {
  const [t0, t1, t2, t3] = TABLES;
  let crc = -1;
  let i = 0;
  const fours = bytes.length - (bytes.length % 4);
  for (; i < fours; i += 4) {
    crc ^= at(bytes, i) | (at(bytes, i + 1) << 8) | (at(bytes, i + 2) << 16) | (at(bytes, i + 3) << 24);
    crc = at(t3, crc & 255) ^ at(t2, (crc >>> 8) & 255) ^ at(t1, (crc >>> 16) & 255) ^ at(t0, crc >>> 24);
  }
  for (; i < bytes.length; i++) crc = (crc >>> 8) ^ at(t0, (crc ^ at(bytes, i)) & 255);
  return ~crc >>> 0;
}

function at(values: Uint8Array | Int32Array, index: number): number {
  return values[index] as number;
}

function buildTables(): readonly [Int32Array, Int32Array, Int32Array, Int32Array] {
  const tables = [
    new Int32Array(256),
    new Int32Array(256),
    new Int32Array(256),
    new Int32Array(256),
  ] as const;
  for (let byte = 0; byte < 256; byte++) {
    let crc = byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
    tables[0][byte] = crc;
  }
  for (let step = 1; step < 4; step++) {
    const before = tables[step - 1] as Int32Array;
    const table = tables[step] as Int32Array;
    for (let byte = 0; byte < 256; byte++) {
      table[byte] = (at(before, byte) >>> 8) ^ at(tables[0], at(before, byte) & 255);
    }
  }
  return tables;
}
