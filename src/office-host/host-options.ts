import type { InputRules } from './cell-input.ts';
import type { DisplayText } from './cell-text.ts';
import type { Deliveries } from './deliveries.ts';
import type { ActionInfo, Failure } from './execute-request.ts';
import type { FunctionCall, FunctionCallOptions } from './function-calls.ts';
import type { Evaluate } from './host-session.ts';
import type { MemoryWorkbook } from './memory-workbook.ts';
import type { Person } from './person.ts';
import type { Bridge, Json } from './request.ts';
import type { RequirementSets } from './requirement-sets.ts';

/** Sizes that the program refuses to go beyond, in bytes of JSON; and the most cells that one read may ask for. */
export interface HostLimits {
  readonly requestBytes: number;
  readonly responseBytes: number;
  readonly cells: number;
}

export interface OfficeHostOptions {
  readonly limits?: Partial<HostLimits>;
  /** The sets that the host declares. Members that are newer are refused. */
  readonly requirementSets?: RequirementSets;
  /** Works formulas out when their cells are read. Without one a formula has the value stored with it. */
  readonly evaluate?: Evaluate;
  /** Shows numbers by their formats, for Range.text. Without one a few formats are known. */
  readonly displayText?: DisplayText;
  /** Makes an action fail with a given error; actions before it stay done. */
  readonly failAction?: (action: ActionInfo) => Failure | undefined;
  /** Opens another workbook, given as a file in base64. Without one, making workbooks is refused. */
  readonly openWorkbook?: (base64: string) => void;
  /** The year of days that are typed without one. Default: this year. */
  readonly year?: number;
  readonly apostropheInTextCell?: InputRules['apostropheInTextCell'];
}

/** What a client has cost so far. */
export interface ClientStatistics {
  /** Round trips; the library's own releasing of references, which nobody waits for, is not among them. */
  requests: number;
  readonly requestBytes: number[];
  readonly responseBytes: number[];
  /** Actions of each request. */
  readonly actions: number[];
}

/** One add-in's connection to the host. */
export interface HostClient {
  readonly id: string;
  /** To be put under the global name `_richApiNativeBridge` before the client library loads. */
  readonly bridge: Bridge;
  readonly statistics: ClientStatistics;
  /** Ends the connection: the add-in has been closed. Its events are sent no more. */
  disconnect(): void;
}

/** A program with one workbook, which several clients may have open at once. */
export interface OfficeHost {
  readonly workbook: MemoryWorkbook;
  readonly requirementSets: RequirementSets;
  readonly deliveries: Deliveries;
  /** Connects another client, which has the workbook open beside those already there. */
  connect(id?: string): HostClient;
  /** The person before whom a client's add-in runs. Throws where there is no such client. */
  person(clientId: string): Person;
  /**
   * Calls a custom function of a client's add-in by its id, as a cell does that holds it. Arguments go to it as they
   * are, a range as an array of rows.
   */
  callFunction(
    clientId: string,
    name: string,
    args: readonly Json[],
    options?: FunctionCallOptions,
  ): FunctionCall;
  /** Makes actions fail from now on; undefined: no longer. */
  setFailure(failAction: OfficeHostOptions['failAction']): void;
}

export const DEFAULT_LIMITS: HostLimits = {
  requestBytes: 5_000_000,
  responseBytes: 5_000_000,
  cells: 5_000_000,
};
/** What this host answers for, unless told otherwise. */
export const DEFAULT_REQUIREMENT_SETS: RequirementSets = {
  ExcelApi: '1.17',
  CompressedFile: '1.1',
  SharedRuntime: '1.1',
  CustomFunctionsRuntime: '1.4',
  DelayForCellEdit: '1.1',
};
