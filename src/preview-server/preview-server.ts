import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { FirstFile } from './first-file.ts';
import { CONTAINER_SCRIPT, fileBelow, panePage, type Served } from './served-pages.ts';

export interface PreviewFolders {
  /** The built page around the pane. */
  readonly page: string;
  /** The built pane. */
  readonly pane: string;
  /** The spreadsheet's own script and what it loads. */
  readonly officeScript: string;
}

export interface PreviewSettings {
  readonly folders: PreviewFolders;
  readonly first: FirstFile;
  readonly office: boolean;
}

const ADDRESS = '127.0.0.1';
/** How many ports are tried before giving up. */
const PORTS_TRIED = 50;

/** Nothing comes from another machine, and no other page may hold this one in a frame. */
const PAGE_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "connect-src 'self'",
  "frame-src 'self'",
  "frame-ancestors 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');
/** What the pane's page says of itself holds; this only adds who may show it. */
const PANE_POLICY = "frame-ancestors 'self'";

/** The address of a preview that is being served, and a way to end it. */
export interface RunningPreview {
  readonly address: string;
  close(): Promise<void>;
}

/** Serves the preview on this machine only, on the first free port from the one given. */
export async function servePreview(settings: PreviewSettings, port: number): Promise<RunningPreview> {
  const server = createServer((request, response) => {
    answer(settings, request, response).catch((error: unknown) => {
      // One page that can't be given is said here; the preview stays up for the others.
      process.stderr.write(
        `${request.url ?? ''}: ${error instanceof Error ? error.message : String(error)}\n`,
      );
      response.destroy();
    });
  });
  const used = await listen(server, port, port + PORTS_TRIED);
  return {
    address: `http://${ADDRESS}:${used}/`,
    close: () =>
      new Promise((resolve, reject) => {
        server.close((error) => (error ? reject(error) : resolve()));
        server.closeAllConnections();
      }),
  };
}

async function listen(server: Server, port: number, limit: number): Promise<number> {
  const isFree = await new Promise<boolean>((resolve, reject) => {
    const onError = (error: NodeJS.ErrnoException): void => {
      if (error.code === 'EADDRINUSE') resolve(false);
      else reject(error);
    };
    server.once('error', onError);
    server.listen(port, ADDRESS, () => {
      server.off('error', onError);
      resolve(true);
    });
  });
  if (isFree) return port;
  if (port + 1 >= limit || port >= 65_535)
    throw new Error(`No port up to ${port} is free. Give another one with --port.`);
  return listen(server, port + 1, limit);
}

async function answer(
  settings: PreviewSettings,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  response.setHeader('X-Content-Type-Options', 'nosniff');
  response.setHeader('Referrer-Policy', 'no-referrer');
  response.setHeader('Cache-Control', 'no-store');
  // A page of another name that was made to lead to this machine may not read the workbook.
  if (!/^(?:127\.0\.0\.1|localhost)(?::\d+)?$/.test(request.headers.host ?? ''))
    return refuse(response, 403, 'Forbidden');
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return refuse(response, 405, 'Method not allowed');
  const path = pathOf(request.url ?? '/');
  const served = path === null ? null : await servedAt(settings, path);
  if (!served) return refuse(response, 404, 'Not found');
  response.setHeader('Content-Security-Policy', path?.startsWith('/pane/') ? PANE_POLICY : PAGE_POLICY);
  response.writeHead(200, { 'Content-Type': served.type, 'Content-Length': Buffer.byteLength(served.body) });
  response.end(request.method === 'HEAD' ? undefined : served.body);
}

function refuse(response: ServerResponse, status: number, text: string): void {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' });
  response.end(`${text}\n`);
}

/** The decoded path of an address; null where it is none, or holds what no file is called. */
function pathOf(url: string): string | null {
  try {
    const path = decodeURIComponent(url.split(/[?#]/)[0] ?? '');
    return path.includes('\0') || path.includes('\\') ? null : path;
  } catch (error) {
    if (error instanceof URIError) return null;
    throw error;
  }
}

async function servedAt({ folders, first, office }: PreviewSettings, path: string): Promise<Served | null> {
  switch (path) {
    case '/':
      return fileBelow(folders.page, 'index.html');
    case '/start.json': {
      const start = { fileName: first.name, sampleDay: first.sampleDay, office };
      return { type: 'application/json; charset=utf-8', body: JSON.stringify(start) };
    }
    case '/workbook':
      return { type: 'application/octet-stream', body: first.bytes };
    case '/pane/index.html': {
      const built = await fileBelow(folders.pane, 'index.html');
      return (
        built && { ...built, body: panePage(new TextDecoder().decode(built.body as Uint8Array), office) }
      );
    }
    case '/pane-container.js':
      return office ? { type: 'text/javascript; charset=utf-8', body: CONTAINER_SCRIPT } : null;
    default:
      break;
  }
  if (path.startsWith('/pane/')) return fileBelow(folders.pane, path.slice('/pane/'.length));
  if (path.startsWith('/office-js/')) {
    return office ? fileBelow(folders.officeScript, path.slice('/office-js/'.length)) : null;
  }
  return fileBelow(folders.page, path.slice(1));
}
