import { writeFileSync } from 'node:fs';
import { developmentManifest } from './development-manifest.ts';
import { PROJECT_PATHS } from './project-paths.ts';

writeFileSync(PROJECT_PATHS.manifest, developmentManifest());
