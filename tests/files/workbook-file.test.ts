import {
  chmod,
  lstat,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  rm,
  stat,
  symlink,
  writeFile,
} from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FileRefused } from '../../src/files/xlsx-workbook.ts';
import { readWorkbookFile, writeNewWorkbookFile } from '../../src/files-node/workbook-file.ts';
import { fixture, numberCell } from './fixture.ts';

const BYTES = fixture({
  sheets: [
    {
      name: 'S',
      rows: `<row r="2">${numberCell('A2', 1)}</row>`,
      tables: [{ name: 'T', ref: 'A1:A2', columns: ['N'] }],
    },
  ],
});

let folder = '';
let path = '';

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'jarleaf-'));
  path = join(folder, 'bench.xlsx');
  await writeFile(path, BYTES);
});

afterEach(async () => {
  await rm(folder, { recursive: true });
});

async function changed() {
  const file = await readWorkbookFile(path);
  file.workbook.apply([{ kind: 'append', table: 'T', rows: [{ N: { kind: 'number', number: 2 } }] }]);
  return file;
}

async function rowsIn(place: string): Promise<number | undefined> {
  return (await readWorkbookFile(place)).workbook.snapshot().tables[0]?.rowCount;
}

async function refused(action: Promise<unknown>, sentence: RegExp): Promise<void> {
  const error = await action.then(
    () => null,
    (each: unknown) => each,
  );
  expect(error).toBeInstanceOf(FileRefused);
  expect((error as FileRefused).message).toMatch(sentence);
}

describe('reading a workbook file', () => {
  it('says what is wrong with a path', async () => {
    await refused(readWorkbookFile(join(folder, 'none.xlsx')), /There is no file .*none\.xlsx/);
    await refused(readWorkbookFile(folder), /is a folder/);
    await refused(readWorkbookFile(join(path, 'below.xlsx')), /There is no file/);
  });
});

describe('saving a workbook file', () => {
  it('saves in place, again and again, leaving nothing beside it', async () => {
    await chmod(path, 0o640);
    const file = await changed();
    await file.saveTo();
    file.workbook.apply([{ kind: 'append', table: 'T', rows: [{}] }]);
    await file.saveTo(path);
    expect(await rowsIn(path)).toBe(3);
    expect((await stat(path)).mode & 0o777).toBe(0o640);
    expect(await readdir(folder)).toEqual(['bench.xlsx']);
  });

  it('writes nothing where nothing changed', async () => {
    await chmod(path, 0o444);
    await (await readWorkbookFile(path)).saveTo();
    expect(new Uint8Array(await readFile(path))).toEqual(BYTES);
  });

  it('saves under another name, leaving the first file as it was', async () => {
    await (await changed()).saveTo(join(folder, 'other.xlsx'));
    expect(new Uint8Array(await readFile(path))).toEqual(BYTES);
    expect(await rowsIn(join(folder, 'other.xlsx'))).toBe(2);
  });

  it('saves through a link, which stays one', async () => {
    const link = join(folder, 'link.xlsx');
    await symlink(path, link);
    const file = await readWorkbookFile(link);
    file.workbook.apply([{ kind: 'append', table: 'T', rows: [{}] }]);
    await file.saveTo();
    expect((await lstat(link)).isSymbolicLink()).toBe(true);
    expect(await rowsIn(path)).toBe(2);
  });

  it.each(['~$bench.xlsx', '.~lock.bench.xlsx#'])('refuses while %s says that it is open', async (mark) => {
    await writeFile(join(folder, mark), '');
    await refused((await changed()).saveTo(), /is open in a spreadsheet program/);
    expect(new Uint8Array(await readFile(path))).toEqual(BYTES);
  });

  it('refuses where the file changed since it was read', async () => {
    const file = await changed();
    await writeFile(path, new Uint8Array([...BYTES, 0]));
    await refused(file.saveTo(), /changed by something else/);
    await rm(path);
    await refused(file.saveTo(), /removed/);
  });

  it('refuses a write-protected file', async () => {
    await chmod(path, 0o444);
    await refused((await changed()).saveTo(), /write-protected/);
  });

  it('refuses other kinds of file, folders, and folders that are not there', async () => {
    const file = await changed();
    await refused(file.saveTo(join(folder, 'bench.csv')), /must end in \.xlsx; bench\.csv doesn't/);
    await refused(file.saveTo(join(folder, 'bench.xlsm')), /must end in \.xlsx/);
    await refused(file.saveTo(join(folder, 'none', 'bench.xlsx')), /There is no folder/);
    await mkdir(join(folder, 'dir.xlsx'));
    await refused(file.saveTo(join(folder, 'dir.xlsx')), /is a folder/);
  });

  it('makes a new file, but not over another', async () => {
    await writeNewWorkbookFile(join(folder, 'new.xlsx'), BYTES);
    expect(new Uint8Array(await readFile(join(folder, 'new.xlsx')))).toEqual(BYTES);
    await refused(writeNewWorkbookFile(path, BYTES), /is there already/);
  });
});
