import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { createContext, Script } from 'node:vm';
import type { Bridge } from '../../src/office-host/office-host.ts';

/** The real Excel client library, as one add-in has it. */
export interface LoadedExcel {
  readonly Excel: typeof Excel;
  readonly OfficeExtension: typeof OfficeExtension;
  readonly CustomFunctions: {
    readonly associate: (id: string, run: (...args: never[]) => unknown) => void;
    readonly Error: typeof CustomFunctions.Error;
    readonly ErrorCode: typeof CustomFunctions.ErrorCode;
  };
}

/** A file of the client library: of the desktop program on Windows, or in a browser. */
export type LibraryFile = 'excel-win32-16.01.js' | 'excel-win32-16.01.debug.js' | 'excel-web-16.00.js';

const scripts = new Map<LibraryFile, Script>();

function scriptOf(file: LibraryFile): Script {
  const known = scripts.get(file);
  if (known) return known;
  const folder = dirname(createRequire(import.meta.url).resolve('@microsoft/office-js/package.json'));
  const script = new Script(readFileSync(join(folder, 'dist', file), 'utf8'), { filename: file });
  scripts.set(file, script);
  return script;
}

interface LibraryContext extends LoadedExcel {
  readonly OfficeExtension: typeof OfficeExtension & {
    readonly CommonUtility: { _doApiNotSupportedCheck: boolean };
  };
  readonly OSF: { _OfficeAppFactory: object };
}

/** What office.js makes for custom functions, and the library asks for. */
function associations(): object {
  const mappings: Record<string, unknown> = {};
  const told: (() => void)[] = [];
  const associate = (id: string, run: unknown): void => {
    mappings[id.toUpperCase()] = run;
    for (const each of told) each();
  };
  const onchange = (handler: () => void): void => {
    told.push(handler);
  };
  return { associate, _association: { mappings, onchange } };
}

/**
 * Loads the real client library over a host's bridge, in a context of its own; each call is another client.
 * The library's own check of requirement sets is switched on, so that members newer than `sets` are refused by it.
 */
export function loadExcel(
  bridge: Bridge,
  {
    sets,
    file = 'excel-win32-16.01.js',
  }: { readonly sets: Readonly<Record<string, string>>; readonly file?: LibraryFile },
): LoadedExcel {
  const nothing = (): void => undefined;
  const context = createContext({
    CustomFunctions: associations(),
    // Of this realm, so that its errors and arrays are those of the tests.
    Promise,
    Error,
    JSON,
    URL,
    performance,
    console,
    setTimeout,
    clearTimeout,
    setInterval,
    clearInterval,
    navigator: { userAgent: 'Node' },
    location: {
      protocol: 'https:',
      search: '',
      hash: '',
      href: 'https://localhost/',
      origin: 'https://localhost',
    },
    name: '',
    addEventListener: nothing,
    external: {},
    document: {
      getElementById: () => null,
      createElement: () => ({}),
      getElementsByTagName: () => [],
      addEventListener: nothing,
    },
    localStorage: undefined,
    sessionStorage: undefined,
    _richApiNativeBridge: bridge,
  });
  new Script('var window = this, self = this, top = this, parent = this;').runInContext(context);
  scriptOf(file).runInContext(context);
  const library = context as unknown as LibraryContext;
  const isSetSupported = (set: string, version: string | number = '1.1'): boolean => {
    const [major = 0, minor = 0] = (sets[set] ?? '0.0').split('.').map(Number);
    const [wantedMajor = 0, wantedMinor = 0] = String(version).split('.').map(Number);
    return major > wantedMajor || (major === wantedMajor && minor >= wantedMinor);
  };
  library.OfficeExtension.CommonUtility['_doApiNotSupportedCheck'] = true;
  // What office.js would have made: the library asks it which sets there are.
  library.OSF['_OfficeAppFactory'] = {
    getContext: () => ({ requirements: { isSetSupported } }),
    getHostInfo: () => ({ hostType: 'excel', hostPlatform: 'win32' }),
  };
  return library;
}
