import { buildPages, needsBuilding, PREVIEW_FOLDERS } from './build-pages.ts';
import { readFirstFile } from './first-file.ts';
import { readOptions } from './options.ts';
import { servePreview } from './preview-server.ts';

/** The preview: builds what it needs, serves one page on this machine, and stays until it is ended. */
async function start(): Promise<void> {
  const read = readOptions(process.argv.slice(2));
  if (read.kind === 'wrong') return end(read.message);
  const { office, port, file } = read.options;
  const first = await readFirstFile(file);
  if (typeof first === 'string') return end(first);
  if (await needsBuilding()) {
    process.stdout.write('Building the preview and the pane …\n');
    await buildPages();
  }
  const { address } = await servePreview({ folders: PREVIEW_FOLDERS, first, office }, port);
  process.stdout.write(`The preview is at ${address} (Ctrl+C ends it).\n`);
}

function end(message: string): void {
  process.stderr.write(`${message}\n`);
  process.exitCode = 2;
}

await start();
