import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';

/** Where browsers of the kind stand that packages put there. */
const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** What keeps a browser from looking for other hosts than those of the tests. */
export const QUIET_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/**
 * The Chromium that the tests run in: the one that CHROMIUM names, one that is installed, or one that is installed now.
 * @throws with one line that says what is missing where none can be had
 */
export function findChromium(): string {
  const named = process.env['CHROMIUM'];
  if (named !== undefined && named !== '') {
    if (existsSync(named)) return named;
    throw new Error(`CHROMIUM names ${named}, and there is no such file.`);
  }
  const found = installed();
  if (found !== undefined) return found;
  const attempt = isDebian() && process.getuid?.() === 0 ? installByApt() : installByTool();
  const now = installed();
  if (now !== undefined) return now;
  throw new Error(
    `The browser tests need Chromium and none could be installed (${attempt}): install it, or set CHROMIUM to its path.`,
  );
}

function installed(): string | undefined {
  return [...USUAL_PLACES, chromium.executablePath()].find((place) => existsSync(place));
}

function isDebian(): boolean {
  return existsSync('/etc/debian_version');
}

function installByApt(): string {
  return firstFailure([
    ['apt-get', ['update', '-qq']],
    ['apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium']],
  ]);
}

function installByTool(): string {
  return firstFailure([
    [process.execPath, ['node_modules/playwright-core/cli.js', 'install', 'chromium', '--with-deps']],
  ]);
}

/** Runs commands until one fails, and says which did. */
function firstFailure(commands: readonly (readonly [string, readonly string[]])[]): string {
  for (const [command, words] of commands) {
    const line = [command, ...words].join(' ');
    process.stderr.write(`Chromium is not here; installing it: ${line}\n`);
    try {
      execFileSync(command, words, {
        stdio: ['ignore', 'ignore', 'inherit'],
        env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      });
    } catch (error) {
      return `${line}: ${error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error)}`;
    }
  }
  return 'installed, but not found in any of the usual places';
}
