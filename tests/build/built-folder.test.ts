import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest';
import { CONTENT_SECURITY_POLICY } from '../../src/build/content-security-policy.ts';
import { functionsMetadata } from '../../src/build/functions-json.ts';
import { lintManifest } from '../../src/build/lint-manifest.ts';
import { projectSurroundings } from '../../src/build/manifest-surroundings.ts';
import { PROJECT_PATHS } from '../../src/build/project-paths.ts';

const CONFIG = join(PROJECT_PATHS.root, 'vite.config.ts');

afterEach(() => vi.unstubAllEnvs());

describe('the built folder', () => {
  const folder = mkdtempSync(join(tmpdir(), 'jarleaf-build-'));
  const read = (name: string): string => readFileSync(join(folder, name), 'utf8');
  const names = (): string[] =>
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));

  beforeAll(async () => {
    vi.stubEnv('JARLEAF_ADDRESS', 'https://studio.example/jarleaf/');
    await build({ configFile: CONFIG, logLevel: 'error', build: { outDir: folder } });
  }, 120_000);
  afterAll(() => {
    rmSync(folder, { recursive: true });
  });

  test('holds the page, its scripts and style sheets, the functions, the icons and the manifest', () => {
    const found = names().map((name) => name.replace(/-[\w-]{8}\.(js|css|wasm)$/, '-HASH.$1'));
    expect(found.filter((name) => !/^(?:assets|icons)\//.test(name)).toSorted()).toEqual([
      'functions.js',
      'functions.json',
      'help.html',
      'index.html',
      'manifest.xml',
    ]);
    expect(found.filter((name) => name.startsWith('assets/'))).toContain('assets/index-HASH.js');
    expect(found.filter((name) => name.startsWith('assets/') && !name.includes('-HASH.'))).toEqual([]);
    expect(found.filter((name) => name.startsWith('icons/'))).toHaveLength(
      readdirSync(PROJECT_PATHS.icons).length,
    );
  });

  test('the manifest is for the address that was named, and names only files that are there', () => {
    const manifest = read('manifest.xml');
    expect(lintManifest(manifest, projectSurroundings())).toEqual([]);
    const addresses = [...manifest.matchAll(/DefaultValue="(https:[^"]*)"/g)].map(
      ([, address = '']) => address,
    );
    expect(addresses.length).toBeGreaterThan(20);
    const there = new Set(names());
    for (const address of addresses) {
      const path = address.slice('https://studio.example/jarleaf/'.length);
      expect([address, address.startsWith('https://studio.example/jarleaf/'), there.has(path)]).toEqual([
        address,
        true,
        true,
      ]);
    }
  });

  test('the page’s policy stands before all that it rules, and the page keeps to it', () => {
    const page = read('index.html');
    const policy = /<meta http-equiv="Content-Security-Policy" content="([^"]*)">/.exec(page);
    expect(policy?.[1]?.replaceAll('&#39;', "'")).toBe(CONTENT_SECURITY_POLICY);
    expect(policy?.index).toBeLessThan(page.search(/<(?:script|link|style)/));
    expect(page).toContain(
      '<script src="https://appsforoffice.microsoft.com/lib/1/hosted/office.js"></script>',
    );
    expect(page.match(/<script(?![^>]*\ssrc=)|<style|\sstyle=|\son\w+=|href="data:|src="data:/g)).toBeNull();
    expect([...page.matchAll(/(?:src|href)="([^"]*)"/g)].map(([, address]) => address)).toEqual(
      expect.arrayContaining([expect.stringMatching(/^\.\/assets\/index-[\w-]+\.js$/)]),
    );
  });

  test('nothing in it runs text as code, or names another place to talk to', () => {
    const scripts = names().filter((name) => name.endsWith('.js'));
    expect(scripts.length).toBeGreaterThan(1);
    for (const name of scripts) {
      // The solver's loader has ways to read files that only a program without the newer one would take.
      const code = /\/highs-/.test(name) ? read(name).replaceAll('XMLHttpRequest', '') : read(name);
      expect([name, /\beval\(|\bXMLHttpRequest\b|\bWebSocket\b|\bsendBeacon\b/.exec(code)?.[0]]).toEqual([
        name,
        undefined,
      ]);
    }
  });

  test('the functions are described, and their script loads the page’s own', async () => {
    expect(read('functions.json')).toBe((await functionsMetadata(PROJECT_PATHS.functions)).json);
    const script = /^import '\.\/(assets\/index-[\w-]+\.js)';\n$/.exec(read('functions.js'))?.[1];
    expect(names()).toContain(script);
    expect(read('index.html')).toContain(`./${script}`);
  });
});

test.each(['studio.example', 'http://studio.example'])('%s is no address to build for', async (address) => {
  vi.stubEnv('JARLEAF_ADDRESS', address);
  const attempt = build({ configFile: CONFIG, logLevel: 'silent', build: { write: false } });
  await expect(attempt).rejects.toThrow(`JARLEAF_ADDRESS holds ${address}`);
});
