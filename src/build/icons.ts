import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { PROJECT_PATHS } from './project-paths.ts';

/** The sizes in which each drawing is wanted, in pixels; a drawing for small sizes has fewer lines. */
const ICONS = [
  { name: 'jar', drawing: 'jar-small', sizes: [16, 20, 24] },
  { name: 'jar', drawing: 'jar', sizes: [32, 40, 48, 64, 80] },
  { name: 'log-from-row', drawing: 'log-from-row', sizes: [16, 20, 24, 32, 40, 48, 64, 80] },
  { name: 'check-now', drawing: 'check-now', sizes: [16, 20, 24, 32, 40, 48, 64, 80] },
] as const;

/** The name of an icon, without its size. */
export type IconName = (typeof ICONS)[number]['name'];

/** The file name of an icon in a size. */
export function iconFile(name: IconName, size: number): string {
  return `${name}-${size}.png`;
}

/** Every icon as the bytes of a square PNG, by its file name. */
export function drawIcons(): ReadonlyMap<string, Uint8Array> {
  return new Map(
    ICONS.flatMap(({ name, drawing, sizes }) => {
      const svg = readFileSync(join(PROJECT_PATHS.drawings, `${drawing}.svg`), 'utf8');
      return sizes.map((size): [string, Uint8Array] => [iconFile(name, size), render(svg, size)]);
    }),
  );
}

function render(svg: string, size: number): Uint8Array {
  const image = new Resvg(svg, { fitTo: { mode: 'width', value: size }, font: { loadSystemFonts: false } });
  return image.render().asPng();
}
