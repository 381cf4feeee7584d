import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ManifestSurroundings } from './lint-manifest.ts';
import { PROJECT_PATHS } from './project-paths.ts';

/** How a function is associated with a command in the code of the add-in. */
const ASSOCIATED = /\bOffice\.actions\.associate\(\s*(['"])([^'"]+)\1/g;

/** What this project's manifest is held against: the icons as they lie there, and the code of the add-in. */
export function projectSurroundings(): ManifestSurroundings {
  const sources = readdirSync(PROJECT_PATHS.addIn)
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => readFileSync(join(PROJECT_PATHS.addIn, name), 'utf8'));
  return {
    commands: new Set(sources.flatMap(commandsIn)),
    iconSize: (path) => {
      const file = join(PROJECT_PATHS.public, path);
      return existsSync(file) ? squareSize(readFileSync(file)) : null;
    },
  };
}

/** The commands that a source text associates with functions. */
export function commandsIn(source: string): string[] {
  return [...source.matchAll(ASSOCIATED)].flatMap(([, , name]) => name ?? []);
}

const PNG_SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const WIDTH_AT = 16;
const HEIGHT_AT = 20;

/** The width of a square PNG in pixels; null for anything else. */
export function squareSize(bytes: Buffer): number | null {
  if (bytes.length < HEIGHT_AT + 4 || !bytes.subarray(0, PNG_SIGNATURE.length).equals(PNG_SIGNATURE)) {
    return null;
  }
  const width = bytes.readUInt32BE(WIDTH_AT);
  return width === bytes.readUInt32BE(HEIGHT_AT) ? width : null;
}
