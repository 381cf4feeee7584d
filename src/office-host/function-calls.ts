import type { ClientState } from './client-state.ts';
import { invalidArgument } from './host-error.ts';
import type { Json } from './request.ts';

/**
 * Calling an add-in's custom functions, as a cell does that holds one. The wire is the client library's own: a call
 * is a message of category 1, its result comes back as a request to a service of its own.
 */

const CATEGORY = 1;
const INVOKE = 1000;
const CANCEL = 1001;
const CANCELABLE = 1;
const STREAMING = 2;

/** What a cell with the function shows: a value, or an error with what was said about it. */
export type FunctionOutcome =
  | { readonly kind: 'value'; readonly value: Json }
  | { readonly kind: 'error'; readonly error: string; readonly message: string };

export interface FunctionCallOptions {
  /** The function gives one result after another. */
  readonly streaming?: boolean;
  /** The function wants to know when it is no longer needed. A streaming one always does. */
  readonly cancelable?: boolean;
  /** The cell in which it stands, with its sheet; told to functions that ask for it. */
  readonly address?: string;
  /** Called with each outcome, the first included. */
  readonly onOutcome?: (outcome: FunctionOutcome) => void;
}

export interface FunctionCall {
  /** The first outcome. */
  readonly first: Promise<FunctionOutcome>;
  /** All outcomes so far, in the order in which they came. */
  readonly outcomes: readonly FunctionOutcome[];
  /** The cell is deleted, or its formula changed: no more outcomes are taken. */
  cancel(): void;
}

/** The errors by the library's numbers. A function that throws shows #VALUE!; one that isn't there #NAME?. */
const ERRORS: Readonly<Record<number, string>> = {
  1: '#N/A',
  5: '#DIV/0!',
  6: '#NUM!',
  7: '#VALUE!',
  8: '#NULL!',
  9: '#NAME?',
  10: '#NAME?',
};

/** An event of the library's message type 3, but of another category than the workbook's events. */
type FunctionMessage = readonly [number, number, string, string, number];

/** Calls a function of a client's add-in by its id. Values go to it as they are: a range is an array of rows. */
export function callFunction(
  client: ClientState,
  name: string,
  args: readonly Json[],
  options: FunctionCallOptions,
  send: (message: FunctionMessage) => void,
): FunctionCall {
  const id = client.nextReference++;
  const outcomes: FunctionOutcome[] = [];
  const streaming = options.streaming ?? false;
  const flags = (streaming ? STREAMING : 0) | (streaming || options.cancelable ? CANCELABLE : 0);
  const first = new Promise<FunctionOutcome>((resolve) => {
    client.functionCalls.set(id, (outcome) => {
      outcomes.push(outcome);
      if (!streaming) client.functionCalls.delete(id);
      options.onOutcome?.(outcome);
      resolve(outcome);
    });
  });
  const invocation = JSON.stringify([id, name, args, options.address ?? null, flags]);
  send([CATEGORY, INVOKE, '', invocation, id]);
  return {
    first,
    outcomes,
    cancel: () => {
      client.functionCalls.delete(id);
      send([CATEGORY, CANCEL, '', JSON.stringify({ invocationId: id }), id]);
    },
  };
}

function outcomeOf(failed: boolean, value: Json, code: Json | undefined): FunctionOutcome {
  if (failed) {
    const error = ERRORS[Number(code)] ?? '#VALUE!';
    return { kind: 'error', error, message: typeof value === 'string' ? value : '' };
  }
  // An error that a function gives back instead of throwing it comes as an object.
  if (typeof value === 'object' && value !== null && 'valueType' in value) {
    const { valueType, code: error, message } = value;
    if (valueType === 'CustomFunctionError' && typeof error === 'string') {
      return { kind: 'error', error, message: typeof message === 'string' ? message : '' };
    }
  }
  return { kind: 'value', value };
}

/** Takes the results that a client's add-in sends; those of calls that were given up are dropped, as documented. */
export function takeResults(client: ClientState, results: Json): void {
  if (!Array.isArray(results)) throw invalidArgument();
  for (const each of results as readonly Json[]) {
    const [id, failed, value, code] = Array.isArray(each)
      ? [each[0], each[1] !== true, each[2] ?? null, each[3]]
      : resultFields(each);
    client.functionCalls.get(Number(id))?.(outcomeOf(failed, value, code));
  }
}

function resultFields(result: Json): readonly [Json | undefined, boolean, Json, Json | undefined] {
  if (typeof result !== 'object' || result === null || Array.isArray(result)) throw invalidArgument();
  const { id, failed, value, errorCode } = result as { readonly [field: string]: Json };
  return [id, failed === true, value ?? null, errorCode];
}
