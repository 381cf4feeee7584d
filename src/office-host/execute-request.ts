import type { ClientState, RangeSubject } from './client-state.ts';
import { accessDenied, HostError, itemNotFound, notImplemented } from './host-error.ts';
import { kindOf, LiveObjects } from './live-objects.ts';
import type { Table } from './memory-workbook.ts';
import { type ChartSubject, type KindName, LiveObject, type RequestSession } from './objects/object-kind.ts';
import { ACTION, type Action, type Json, PATH, type RequestBody, type ResponseBody } from './request.ts';
import { type RequirementSets, requireMember } from './requirement-sets.ts';
import { restoreState, stateOf } from './workbook-state.ts';

/** An action of a request, for those who want to make it fail. */
export interface ActionInfo {
  readonly client: string;
  /** Counted from 0 within the request. */
  readonly index: number;
  /** load, set, call, or the object as such. */
  readonly does: 'instantiate' | 'load' | 'set' | 'call' | 'other';
  /** The member that is set or called, as it passes over the bridge: Values, Insert. */
  readonly name: string;
  /** Whether the action changes the document. */
  readonly edits: boolean;
}

/** An error to be given instead of carrying out an action. */
export interface Failure {
  readonly code: string;
  readonly message?: string;
}

export interface ExecutionRules {
  readonly sets: RequirementSets;
  readonly failAction: (action: ActionInfo) => Failure | undefined;
  /** Called before the first action of the request that changes the document. */
  readonly beforeFirstEdit: () => void;
  /** Takes back what the session told since the mark, for an action that failed. */
  readonly mark: () => () => void;
}

const DOES: Readonly<Record<number, ActionInfo['does']>> = {
  [ACTION.instantiate]: 'instantiate',
  [ACTION.query]: 'load',
  [ACTION.queryAsJson]: 'load',
  [ACTION.method]: 'call',
  [ACTION.setProperty]: 'set',
};

function keep(client: ClientState, object: LiveObject): void {
  if (object.kind !== 'Range') throw notImplemented(`Holding on to ${object.kind}`);
  if (object.referenceId !== null) return;
  object.referenceId = `range-${client.nextReference++}`;
  client.references.set(object.referenceId, object.subject as RangeSubject);
}

function editsDocument(action: Action, objects: LiveObjects): boolean {
  if (action.ActionType === ACTION.trace) return false;
  if (objects.edits(action.ObjectPathId)) return true;
  if (action.ActionType === ACTION.setProperty) return true;
  if (action.ActionType !== ACTION.method) return false;
  const object = objects.at(action.ObjectPathId);
  return object !== null && kindOf(object).edits?.[action.Name ?? ''] !== undefined;
}

/**
 * Whether an action changes nothing before it has found that all of it can be done: what is set on cells does so.
 * For others the state before is kept, which takes a while in a large workbook.
 */
function checksFirst(action: Action, objects: LiveObjects): boolean {
  if (action.ActionType !== ACTION.setProperty || objects.edits(action.ObjectPathId)) return false;
  const kind = objects.at(action.ObjectPathId)?.kind;
  return kind === 'Range' || kind === 'RangeFormat' || kind === 'RangeFill' || kind === 'RangeFont';
}

/** The kinds of objects that are locked on a protected sheet. */
const ON_SHEET: ReadonlySet<string> = new Set<KindName>([
  'Range',
  'RangeFormat',
  'DataValidation',
  'Table',
  'Chart',
  'ChartTitle',
  'ChartSeriesCollection',
  'ChartSeries',
  'ChartLineFormat',
]);

/** Cells of a protected sheet are locked here, all of them: unlocking single ones isn't modelled. */
function isOnProtectedSheet(object: LiveObject | null): boolean {
  if (object === null || !ON_SHEET.has(object.kind)) return false;
  return (object.subject as RangeSubject | Table | ChartSubject).sheet.isProtected;
}

function carryOut(
  action: Action,
  objects: LiveObjects,
  session: RequestSession,
  sets: RequirementSets,
): Json {
  const object = objects.at(action.ObjectPathId);
  const name = action.Name ?? '';
  switch (action.ActionType) {
    case ACTION.instantiate:
      return objects.identity(object);
    case ACTION.query:
    case ACTION.queryAsJson: {
      const { Select = [], Expand = [], Top, Skip } = action.QueryInfo ?? {};
      const page = {
        ...(Top === undefined ? {} : { top: Top }),
        ...(Skip === undefined ? {} : { skip: Skip }),
      };
      return objects.query(object, [...Select, ...Expand], page);
    }
    case ACTION.method: {
      // A method of the null object does nothing: Microsoft's own samples delete a sheet in this way, there or not.
      if (object === null) return null;
      if (name === '_KeepReference') {
        keep(session.client, object);
        return null;
      }
      const answer = objects.call(object, name, objects.argumentsOf(action.ArgumentInfo));
      return answer instanceof LiveObject ? objects.identity(answer) : answer;
    }
    case ACTION.setProperty: {
      // Not documented for the null object, so the stricter.
      if (object === null) throw itemNotFound();
      const set = kindOf(object).setters?.[name];
      if (!set) throw notImplemented(`Setting ${object.kind}.${name}`);
      requireMember(sets, `${object.kind}.${name}`);
      const [value = null] = objects.argumentsOf(action.ArgumentInfo);
      if (value instanceof LiveObject) throw notImplemented(`Setting ${object.kind}.${name} to an object`);
      set(object.subject, value, session);
      return null;
    }
    default:
      throw notImplemented(`Action type ${action.ActionType}`);
  }
}

/**
 * Answers one batch. The actions are carried out in turn; the first that fails ends it, those before it stay done
 * ("Troubleshoot error messages", "Excel.run": there is no transaction), and the one that failed has done nothing.
 */
export function executeRequest(
  body: RequestBody,
  session: RequestSession,
  rules: ExecutionRules,
): ResponseBody {
  const { workbook } = session.editing;
  const objects = new LiveObjects(body, session, rules.sets);
  const results: ResponseBody['Results'][number][] = [];
  const traces: number[] = [];
  let edited = false;
  for (const [index, action] of body.Actions.entries()) {
    let undo: (() => void) | undefined;
    try {
      if (action.ActionType === ACTION.trace) {
        // The library takes a handler for registered when its trace has been answered.
        traces.push(action.Id);
        results.push({ ActionId: action.Id, Value: null });
        continue;
      }
      const edits = editsDocument(action, objects);
      const name = action.Name ?? pathName(body, action);
      const does = DOES[action.ActionType] ?? 'other';
      const failure = rules.failAction({ client: session.client.id, index, does, name, edits });
      if (failure) throw new HostError(failure.code, failure.message ?? failure.code);
      if (edits) {
        if (workbook.readOnly) throw accessDenied();
        if (!edited) rules.beforeFirstEdit();
        edited = true;
        const state = checksFirst(action, objects) ? null : stateOf(workbook);
        const takeBack = rules.mark();
        undo = () => {
          if (state) restoreState(workbook, state);
          takeBack();
        };
      }
      if (edits && isOnProtectedSheet(objects.at(action.ObjectPathId))) throw accessDenied();
      results.push({ ActionId: action.Id, Value: carryOut(action, objects, session, rules.sets) });
    } catch (error) {
      if (!(error instanceof HostError)) throw error;
      undo?.();
      const { code, message, httpStatus } = error;
      const told = {
        Code: code,
        Message: message,
        Location: '',
        ActionIndex: index,
        HttpStatusCode: httpStatus,
      };
      return { Error: told, Results: results, TraceIds: traces };
    }
  }
  return { Results: results, TraceIds: traces };
}

/** Of an action that finds an object: the method by which it is found, such as Insert. */
function pathName(body: RequestBody, action: Action): string {
  const path = body.ObjectPaths[String(action.ObjectPathId)];
  return path?.ObjectPathType === PATH.method ? path.Name : '';
}
