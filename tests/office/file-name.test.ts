import { expect, test } from 'vitest';
import { fileNameIn } from '../../src/office/file-name.ts';

test.each([
  ['C:\\Studio\\Paper stock.xlsx', 'Paper stock.xlsx'],
  ['/Users/studio/50% cotton.xlsx', '50% cotton.xlsx'],
  ['https://files.example/personal/studio/Paper%20stock.xlsx?web=1#x', 'Paper stock.xlsx'],
  ['https://files.example/personal/50%.xlsx', '50%.xlsx'],
  ['Book1', null],
  ['C:\\Old.studio\\Book1', null],
  ['', null],
])('%s names the file %s', (address, name) => {
  expect(fileNameIn(address)).toBe(name);
});
