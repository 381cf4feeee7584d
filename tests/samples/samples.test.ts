import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SAMPLES } from '../../src/samples/samples.ts';

const committed = (name: string): Buffer =>
  readFileSync(new URL(`../../sample-workbooks/${name}`, import.meta.url));

describe.each(Object.entries(SAMPLES))('%s', (name, make) => {
  it('has the same bytes whenever it is made, and those are the ones in the repository', () => {
    const first = Buffer.from(make());
    expect(first.equals(Buffer.from(make()))).toBe(true);
    expect(first.equals(committed(name))).toBe(true);
  });
});
