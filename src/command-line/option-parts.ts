import type { ParseArgsConfig } from 'node:util';

/** The options of a verb, as Node takes words apart. */
export type Options = NonNullable<ParseArgsConfig['options']>;

/** Options of every verb. */
export const COMMON: Options = {
  on: { type: 'string' },
  json: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
};

/** Options of every verb that posts and saves. */
export const WRITING: Options = { ...COMMON, out: { type: 'string' }, by: { type: 'string' } };
