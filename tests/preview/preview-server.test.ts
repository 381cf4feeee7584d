import { mkdir, mkdtemp, rm, utimes, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { isOlderThan } from '../../src/preview-server/changed-since.ts';
import { readFirstFile } from '../../src/preview-server/first-file.ts';
import { readOptions } from '../../src/preview-server/options.ts';
import { servePreview } from '../../src/preview-server/preview-server.ts';
import { panePage } from '../../src/preview-server/served-pages.ts';

const PANE =
  '<head><meta http-equiv="Content-Security-Policy" content="default-src \'none\'">' +
  '<script src="https://appsforoffice.microsoft.com/lib/1/hosted/office.js"></script>' +
  '<script type="module" src="./assets/pane.js"></script></head>';

/** Serves made-up built pages; what is asked for is what a browser would send. */
async function served(office = false, port = 45_700) {
  const root = await mkdtemp(join(tmpdir(), 'preview-'));
  const folders = { page: join(root, 'page'), pane: join(root, 'pane'), officeScript: join(root, 'office') };
  for (const folder of Object.values(folders)) await mkdir(join(folder, 'assets'), { recursive: true });
  await writeFile(join(root, 'secret.txt'), 'secret');
  await writeFile(join(folders.page, 'index.html'), '<p>page</p>');
  await writeFile(join(folders.page, 'assets/page.js'), 'page()');
  await writeFile(join(folders.pane, 'index.html'), PANE);
  await writeFile(join(folders.pane, 'assets/pane.js'), 'pane()');
  await writeFile(join(folders.officeScript, 'office.js'), 'office()');
  const first = { name: 'mine.xlsx', bytes: new Uint8Array([1, 2, 3]), sampleDay: null };
  const running = await servePreview({ folders, first, office }, port);
  onTestFinished(async () => {
    await running.close();
    await rm(root, { recursive: true });
  });
  return running;
}

/** A request as it is written, without the tidying that a browser does. */
function ask(address: string, path: string, options: { method?: string; host?: string } = {}) {
  const { hostname, port, host } = new URL(address);
  return new Promise<{ status: number; text: string; headers: NodeJS.Dict<string | string[]> }>(
    (resolve, reject) => {
      const sent = request(
        { hostname, port, path, method: options.method ?? 'GET', headers: { host: options.host ?? host } },
        (response) => {
          let text = '';
          response.setEncoding('latin1');
          response.on('data', (piece: string) => {
            text += piece;
          });
          response.on('end', () =>
            resolve({ status: response.statusCode ?? 0, text, headers: response.headers }),
          );
        },
      );
      sent.on('error', reject);
      sent.end();
    },
  );
}

describe('the preview server', () => {
  it('serves the page, the pane, the workbook and how it was started, on this machine only', async () => {
    const { address } = await served();
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    expect((await ask(address, '/')).text).toBe('<p>page</p>');
    const script = await ask(address, '/assets/page.js');
    expect(script.headers['content-type']).toBe('text/javascript; charset=utf-8');
    expect((await ask(address, '/pane/assets/pane.js?v=1')).text).toBe('pane()');
    expect((await ask(address, '/workbook')).text).toBe('\u0001\u0002\u0003');
    expect(JSON.parse((await ask(address, '/start.json')).text)).toEqual({
      fileName: 'mine.xlsx',
      sampleDay: null,
      office: false,
    });
  });

  it('takes the script of another machine out of the pane, and leaves the rest as it was built', async () => {
    const { address } = await served();
    const { text, headers } = await ask(address, '/pane/index.html');
    expect(text).toBe(PANE.replace(/<script src="https:[^>]*><\/script>/, ''));
    expect(headers['content-security-policy']).toBe("frame-ancestors 'self'");
    for (const path of ['/office-js/office.js', '/pane-container.js']) {
      expect((await ask(address, path)).status).toBe(404);
    }
  });

  it('gives the script from this machine where the pane is to go through it', async () => {
    const { address } = await served(true);
    const { text } = await ask(address, '/pane/index.html');
    expect(text).not.toContain('https://');
    const scripts = [...text.matchAll(/src="([^"]*)"/g)].map(([, source]) => source);
    expect(scripts).toEqual(['../pane-container.js', '../office-js/office.js', './assets/pane.js']);
    expect((await ask(address, '/office-js/office.js')).text).toBe('office()');
    expect((await ask(address, '/pane-container.js')).status).toBe(200);
  });

  it('says what it has not got, and gives nothing from outside its folders', async () => {
    const { address } = await served(true);
    for (const path of [
      '/nothing',
      '/assets',
      '/../secret.txt',
      '/pane/../../secret.txt',
      '/%2e%2e/secret.txt',
      '/pane/..%2f..%2fsecret.txt',
      '/office-js/%2e%2e%5c..%5csecret.txt',
      '/assets/..%2f..%2fsecret.txt',
      '/%00',
      '/%',
    ]) {
      const { status, text } = await ask(address, path);
      expect({ path, status }).toEqual({ path, status: 404 });
      expect(text).not.toContain('secret');
    }
  });

  it('lets no other page hold it, read it or load anything from elsewhere', async () => {
    const { address } = await served();
    const { headers } = await ask(address, '/');
    expect(headers['content-security-policy']).toContain("default-src 'none'");
    expect(headers['content-security-policy']).not.toMatch(/https?:|\*|unsafe/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect((await ask(address, '/workbook', { host: 'elsewhere.example' })).status).toBe(403);
    expect((await ask(address, '/workbook', { method: 'POST' })).status).toBe(405);
  });

  it('takes the next port where one is in use', async () => {
    const first = await served(false, 45_800);
    const second = await served(false, Number(new URL(first.address).port));
    expect(Number(new URL(second.address).port)).toBeGreaterThan(Number(new URL(first.address).port));
    expect((await ask(second.address, '/')).status).toBe(200);
  });

  it('does not serve a pane whose script it can not find', () => {
    expect(() => panePage('<head></head>', false)).toThrow('no tag');
  });
});

describe('building only what is needed', () => {
  it('is needed where nothing was built, or something was changed, came or went since', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'preview-'));
    onTestFinished(() => rm(folder, { recursive: true }));
    const [sources, built] = [join(folder, 'src'), join(folder, 'built')];
    await mkdir(join(sources, 'deep'), { recursive: true });
    await writeFile(join(sources, 'deep/a.ts'), 'a');
    const at = (path: string, seconds: number) => utimes(path, seconds, seconds);
    const settle = async () => {
      for (const path of [sources, join(sources, 'deep'), join(sources, 'deep/a.ts')]) await at(path, 1000);
    };
    await settle();
    expect(await isOlderThan(built, [sources])).toBe(true);
    await writeFile(built, '');
    await at(built, 2000);
    expect(await isOlderThan(built, [sources])).toBe(false);
    await at(join(sources, 'deep/a.ts'), 3000);
    expect(await isOlderThan(built, [sources])).toBe(true);
    await settle();
    await rm(join(sources, 'deep/a.ts'));
    expect(await isOlderThan(built, [sources])).toBe(true);
    expect(await isOlderThan(built, [built])).toBe(false);
  });
});

describe('the options of the preview', () => {
  it('are read', () => {
    expect(readOptions([])).toEqual({ kind: 'options', options: { office: false, port: 4173, file: null } });
    expect(readOptions(['--office', '--port', '5000', '--file', 'a b.xlsx'])).toEqual({
      kind: 'options',
      options: { office: true, port: 5000, file: 'a b.xlsx' },
    });
  });

  it.each([
    [['--ofice'], '--ofice'],
    [['--port'], '--port'],
    [['--port', 'x'], '"x"'],
    [['--port', '0'], '"0"'],
    [['--port', '70000'], '"70000"'],
    [['studio.xlsx'], 'studio.xlsx'],
  ])('%j is said to be wrong', (words, named) => {
    const read = readOptions(words);
    expect(read.kind).toBe('wrong');
    if (read.kind === 'wrong') {
      expect(read.message).toContain(named);
      expect(read.message).toContain('npm start --');
    }
  });

  it('begin with the sample studio on its day, else with the file on no day of its own', async () => {
    expect(await readFirstFile(null)).toMatchObject({ name: 'demo-studio.xlsx', sampleDay: '2026-11-16' });
    const folder = await mkdtemp(join(tmpdir(), 'preview-'));
    onTestFinished(() => rm(folder, { recursive: true }));
    const path = join(folder, 'my studio.xlsx');
    await writeFile(path, 'bytes');
    expect(await readFirstFile(path)).toMatchObject({ name: 'my studio.xlsx', sampleDay: null });
    expect(await readFirstFile(join(folder, 'none.xlsx'))).toBe(
      `There is no file ${join(folder, 'none.xlsx')}.`,
    );
    expect(await readFirstFile(folder)).toContain('is a folder');
  });
});
