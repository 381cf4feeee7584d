import { writeFileSync } from 'node:fs';
import { PROJECT_PATHS } from './project-paths.ts';
import { tokensCss } from './tokens-css.ts';

writeFileSync(PROJECT_PATHS.tokens, tokensCss());
