import { readFile } from 'node:fs/promises';
import { expect } from 'vitest';
import { call } from './fake-terminal.ts';
import { rowsByHeader } from './xlsx.ts';

/** What a call answers as JSON; it must end as said, and print nothing else. */
export async function ask(words: readonly string[], code = 0) {
  const answer = await call([...words, '--json']);
  expect({ code: answer.code, err: answer.err }).toEqual({ code, err: '' });
  return JSON.parse(answer.out);
}

/** The filled rows of a tab of a file, as an independent reader finds them. */
export async function rowsOfFile(path: string, tab: string): Promise<Record<string, unknown>[]> {
  const all = await rowsByHeader(new Uint8Array(await readFile(path)), tab);
  return all.filter((row) => Object.values(row).some((value) => value !== null));
}
