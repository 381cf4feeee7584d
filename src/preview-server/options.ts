import { parseArgs } from 'node:util';

export const USAGE = 'npm start -- [--office] [--port N] [--file PATH]';
const FIRST_PORT = 4173;
const LAST_PORT = 65_535;

export interface StartOptions {
  /** Whether the pane goes through the spreadsheet's own script. */
  readonly office: boolean;
  /** The port to begin looking for a free one. */
  readonly port: number;
  /** The workbook to begin with; null is the sample studio. */
  readonly file: string | null;
}

export type OptionsRead =
  | { readonly kind: 'options'; readonly options: StartOptions }
  | { readonly kind: 'wrong'; readonly message: string };

/** Reads the words of a call. */
export function readOptions(words: readonly string[]): OptionsRead {
  let values: { office?: boolean; port?: string; file?: string };
  try {
    ({ values } = parseArgs({
      args: [...words],
      options: { office: { type: 'boolean' }, port: { type: 'string' }, file: { type: 'string' } },
    }));
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    return wrong(error.message.split('\n')[0] ?? '');
  }
  const { office = false, port = String(FIRST_PORT), file = null } = values;
  if (!/^\d{1,5}$/.test(port) || Number(port) < 1 || Number(port) > LAST_PORT) {
    return wrong(`--port is followed by a number from 1 to ${LAST_PORT}, not by "${port}".`);
  }
  return { kind: 'options', options: { office, port: Number(port), file } };
}

function wrong(message: string): OptionsRead {
  return { kind: 'wrong', message: `${message}\nIt is called so: ${USAGE}` };
}
