import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { SAMPLES } from './samples.ts';

const FOLDER = fileURLToPath(new URL('../../sample-workbooks', import.meta.url));

await mkdir(FOLDER, { recursive: true });
await Promise.all(Object.entries(SAMPLES).map(([name, make]) => writeFile(join(FOLDER, name), make())));
