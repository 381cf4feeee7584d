import { readFileSync } from 'node:fs';
import { lintManifest } from './lint-manifest.ts';
import { projectSurroundings } from './manifest-surroundings.ts';
import { PROJECT_PATHS } from './project-paths.ts';

const faults = lintManifest(readFileSync(PROJECT_PATHS.manifest, 'utf8'), projectSurroundings());
for (const fault of faults) process.stderr.write(`manifest.xml, ${fault}\n`);
if (faults.length > 0) process.exitCode = 1;
