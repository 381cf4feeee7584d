import { copyFile, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { seededRandom } from '../src/core/seeded-random.ts';
import { call as runCall } from './helpers/fake-terminal.ts';

/** The README's session is what the command line really prints: each block is run in turn on a copy of the sample. */
const ROOT = resolve(import.meta.dirname, '..');
const BLOCK = /```console\n\$ npm run --silent jarleaf -- (.+)\n([\s\S]*?)```/g;
const LEFT_OUT = '…';
/** What identifiers are made from here; which use of a lot gets an odd coin depends on them. */
const README_SEED = 2031;
const FILE_IN_README = 'out/bench.xlsx';

const readme = await readFile(join(ROOT, 'README.md'), 'utf8');
const blocks = [...readme.matchAll(BLOCK)].map(([, call = '', output = '']) => ({ call, output }));
let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'jarleaf-readme-'));
  await copyFile(join(ROOT, 'sample-workbooks/demo-studio.xlsx'), join(folder, 'bench.xlsx'));
});
afterAll(() => rm(folder, { recursive: true }));

/** The words of a call, quoted ones whole. */
function wordsOf(call: string): string[] {
  return [...call.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? '');
}

describe('the session in the README', () => {
  test('goes through a day at the bench', () => {
    const verbs = blocks.map(({ call }) => wordsOf(call)[0]);
    expect(verbs).toEqual([
      'check',
      'log',
      'undo',
      'draw',
      'make',
      'count',
      'count',
      'plan',
      'make',
      'buy',
      'receive',
      'closing',
      'quote',
    ]);
  });

  test('prints what stands there', async () => {
    let posting = '';
    const random = seededRandom(README_SEED);
    for (const { call, output } of blocks) {
      const words = wordsOf(call).map((word) =>
        word === 'POSTING' ? posting : word === FILE_IN_README ? join(folder, 'bench.xlsx') : word,
      );
      const { out } = await runCall(words, { now: new Date(2026, 10, 16), random });
      const printed = out.replaceAll(join(folder, 'bench.xlsx'), FILE_IN_README);
      posting = /Posting (\S+)\./.exec(printed)?.[1] ?? posting;
      for (const part of output.split(LEFT_OUT).map((each) => each.trim())) {
        expect(printed).toContain(part);
      }
    }
  });
});
