import type { Theme } from '../pane/pane.tsx';

/** Half of the brightness of white, from which a ground counts as light. */
const MIDDLE = 0.5;

/**
 * Whether the program around the pane is light or dark, by the brightness of its ground (the weights of sRGB's
 * relative luminance in WCAG 2.2, without the curve: near enough for this).
 * @returns null where the program doesn't say
 */
export function themeOf(theme: { readonly bodyBackgroundColor?: string } | undefined): Theme | null {
  const hex = /^#?([0-9a-f]{6})$/i.exec(theme?.bodyBackgroundColor ?? '')?.[1];
  if (hex === undefined) return null;
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map(
    (at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255,
  );
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue < MIDDLE ? 'dark' : 'light';
}
