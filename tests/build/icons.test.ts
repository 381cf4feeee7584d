import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { drawIcons } from '../../src/build/icons.ts';
import { squareSize } from '../../src/build/manifest-surroundings.ts';
import { PROJECT_PATHS } from '../../src/build/project-paths.ts';

describe('icons', () => {
  const drawn = drawIcons();

  test('the files are what the script draws, and there are no others', () => {
    expect(readdirSync(PROJECT_PATHS.icons).toSorted()).toEqual([...drawn.keys()].toSorted());
    for (const [name, bytes] of drawn) {
      expect([name, Buffer.from(bytes).equals(readFileSync(join(PROJECT_PATHS.icons, name)))]).toEqual([
        name,
        true,
      ]);
    }
  });

  test('each is as wide and as high as its name says', () => {
    for (const [name, bytes] of drawn) {
      expect([name, squareSize(Buffer.from(bytes))]).toEqual([name, Number(/-(\d+)\.png$/.exec(name)?.[1])]);
    }
  });
});

test('what is no square picture has no size', () => {
  const oblong = Buffer.from(drawIcons().get('jar-16.png') ?? []);
  oblong.writeUInt32BE(17, 20);
  expect(squareSize(oblong)).toBeNull();
  expect(squareSize(Buffer.from('a text that is longer than the head of a picture'))).toBeNull();
  expect(squareSize(Buffer.alloc(0))).toBeNull();
});
