import { type Area, areaOfCell } from './cell-area.ts';
import type { AreaShift } from './editing.ts';
import type { FunctionOutcome } from './function-calls.ts';
import type { MemoryWorkbook, Sheet } from './memory-workbook.ts';

/** A range as a live object: it moves with its cells, and is gone (null) when they are taken out. */
export interface RangeSubject {
  readonly sheet: Sheet;
  area: Area | null;
}

/** What the host keeps for one client: an add-in running for one person. */
export interface ClientState {
  readonly id: string;
  /** Ranges that the client holds on to from one request to the next, by their reference id. */
  readonly references: Map<string, RangeSubject>;
  /** Ranges of events told, by reference id; the oldest are forgotten. */
  readonly eventReferences: Map<string, RangeSubject>;
  /** The events that the client has asked for: message type and target. */
  readonly subscriptions: Set<string>;
  /** Calls of the add-in's functions that wait for results, by their number. */
  readonly functionCalls: Map<number, (outcome: FunctionOutcome) => void>;
  activeSheet: Sheet;
  /** What is selected on each sheet, by its id; the first cell where nothing was. */
  readonly selections: Map<string, Area>;
  nextReference: number;
}

const EVENTS_KEPT = 2000;

export function newClientState(id: string, workbook: MemoryWorkbook): ClientState {
  const first = workbook.sheets.find((sheet) => sheet.id === workbook.firstSheetId);
  if (!first) throw new Error('The workbook has no sheet.');
  return {
    id,
    references: new Map(),
    eventReferences: new Map(),
    subscriptions: new Set(),
    functionCalls: new Map(),
    activeSheet: first,
    selections: new Map(),
    nextReference: 1,
  };
}

/** What the client's person has selected. */
export const selectionOf = ({ activeSheet, selections }: ClientState): { sheet: Sheet; area: Area } => ({
  sheet: activeSheet,
  area: selections.get(activeSheet.id) ?? areaOfCell(0, 0),
});

/** Moves all ranges that a client holds when cells of a sheet move. */
export function moveRanges(ranges: Iterable<RangeSubject>, sheet: Sheet, shift: AreaShift): void {
  for (const range of ranges) {
    if (range.sheet === sheet && range.area !== null) range.area = shift(range.area);
  }
}

export function keepEventRange(client: ClientState, range: RangeSubject): string {
  const id = `event-${client.nextReference++}`;
  client.eventReferences.set(id, range);
  const oldest =
    client.eventReferences.size > EVENTS_KEPT ? client.eventReferences.keys().next().value : undefined;
  if (oldest !== undefined) client.eventReferences.delete(oldest);
  return id;
}
