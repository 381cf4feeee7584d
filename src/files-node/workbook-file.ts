import { createHash } from 'node:crypto';
import { constants, type Stats } from 'node:fs';
import { access, readFile, realpath, stat } from 'node:fs/promises';
import { basename, dirname, extname, join, resolve } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { FileRefused } from '../files/file-refused.ts';
import { MAX_FILE_BYTES } from '../files/limits.ts';
import { openXlsx, type XlsxWorkbook } from '../files/xlsx-workbook.ts';

/** A workbook read from disk, and the way back. */
export interface WorkbookFile {
  readonly workbook: XlsxWorkbook;
  /**
   * Saves in one step: whatever happens, the old or the new file stands there whole. Where nothing changed, the
   * file it came from isn't written again.
   * @param path where to; without it, where it was read
   * @throws FileRefused where it can't be saved there, or what stands there was changed meanwhile
   */
  readonly saveTo: (path?: string) => Promise<void>;
}

/**
 * Refuses a name that a file has already.
 * @throws FileRefused saying so
 */
export async function refuseExisting(path: string): Promise<void> {
  if ((await statusOf(path)) !== null) {
    throw new FileRefused(`${path} is there already. Choose another name.`);
  }
}

/**
 * Reads a workbook file.
 * @throws FileRefused with a sentence for the user where there is none, or it can't be read
 */
export async function readWorkbookFile(path: string): Promise<WorkbookFile> {
  const status = await statusOf(path);
  if (status === null) throw new FileRefused(`There is no file ${path}. Check its name and folder.`);
  if (status.isDirectory()) throw new FileRefused(`${path} is a folder. Name the .xlsx file in it.`);
  if (status.size > MAX_FILE_BYTES) {
    const size = Math.ceil(status.size / 1024 / 1024);
    throw new FileRefused(
      `${path} has ${size} MB, more than the ${MAX_FILE_BYTES / 1024 / 1024} MB that a bench's workbook may have. ` +
        'Move pictures or old years to a workbook of their own.',
    );
  }
  const bytes = await readBytes(path);
  const workbook = openXlsx(bytes);
  let known = { path: await realpath(path), hash: hashOf(bytes) };
  return {
    workbook,
    saveTo: async (target = path) => {
      const saved = workbook.save();
      if (resolve(target) === resolve(path) && hashOf(saved) === known.hash) return;
      const place = await checkTarget(target, workbook.macroEnabled);
      if (place === known.path) await refuseChanged(target, place, known.hash);
      await write(target, place, saved);
      if (place === known.path) known = { path: place, hash: hashOf(saved) };
    },
  };
}

/**
 * Writes a new workbook file (one made from a blueprint) in one step; an existing file is not overwritten.
 * @throws FileRefused where it can't be written there
 */
export async function writeNewWorkbookFile(path: string, bytes: Uint8Array): Promise<void> {
  const place = await checkTarget(path, false);
  await refuseExisting(path);
  await write(path, place, bytes);
}

/** Checks that a workbook may be saved under this name. @returns the place behind links */
async function checkTarget(path: string, macroEnabled: boolean): Promise<string> {
  const extension = extname(path).toLowerCase();
  const wanted = macroEnabled ? '.xlsm' : '.xlsx';
  if (extension !== wanted) {
    const why = macroEnabled ? 'The workbook holds macros, so its name' : 'The name of the workbook';
    throw new FileRefused(`${why} must end in ${wanted}; ${basename(path)} doesn't.`);
  }
  const status = await statusOf(path);
  if (status?.isDirectory()) throw new FileRefused(`${path} is a folder. Name the file to save to.`);
  const folder = await statusOf(dirname(resolve(path)));
  if (!folder?.isDirectory()) throw new FileRefused(`There is no folder ${dirname(path)} to save to.`);
  const place =
    status === null ? join(await realpath(dirname(resolve(path))), basename(path)) : await realpath(path);
  await Promise.all([...new Set([resolve(path), place])].map((each) => refuseOpen(path, each)));
  if (status !== null) await refuseReadOnly(path, status);
  return place;
}

/** Spreadsheet programs leave a file beside the one that they have open. */
async function refuseOpen(path: string, place: string): Promise<void> {
  const name = basename(place);
  const marks = [`~$${name}`, `.~lock.${name}#`];
  const found = await Promise.all(marks.map((mark) => statusOf(join(dirname(place), mark))));
  const mark = marks.find((_, index) => found[index] !== null);
  if (mark === undefined) return;
  throw new FileRefused(
    `${path} is open in a spreadsheet program (${mark} stands beside it). Close it there and try again; if no program has it open, one ended without tidying up: delete ${mark}.`,
  );
}

async function refuseReadOnly(path: string, status: Stats): Promise<void> {
  const noWriters = (status.mode & 0o222) === 0;
  const denied = await access(path, constants.W_OK).then(
    () => false,
    () => true,
  );
  if (noWriters || denied) {
    throw new FileRefused(`${path} is write-protected. Allow writing to it, or save under another name.`);
  }
}

async function refuseChanged(path: string, place: string, hash: string): Promise<void> {
  const status = await statusOf(place);
  if (status !== null && hashOf(await readBytes(place)) === hash) return;
  throw new FileRefused(
    `${path} was ${status === null ? 'removed' : 'changed by something else'} since it was read. ` +
      'Nothing was saved; run it again on the file as it is now.',
  );
}

async function write(path: string, place: string, bytes: Uint8Array): Promise<void> {
  try {
    await writeFileAtomic(place, Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  } catch (error) {
    throw refusal(path, error, 'saved');
  }
}

async function readBytes(path: string): Promise<Uint8Array> {
  try {
    return new Uint8Array(await readFile(path));
  } catch (error) {
    throw refusal(path, error, 'read');
  }
}

async function statusOf(path: string): Promise<Stats | null> {
  try {
    return await stat(path);
  } catch (error) {
    const code = codeOf(error);
    if (code === 'ENOENT' || code === 'ENOTDIR') return null;
    throw refusal(path, error, 'read');
  }
}

function refusal(path: string, error: unknown, done: 'read' | 'saved'): Error {
  switch (codeOf(error)) {
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return new FileRefused(
        `You have no permission for ${path}, so it can't be ${done}. Ask for it, or use a copy.`,
      );
    case 'EBUSY':
      return new FileRefused(`${path} is in use by another program. Close it there and try again.`);
    case 'ENOSPC':
    case 'EDQUOT':
      return new FileRefused(
        `There is no space left for ${path}. The old file is untouched; make room and try again.`,
      );
    case 'ENOENT':
    case 'ELOOP':
    case 'ENAMETOOLONG':
      return new FileRefused(`${path} can't be ${done}: there is no such place. Check its name and folder.`);
    default:
      return error instanceof Error ? error : new Error(String(error));
  }
}

function codeOf(error: unknown): string | undefined {
  const code = error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;
  return typeof code === 'string' ? code : undefined;
}

function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
