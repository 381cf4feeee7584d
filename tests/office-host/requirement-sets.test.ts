import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { KINDS } from '../../src/office-host/objects/kinds.ts';
import { isOffered, SINCE } from '../../src/office-host/requirement-sets.ts';

/** The set of every member, as the library's own code has it, by kind and name on the bridge. */
function setsOfLibrary(): Map<string, string> {
  const folder = dirname(createRequire(import.meta.url).resolve('@microsoft/office-js/package.json'));
  const code = readFileSync(join(folder, 'dist/excel-win32-16.01.debug.js'), 'utf8');
  const checks = code.matchAll(/_throwIfApiNotSupported\("(\w+)\.(\w)(\w+)", (\w+|"[^"]+"), "([\d.]+)"/g);
  return new Map(
    [...checks].map(([, kind = '', first = '', rest = '', set = '', version = '']) => {
      const name = set === '_defaultApiSetName' ? 'ExcelApi' : set.replaceAll('"', '');
      return [
        `${kind}.${first.toUpperCase()}${rest}`,
        name === 'ExcelApi' ? version : `${name} ${version}`,
      ] as const;
    }),
  );
}

/** Every member that the host models. */
const MEMBERS = Object.entries(KINDS).flatMap(([kind, { scalars, setters, navigations, methods, edits }]) =>
  [
    ...new Set([scalars, setters, navigations, methods, edits].flatMap((part) => Object.keys(part ?? {}))),
  ].map((name) => `${kind}.${name}`),
);

/** Members that the library sends under another name than it offers them. */
const SENT_AS: Readonly<Record<string, string>> = { 'Worksheet.Gridlines': 'Worksheet.ShowGridlines' };

describe('requirement sets', () => {
  test('each modelled member has the set that the library gives it', () => {
    const library = setsOfLibrary();
    const expected = MEMBERS.flatMap((member) => {
      const set = library.get(SENT_AS[member] ?? member);
      return set === undefined || set === '1.1' ? [] : [[member, set] as const];
    });
    expect(expected.length).toBeGreaterThan(50);
    expect(SINCE).toEqual(Object.fromEntries(expected));
  });

  test('a version is compared by its numbers, not as text', () => {
    expect(isOffered({ ExcelApi: '1.9' }, 'Table.Resize')).toBe(false);
    expect(isOffered({ ExcelApi: '1.13' }, 'Table.Resize')).toBe(true);
    expect(isOffered({ ExcelApi: '2.0' }, 'Table.Resize')).toBe(true);
    expect(isOffered({ ExcelApi: '1.17' }, 'TableRowCollection.DeleteRowsAt')).toBe(false);
  });
});
