import { readFile } from 'node:fs/promises';
import { extname, join, resolve, sep } from 'node:path';

/** An answer to a request for a path. */
export interface Served {
  readonly type: string;
  readonly body: string | Uint8Array;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.wasm': 'application/wasm',
  '.woff2': 'font/woff2',
};

/** A file of a folder by the path of an address below it; null where there is none, or it would lead out. */
export async function fileBelow(folder: string, path: string): Promise<Served | null> {
  const file = resolve(join(folder, path));
  if (!file.startsWith(folder + sep)) return null;
  try {
    const body = await readFile(file);
    return { type: TYPES[extname(file).toLowerCase()] ?? 'application/octet-stream', body };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : '';
    if (code === 'ENOENT' || code === 'EISDIR' || code === 'ENOTDIR') return null;
    throw error;
  }
}

const OFFICE_SCRIPT = /<script[^>]*\ssrc="https:\/\/appsforoffice\.microsoft\.com\/[^"]*"[^>]*><\/script>/;
/** Asks the page around the frame to be the program that the script looks for, before the script runs. */
export const CONTAINER_SCRIPT = 'window.parent.jarleafContainer(window);\n';

/**
 * The pane's page for the preview: without the script that Microsoft serves, or with the copy of it that stands on
 * this machine. Everything else is as it was built.
 */
export function panePage(html: string, office: boolean): string {
  if (!OFFICE_SCRIPT.test(html))
    throw new Error('The pane’s page has no tag of the spreadsheet’s script to replace.');
  const local = '<script src="../pane-container.js"></script><script src="../office-js/office.js"></script>';
  return html.replace(OFFICE_SCRIPT, office ? local : '');
}
