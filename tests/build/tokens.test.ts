import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DESIGN_TOKENS } from '../../src/build/design-tokens.ts';
import { PROJECT_PATHS } from '../../src/build/project-paths.ts';
import { tokensCss } from '../../src/build/tokens-css.ts';

/** A colour's relative luminance as the Web Content Accessibility Guidelines 2.2 define it. */
function luminance(colour: string): number {
  const hex = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/.exec(colour);
  if (!hex) throw new Error(`${colour} is no six-digit colour`);
  const [red = 0, green = 0, blue = 0] = hex.slice(1).map((digits) => {
    const part = Number.parseInt(digits, 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].toSorted((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

function colourOf(name: string, theme: 'light' | 'dark'): string {
  const value = DESIGN_TOKENS.get(`colour-${name}`);
  if (!value) throw new Error(`no token colour-${name}`);
  return value[theme];
}

const SURFACES = ['surface', 'surface-2', 'surface-3', 'surface-hover'];
const STATUS = ['danger', 'warning', 'success', 'accent'];

describe('tokens.css', () => {
  test('is what the script writes', () => {
    expect(readFileSync(PROJECT_PATHS.tokens, 'utf8')).toBe(tokensCss());
  });

  test('every value is defined in both themes', () => {
    for (const [name, { light, dark }] of DESIGN_TOKENS) {
      expect([name, light, dark].join(' ')).not.toMatch(/undefined|^\s|\s{2}|\s$/);
    }
  });

  test('dark stands where the device says so and where an element says so, the same both times', () => {
    const css = tokensCss();
    const block = (selector: string) =>
      css
        .slice(css.indexOf(selector))
        .split('}')[0]
        ?.split('\n')
        .slice(1)
        .map((line) => line.trim())
        .filter(Boolean);
    expect(block('[data-theme="dark"] {')).toEqual(block(':root:not([data-theme="light"]) {'));
  });
});

describe.each(['light', 'dark'] as const)('contrast, %s', (theme) => {
  test('black on white is 21 : 1, as the guidelines say', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  });

  test.each(
    [
      ...['text', 'text-2', 'text-3', 'accent', 'danger-text', 'warning-text', 'success-text'].flatMap(
        (text) => SURFACES.map((surface) => [text, surface]),
      ),
      ['text-4', 'surface'],
      ['on-accent', 'accent'],
      ['on-accent', 'accent-hover'],
      ['on-accent', 'accent-pressed'],
      ['text', 'accent-surface'],
      ...STATUS.map((kind) => ['text', `${kind}-surface`]),
      ...STATUS.map((kind) => [kind === 'accent' ? kind : `${kind}-text`, `${kind}-surface`]),
    ].map(([text = '', surface = '']) => ({ text, surface })),
  )('$text on $surface can be read: at least 4.5 : 1', ({ text, surface }) => {
    expect(contrast(colourOf(text, theme), colourOf(surface, theme))).toBeGreaterThanOrEqual(4.5);
  });

  test.each(
    ['stroke-accessible', 'focus-outer', 'danger-mark', 'warning-mark', 'success-mark'].flatMap((stroke) =>
      SURFACES.map((surface) => ({ stroke, surface })),
    ),
  )('$stroke on $surface can be seen: at least 3 : 1', ({ stroke, surface }) => {
    expect(contrast(colourOf(stroke, theme), colourOf(surface, theme))).toBeGreaterThanOrEqual(3);
  });
});
