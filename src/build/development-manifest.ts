import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { manifestXml } from './manifest.ts';
import { PROJECT_PATHS } from './project-paths.ts';

/** Where `vite` serves the add-in while it is worked on. */
const DEVELOPMENT_ADDRESS = 'https://localhost:3000';

/** The version of the add-in, as package.json has it. */
export function addInVersion(): string {
  const { version } = JSON.parse(readFileSync(join(PROJECT_PATHS.root, 'package.json'), 'utf8')) as {
    version: string;
  };
  return version;
}

/** The manifest by which the add-in is tried out on this machine. */
export function developmentManifest(): string {
  return manifestXml({ address: DEVELOPMENT_ADDRESS, version: addInVersion() });
}
