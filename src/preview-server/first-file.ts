import { readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { PROJECT_PATHS } from '../build/project-paths.ts';

/** The day on which the sample studio's records begin to matter. */
const SAMPLE_DAY = '2026-11-16';
const SAMPLE = join(PROJECT_PATHS.root, 'sample-workbooks/demo-studio.xlsx');

export interface FirstFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly sampleDay: string | null;
}

/** The workbook that the page begins with; an answer in words where it can't be read. */
export async function readFirstFile(path: string | null): Promise<FirstFile | string> {
  try {
    const bytes = await readFile(path ?? SAMPLE);
    return { name: basename(path ?? SAMPLE), bytes, sampleDay: path === null ? SAMPLE_DAY : null };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (code === 'ENOENT') return `There is no file ${path ?? SAMPLE}.`;
    if (code === 'EISDIR') return `${path ?? SAMPLE} is a folder, not a workbook.`;
    if (code === 'EACCES') return `${path ?? SAMPLE} may not be read by you.`;
    throw error;
  }
}
