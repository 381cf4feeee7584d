import { DocumentCopies } from './document-copies.ts';
import type { Bridge } from './request.ts';
import type { RequirementSets } from './requirement-sets.ts';

/** The program's colours, as it tells add-ins; each #RRGGBB. */
export interface OfficeThemeColours {
  readonly bodyBackgroundColor: string;
  readonly bodyForegroundColor: string;
  readonly controlBackgroundColor: string;
  readonly controlForegroundColor: string;
}

export const LIGHT_THEME: OfficeThemeColours = {
  bodyBackgroundColor: '#ffffff',
  bodyForegroundColor: '#242424',
  controlBackgroundColor: '#ffffff',
  controlForegroundColor: '#242424',
};
export const DARK_THEME: OfficeThemeColours = {
  bodyBackgroundColor: '#292929',
  bodyForegroundColor: '#ffffff',
  controlBackgroundColor: '#1f1f1f',
  controlForegroundColor: '#ffffff',
};

export interface ContainerOptions {
  readonly bridge: Bridge;
  readonly requirementSets: RequirementSets;
  readonly theme?: OfficeThemeColours;
  /** The language of the program, such as en-US; and of numbers and dates, where another. */
  readonly locale?: string;
  readonly dataLocale?: string;
  readonly documentName?: string;
  readonly readOnly?: boolean;
  /** Settings that the document holds for the add-in (Office.context.document.settings), as JSON texts by key. */
  readonly settings?: Readonly<Record<string, string>>;
  /** The document as a file, for an add-in that asks for it; null where it can't be made. Absent: none is handed out. */
  readonly documentFile?: () => Uint8Array | null;
}

/** A program's window, as far as office.js asks for it. */
export interface OfficeContainer {
  /**
   * Puts the container into a window, its own or that of a frame on the same origin, before office.js loads there:
   * `Office.onReady` then resolves with the host Excel. The frame's host may live in the page around it.
   */
  install(window: object): void;
  /** Changes the colours. office.js asks again after at most five seconds; the event of a change isn't told. */
  setTheme(theme: OfficeThemeColours): void;
  /** The settings as they now stand. */
  readonly settings: ReadonlyMap<string, string>;
  /** What office.js asked for that is not modelled, by its number: refused, and kept here to be seen. */
  readonly refused: readonly number[];
}

/** The numbers that the calls of the older interface have. */
const SAVE_SETTINGS = 76;
const LOAD_SETTINGS = 75;
const GET_DOCUMENT_COPY = 77;
const GET_DOCUMENT_COPY_CHUNK = 80;
const RELEASE_DOCUMENT_COPY = 81;
const DONE = 0;
/** The library's number for what the program can't do (`OSF.DDA.ErrorCodeManager`: not supported). */
const NOT_SUPPORTED = 5015;

const EXCEL = 1;
/** The add-in has a shared runtime (1) in which custom functions run as well (2). */
const SHARED_RUNTIME_WITH_FUNCTIONS = 3;

/** A row of values as the desktop program hands it over. */
interface SafeArray {
  toArray(): unknown[];
  dimensions(): number;
}

function safeArray(values: readonly unknown[]): SafeArray {
  return {
    toArray: () => values.map((value) => (Array.isArray(value) ? safeArray(value) : value)),
    dimensions: () => 1,
  };
}

const asNumber = (colour: string): number => Number.parseInt(colour.replace('#', ''), 16);

/**
 * Makes what the real, unmodified office.js looks for in a window of the desktop program on Windows. It is not in any
 * public typing, so the version of the library is pinned.
 */
export function createContainer(options: ContainerOptions): OfficeContainer {
  const locale = options.locale ?? 'en-US';
  const settings = new Map(Object.entries(options.settings ?? {}));
  const refused: number[] = [];
  let theme = options.theme ?? LIGHT_THEME;

  const context = {
    GetAppType: () => EXCEL,
    GetSolutionRef: () => 'add-in',
    GetAppVersionMajor: () => 16,
    GetAppVersionMinor: () => 1,
    GetAppUILocale: () => locale,
    GetAppDataLocale: () => options.dataLocale ?? locale,
    GetDocUrl: () => options.documentName ?? 'Workbook.xlsx',
    GetAppCapabilities: () => (options.readOnly ? 1 : 0),
    GetActivationMode: () => 2,
    GetControlIntegrationLevel: () => 1,
    GetSolutionToken: () => '',
    GetCorrelationId: () => 'correlation',
    GetInstanceId: () => 'instance',
    GetTouchEnabled: () => false,
    GetCommerceAllowed: () => false,
    GetSupportedMatrix: () => JSON.stringify(options.requirementSets),
    GetHostFullVersion: () => '16.0.17000.0',
    GetHostCustomMessage: () => '',
    GetInitialDisplayMode: () => 0,
    GetOfficeThemeInfo: () =>
      JSON.stringify(
        Object.fromEntries(Object.entries(theme).map(([name, colour]) => [name, asNumber(colour)])),
      ),
    GetSettings: () => ({
      Read: (keys: string[], values: string[]) => {
        for (const [key, value] of settings) {
          keys.push(key);
          values.push(value);
        }
      },
      Write: (keys: readonly string[], values: readonly string[]) => {
        settings.clear();
        keys.forEach((key, index) => {
          settings.set(key, values[index] ?? '');
        });
      },
    }),
  };

  const { documentFile } = options;
  const copies = documentFile === undefined ? null : new DocumentCopies(documentFile);
  /** The answer to a call of the older interface: the values that the library unpacks; null for an unknown call. */
  const answer = (id: number, given: readonly unknown[]): readonly unknown[] | null => {
    switch (id) {
      case SAVE_SETTINGS:
      case LOAD_SETTINGS:
        return [DONE];
      case GET_DOCUMENT_COPY:
        return copies?.open(given[0]) ?? null;
      case GET_DOCUMENT_COPY_CHUNK:
        return copies?.chunk(given[0], given[1], given[2]) ?? null;
      case RELEASE_DOCUMENT_COPY:
        return copies?.release(given[0]) ?? null;
      default:
        return null;
    }
  };

  type Callback = (result: unknown) => void;
  const external = {
    GetHostInfo: () =>
      `Excel$Win32$16.01$${locale}$telemetry$$disableLogging$${SHARED_RUNTIME_WITH_FUNCTIONS}`,
    GetContext: () => context,
    GetLoggingAllowed: () => false,
    Execute: (id: number, given: readonly unknown[], callback: Callback) => {
      const known = answer(id, given);
      if (known === null) refused.push(id);
      callback(safeArray(known ?? [NOT_SUPPORTED]));
    },
    // Events of the workbook come over the bridge; those of the older interface are taken note of and never told.
    RegisterEvent: (_id: number, _target: string, _handler: unknown, callback: Callback) => {
      callback(DONE);
    },
    UnregisterEvent: (_id: number, _target: string, callback: Callback) => {
      callback(DONE);
    },
  };

  return {
    settings,
    refused,
    setTheme: (wanted) => {
      theme = wanted;
    },
    install: (window) => {
      Object.defineProperty(window, 'external', { configurable: true, value: external });
      Object.defineProperty(window, '_richApiNativeBridge', { configurable: true, value: options.bridge });
    },
  };
}
