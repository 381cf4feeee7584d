import { type ClientState, newClientState } from './client-state.ts';
import { Deliveries } from './deliveries.ts';
import { type EventEntry, eventsOf } from './events.ts';
import { executeRequest } from './execute-request.ts';
import { callFunction } from './function-calls.ts';
import {
  type ClientStatistics,
  DEFAULT_LIMITS,
  DEFAULT_REQUIREMENT_SETS,
  type OfficeHost,
  type OfficeHostOptions,
} from './host-options.ts';
import { beginSession, type HostSession, type SessionRules } from './host-session.ts';
import type { MemoryWorkbook } from './memory-workbook.ts';
import { personOf } from './person.ts';
import {
  ACTION,
  type Bridge,
  DELAY_FOR_CELL_EDIT,
  type RequestMessage,
  type ResponseBody,
} from './request.ts';
import { takeBack, type UndoStep } from './undo-steps.ts';
import { stateOf, type WorkbookState } from './workbook-state.ts';

export { createMemoryWorkbook } from './create-workbook.ts';
export type { ActionInfo } from './execute-request.ts';
export {
  DEFAULT_REQUIREMENT_SETS,
  type HostClient,
  type OfficeHost,
  type OfficeHostOptions,
} from './host-options.ts';
export type { Bridge } from './request.ts';

const STEPS_KEPT = 100;

const bytesOf = (value: unknown): number => new TextEncoder().encode(JSON.stringify(value)).length;

const refusal = (code: string, message: string, status: number): ResponseBody => ({
  Error: { Code: code, Message: message, Location: '', ActionIndex: -1, HttpStatusCode: status },
  Results: [],
  TraceIds: [],
});
const REQUEST_TOO_LARGE = refusal(
  'RequestPayloadSizeLimitExceeded',
  'The request payload size has exceeded the limit.',
  413,
);
const RESPONSE_TOO_LARGE = refusal(
  'ResponsePayloadSizeLimitExceeded',
  'The response payload size has exceeded the limit.',
  413,
);
const IN_CELL_EDIT = refusal(
  'InvalidOperationInCellEditMode',
  'Excel is in cell-editing mode. Please exit the edit mode by pressing ENTER or TAB or selecting another cell, and then try again.',
  400,
);

interface Connection {
  readonly state: ClientState;
  readonly bridge: Bridge;
  readonly statistics: ClientStatistics;
  editing: boolean;
  /** Requests that wait until the person has left the cell. */
  readonly delayed: RequestMessage[];
}

/** A request that only lets go of references: the library sends it after `Excel.run` and waits for nothing. */
const isCleanUp = ({ message }: RequestMessage): boolean =>
  message.body.Actions.some(({ Name }) => Name === '_RemoveReference') &&
  message.body.Actions.every(
    ({ Name, ActionType }) => ActionType === ACTION.instantiate || Name === '_RemoveReference',
  );

/**
 * Makes a program that answers the real Excel client library, over a workbook in memory.
 * It answers what the library's documentation says; where that is silent, the strictest reading (said in comments).
 * What it doesn't know it refuses with `NotImplemented`, naming object and member.
 */
export function createOfficeHost(workbook: MemoryWorkbook, options: OfficeHostOptions = {}): OfficeHost {
  const limits = { ...DEFAULT_LIMITS, ...options.limits };
  const sets = options.requirementSets ?? DEFAULT_REQUIREMENT_SETS;
  const deliveries = new Deliveries();
  const connections = new Map<string, Connection>();
  const steps: UndoStep[] = [];
  let failAction = options.failAction;
  let lastEvent = 0;
  const nextEventId = (): number => ++lastEvent;

  const post = (connection: Connection, message: object): void => {
    connection.bridge.onMessageFromHost?.(JSON.stringify(message));
  };
  const connectionOf = (id: string): Connection => {
    const found = connections.get(id);
    if (!found) throw new Error(`There is no client ${id}.`);
    return found;
  };
  const send = (client: ClientState, events: readonly EventEntry[]): void => {
    for (const entry of events) {
      deliveries.send(client.id, 'event', () => {
        const connection = connections.get(client.id);
        if (connection) post(connection, { type: 3, message: { entries: [entry] } });
      });
    }
  };
  const rules: SessionRules = {
    workbook,
    input: {
      dateSystem: workbook.dateSystem,
      year: options.year ?? new Date().getFullYear(),
      apostropheInTextCell: options.apostropheInTextCell ?? 'dropped',
    },
    evaluate: options.evaluate,
    display: options.displayText,
    maxCells: limits.cells,
    clients: () => [...connections.values()].map(({ state }) => state),
    send,
    nextEventId,
    openWorkbook: options.openWorkbook,
  };

  /** Tells all clients what one of them, or its person, did, and keeps it for undo. */
  function conclude(session: HostSession, before: WorkbookState | null, byAddIn: boolean): void {
    if (before) {
      steps.push({ client: session.client.id, before, after: stateOf(workbook) });
      if (steps.length > STEPS_KEPT) steps.shift();
    }
    for (const { state } of connections.values()) {
      if (!workbook.sheets.includes(state.activeSheet)) {
        const next = workbook.sheets.find(({ id }) => id === workbook.firstSheetId);
        if (next) state.activeSheet = next;
      }
      const own = state === session.client;
      const source = own ? 'Local' : 'Remote';
      const triggerSource = own && byAddIn ? 'ThisLocalAddin' : 'Unknown';
      for (const change of session.changes) {
        send(state, eventsOf(change, state, { source, triggerSource }, nextEventId));
      }
    }
  }

  function answer(connection: Connection, request: RequestMessage, size: number): ResponseBody {
    if (size > limits.requestBytes) return REQUEST_TOO_LARGE;
    const session = beginSession(rules, connection.state);
    let before: WorkbookState | null = null;
    const body = executeRequest(request.message.body, session, {
      sets,
      failAction: (action) => failAction?.(action),
      beforeFirstEdit: () => {
        before = stateOf(workbook);
      },
      mark: () => {
        const told = session.changes.length;
        return () => {
          session.changes.length = told;
        };
      },
    });
    conclude(session, before, true);
    return body;
  }

  function respond(connection: Connection, request: RequestMessage): void {
    const size = bytesOf(request.message.body);
    const { statistics } = connection;
    if (!isCleanUp(request)) statistics.requests += 1;
    statistics.requestBytes.push(size);
    statistics.actions.push(request.message.body.Actions.length);
    const given =
      connection.editing && !isCleanUp(request) ? IN_CELL_EDIT : answer(connection, request, size);
    const responseSize = bytesOf(given);
    statistics.responseBytes.push(responseSize);
    const body = responseSize > limits.responseBytes ? RESPONSE_TOO_LARGE : given;
    deliveries.send(connection.state.id, 'response', () => {
      post(connection, { id: request.id, type: 1, message: { statusCode: 200, headers: {}, body } });
    });
  }

  function receive(connection: Connection, request: RequestMessage): void {
    if (connection.editing && ((request.flags ?? 0) & DELAY_FOR_CELL_EDIT) !== 0)
      connection.delayed.push(request);
    else respond(connection, request);
  }

  function undo(connection: Connection): boolean {
    const index = steps.findLastIndex(({ client }) => client === connection.state.id);
    const step = steps[index];
    if (!step) return false;
    const later = steps.slice(index + 1);
    const session = beginSession(rules, connection.state);
    takeBack(session.editing, step, later);
    steps.splice(index, 1);
    conclude(session, null, false);
    return true;
  }

  return {
    workbook,
    requirementSets: sets,
    deliveries,
    setFailure: (wanted) => {
      failAction = wanted;
    },
    connect: (id = `client-${connections.size + 1}`) => {
      if (connections.has(id)) throw new Error(`There is a client ${id} already.`);
      const statistics: ClientStatistics = { requests: 0, requestBytes: [], responseBytes: [], actions: [] };
      const bridge: Bridge = {
        onMessageFromHost: null,
        sendMessageToHost: (text) => {
          const request = JSON.parse(text) as RequestMessage;
          deliveries.send(id, 'request', () => {
            receive(connection, request);
          });
        },
      };
      const state = newClientState(id, workbook);
      const connection: Connection = { state, bridge, statistics, editing: false, delayed: [] };
      connections.set(id, connection);
      return {
        id,
        bridge,
        statistics,
        disconnect: () => {
          connections.delete(id);
        },
      };
    },
    callFunction: (clientId, name, args, given = {}) => {
      const { state } = connectionOf(clientId);
      return callFunction(state, name, args, given, (message) => {
        send(state, [message]);
      });
    },
    person: (clientId) => {
      const connection = connectionOf(clientId);
      return personOf({
        act: (edit) => {
          const session = beginSession(rules, connection.state);
          const before = stateOf(workbook);
          const result = edit(session);
          conclude(session, before, false);
          return result;
        },
        look: (see) => see(beginSession(rules, connection.state)),
        undo: () => undo(connection),
        setEditing: (editing) => {
          connection.editing = editing;
          if (!editing) for (const request of connection.delayed.splice(0)) respond(connection, request);
        },
      });
    },
  };
}
