import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { drawIcons } from './icons.ts';
import { PROJECT_PATHS } from './project-paths.ts';

mkdirSync(PROJECT_PATHS.icons, { recursive: true });
for (const [name, bytes] of drawIcons()) writeFileSync(join(PROJECT_PATHS.icons, name), bytes);
