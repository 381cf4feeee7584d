import { strToU8, unzipSync, Zip, ZipDeflate, ZipPassThrough, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readEntry, readZip } from '../../src/files/zip-read.ts';
import { rewriteZip, writeZip } from '../../src/files/zip-write.ts';

const text = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes);

/** A zip file as programs write it that don't know sizes beforehand: they follow behind the content. */
function streamed(): Uint8Array {
  const pieces: Uint8Array[] = [];
  const zip = new Zip((_, piece) => pieces.push(piece));
  for (const file of [
    new ZipDeflate('a.xml', { level: 6 }),
    new ZipPassThrough('b.png'),
    new ZipDeflate('c.xml'),
  ]) {
    zip.add(file);
    file.push(strToU8(`content of ${file.filename}`), true);
  }
  zip.end();
  return new Uint8Array(pieces.flatMap((piece) => [...piece]));
}

describe('rewriting a zip file', () => {
  it.each([
    [
      'with sizes before the content',
      zipSync(
        {
          'a.xml': strToU8('content of a.xml'),
          'b.png': [strToU8('content of b.png'), { level: 0 }],
          'c.xml': strToU8('c'),
        },
        { comment: 'kept' },
      ),
    ],
    ['with sizes behind the content', streamed()],
  ])('keeps the other entries byte for byte, %s', (_, bytes) => {
    const before = readZip(bytes);
    const after = rewriteZip(
      before,
      new Map([
        ['a.xml', strToU8('other')],
        ['d.xml', strToU8('new')],
      ]),
    );
    const again = readZip(after);
    expect(again.entries.map((entry) => entry.name)).toEqual(['a.xml', 'b.png', 'c.xml', 'd.xml']);
    expect(Object.keys(unzipSync(after))).toHaveLength(4);
    expect(text(unzipSync(after)['a.xml'])).toBe('other');
    expect(text(unzipSync(after)['d.xml'])).toBe('new');
    for (const index of [1, 2]) {
      const [old, now] = [before.entries[index], again.entries[index]];
      if (!old || !now) throw new Error('an entry is missing');
      expect(after.slice(now.localStart, now.localEnd)).toEqual(bytes.slice(old.localStart, old.localEnd));
      expect(readEntry(again, now)).toEqual(readEntry(before, old));
    }
    expect(again.comment).toEqual(before.comment);
  });

  it('takes entries out', () => {
    const file = readZip(zipSync({ a: strToU8('a'), b: strToU8('b') }));
    expect(Object.keys(unzipSync(rewriteZip(file, new Map([['a', null]]))))).toEqual(['b']);
  });

  it('gives the same bytes every time', () => {
    const contents = new Map([['a.xml', strToU8('x'.repeat(999))]]);
    expect(writeZip(contents)).toEqual(writeZip(contents));
  });

  it('reads the wide form that large files need, and writes the plain one', () => {
    const plain = writeZip(new Map([['a.xml', strToU8('wide')]]));
    const wide = widen(plain);
    const file = readZip(wide);
    const [entry] = file.entries;
    if (!entry) throw new Error('no entry');
    expect(text(readEntry(file, entry))).toBe('wide');
    const kept = rewriteZip(file, new Map([['b.xml', strToU8('b')]]));
    expect(text(unzipSync(kept)['a.xml'])).toBe('wide');
    expect(text(unzipSync(kept)['b.xml'])).toBe('b');
  });
});

/** Moves size and offset of the only entry, and the end record's numbers, to their zip64 places. */
function widen(bytes: Uint8Array): Uint8Array {
  const end = bytes.length - 22;
  const old = new DataView(bytes.buffer, bytes.byteOffset);
  const start = old.getUint32(end + 16, true);
  const record = bytes.slice(start, end);
  const size = old.getUint32(start + 24, true);
  const field = new Uint8Array(20);
  const fieldView = new DataView(field.buffer);
  fieldView.setUint16(0, 1, true);
  fieldView.setUint16(2, 16, true);
  fieldView.setBigUint64(4, BigInt(size), true);
  const recordView = new DataView(record.buffer);
  recordView.setUint32(24, 0xffffffff, true);
  recordView.setUint32(42, 0xffffffff, true);
  recordView.setUint16(30, 20, true);
  const wideEnd = new Uint8Array(56);
  const wideView = new DataView(wideEnd.buffer);
  wideView.setUint32(0, 0x06064b50, true);
  wideView.setBigUint64(32, 1n, true);
  wideView.setBigUint64(40, BigInt(record.length + 20), true);
  wideView.setBigUint64(48, BigInt(start), true);
  const locator = new Uint8Array(20);
  const locatorView = new DataView(locator.buffer);
  locatorView.setUint32(0, 0x07064b50, true);
  locatorView.setBigUint64(8, BigInt(start + record.length + 20), true);
  const last = bytes.slice(end);
  const lastView = new DataView(last.buffer);
  lastView.setUint16(8, 0xffff, true);
  lastView.setUint16(10, 0xffff, true);
  lastView.setUint32(12, 0xffffffff, true);
  lastView.setUint32(16, 0xffffffff, true);
  return new Uint8Array([...bytes.slice(0, start), ...record, ...field, ...wideEnd, ...locator, ...last]);
}
