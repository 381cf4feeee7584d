import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';

/** Whether a file is missing, or anything at or below some paths (folders too) was changed after it was written. */
export async function isOlderThan(file: string, paths: readonly string[]): Promise<boolean> {
  const written = await timeOf(file);
  if (written === null) return true;
  const below = await Promise.all(paths.map(allBelow));
  const times = await Promise.all(below.flat().map(timeOf));
  return times.some((time) => time !== null && time > written);
}

async function allBelow(path: string): Promise<string[]> {
  const found = await stat(path);
  if (!found.isDirectory()) return [path];
  const names = await readdir(path, { recursive: true });
  return [path, ...names.map((name) => join(path, name))];
}

/** When a file was last changed, in milliseconds; null where there is none. */
async function timeOf(path: string): Promise<number | null> {
  try {
    return (await stat(path)).mtimeMs;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
}
