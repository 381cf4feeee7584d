/**
 * What passes over the bridge between the Excel client library and its host. The numbers are the library's own;
 * they are in no public typing, so the version of the library is pinned.
 */

/** A value as it passes over the bridge. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

export const ACTION = {
  instantiate: 1,
  query: 2,
  method: 3,
  setProperty: 4,
  trace: 5,
  queryAsJson: 7,
  update: 9,
} as const;

export const PATH = {
  global: 1,
  new: 2,
  method: 3,
  property: 4,
  indexer: 5,
  referenceId: 6,
  null: 7,
} as const;

export interface ArgumentInfo {
  readonly Arguments?: readonly Json[] | null;
  /** For arguments that are objects: the path of each, null or 0 where the argument is a plain value. */
  readonly ReferencedObjectPathIds?: readonly (number | null)[] | null;
}

export interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name?: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: {
    readonly Select?: readonly string[];
    readonly Expand?: readonly string[];
    readonly Top?: number;
    readonly Skip?: number;
  };
}

export interface ObjectPath {
  readonly Id: number;
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}

export interface RequestBody {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
}

export interface RequestMessage {
  readonly id: number;
  readonly type: number;
  readonly flags?: number;
  readonly message: {
    readonly url: string;
    readonly headers?: Readonly<Record<string, string>> | null;
    readonly body: RequestBody;
  };
}

/** The flag of a request that asks to wait until the person has left the cell. */
export const DELAY_FOR_CELL_EDIT = 64;

export interface ResponseBody {
  readonly Error?: {
    readonly Code: string;
    readonly Message: string;
    readonly Location: string;
    /** The action that failed, counted from 0; -1 where the request as a whole was refused. */
    readonly ActionIndex: number;
    readonly HttpStatusCode: number;
  };
  readonly Results: readonly { readonly ActionId: number; readonly Value: Json }[];
  readonly TraceIds: readonly number[];
}

/** The object that the client library finds under the global name `_richApiNativeBridge`. */
export interface Bridge {
  sendMessageToHost: (text: string) => void;
  /** Set by the client library when it takes hold of the bridge. */
  onMessageFromHost: ((text: string) => void) | null;
}
