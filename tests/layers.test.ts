import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import typescript from 'typescript';
import { describe, expect, test } from 'vitest';

/** What each layer may import: other layers, and packages. The core takes values in and gives values out. */
const MAY_IMPORT: Readonly<
  Record<string, { readonly layers: readonly string[]; readonly packages: readonly RegExp[] }>
> = {
  core: {
    layers: [],
    packages: [/^date-fns$/, /^@date-fns\/utc$/, /^fraction\.js$/, /^currency-codes$/, /^@stdlib\//],
  },
  workbook: { layers: ['core'], packages: [/^zod$/] },
  actions: { layers: ['core', 'workbook'], packages: [/^fastest-levenshtein$/] },
  solver: { layers: ['core'], packages: [/^highs/] },
  files: { layers: ['core', 'workbook'], packages: [/^fflate$/] },
  'files-node': { layers: ['core', 'workbook', 'files'], packages: [/^node:/, /^write-file-atomic$/] },
  'command-line': {
    layers: ['core', 'workbook', 'actions', 'files', 'files-node', 'samples', 'solver'],
    packages: [/^node:/, /^picocolors$/, /^string-width$/, /^wrap-ansi$/, /^date-fns$/],
  },
  samples: { layers: ['core', 'workbook', 'files', 'files-node'], packages: [/^node:/] },
  session: { layers: ['core', 'workbook', 'actions', 'samples'], packages: [] },
  pane: {
    layers: ['core', 'workbook', 'actions', 'session'],
    packages: [/^preact(?:\/.+)?$/, /^@preact\/signals$/],
  },
  office: { layers: ['core', 'workbook'], packages: [] },
  'office-host': { layers: ['core', 'workbook'], packages: [] },
  functions: { layers: ['core', 'workbook', 'actions', 'session'], packages: [] },
  'add-in': {
    layers: [
      'core',
      'workbook',
      'actions',
      'files',
      'session',
      'office',
      'pane',
      'functions',
      'samples',
      'solver',
    ],
    packages: [/^preact(?:\/.+)?$/, /^@preact\/signals$/],
  },
  preview: {
    layers: ['core', 'workbook', 'files', 'office-host'],
    packages: [/^preact(?:\/.+)?$/, /^@preact\/signals$/, /^numfmt$/, /^@tanstack\/virtual-core$/],
  },
  'preview-server': { layers: ['build'], packages: [/^node:/, /^vite$/] },
  build: {
    layers: ['core'],
    packages: [
      /^node:/,
      /^vite$/,
      /^custom-functions-metadata$/,
      /^@resvg\/resvg-js$/,
      /^@fluentui\/tokens$/,
      /^saxes$/,
    ],
  },
};

const SOURCE = resolve(import.meta.dirname, '../src');
/** What a file of a layer imports that it may not. */
function forbiddenImports(layer: string, file: string, text: string): string[] {
  const allowed = MAY_IMPORT[layer];
  return typescript
    .preProcessFile(text)
    .importedFiles.map(({ fileName }) => fileName)
    .filter((specifier) => {
      if (!specifier.startsWith('.'))
        return !(allowed?.packages.some((each) => each.test(specifier)) ?? false);
      const target = relative(SOURCE, resolve(dirname(file), specifier)).split('/')[0] ?? '';
      return target !== layer && !(allowed?.layers.includes(target) ?? false);
    });
}

function filesOf(layer: string): string[] {
  return readdirSync(join(SOURCE, layer), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(SOURCE, layer, name));
}

describe('layers', () => {
  test('every folder of src is a layer that is listed', () => {
    const folders = readdirSync(SOURCE, { withFileTypes: true }).filter((each) => each.isDirectory());
    expect(folders.map(({ name }) => name).toSorted()).toEqual(Object.keys(MAY_IMPORT).toSorted());
  });

  test.each(Object.keys(MAY_IMPORT))('%s imports only what it may', (layer) => {
    const files = filesOf(layer);
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) {
      expect({
        file: relative(SOURCE, file),
        imports: forbiddenImports(layer, file, readFileSync(file, 'utf8')),
      }).toEqual({
        file: relative(SOURCE, file),
        imports: [],
      });
    }
  });

  test('an import that crosses a boundary is found', () => {
    const file = join(SOURCE, 'core/made-up.ts');
    const text =
      "import { z } from 'zod';\nimport type { Change } from '../workbook/port.ts';\nimport './day.ts';";
    expect(forbiddenImports('core', file, text)).toEqual(['zod', '../workbook/port.ts']);
  });
});
