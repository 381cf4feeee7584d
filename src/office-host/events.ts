import { type Area, areaAddress } from './cell-area.ts';
import { type ClientState, keepEventRange } from './client-state.ts';
import type { WorkbookChange } from './editing.ts';
import type { Cell, Sheet } from './memory-workbook.ts';
import { EVENT, EVENT_CATEGORY, subscriptionKey, WHOLE_WORKBOOK } from './message-types.ts';
import { valueType } from './objects/value-type.ts';
import type { Json } from './request.ts';

/** One event, as it passes over the bridge: category, type, target, the arguments as JSON, a number. */
export type EventEntry = readonly [number, number, string, string, number];

/** Who caused a change, seen from the client that is told. */
export interface Origin {
  readonly source: 'Local' | 'Remote';
  readonly triggerSource: 'ThisLocalAddin' | 'Unknown';
}

/** The events of a change that a client has asked for. */
export function eventsOf(
  change: WorkbookChange,
  client: ClientState,
  origin: Origin,
  nextId: () => number,
): EventEntry[] {
  const entries: EventEntry[] = [];
  const send = (
    type: number,
    targets: readonly string[],
    args: Readonly<Record<string, Json>>,
    of?: Area,
  ): void => {
    for (const target of targets) {
      if (!client.subscriptions.has(subscriptionKey(type, target))) continue;
      const place =
        change.kind === 'cells' && of
          ? {
              address: areaAddress(of),
              referenceId: keepEventRange(client, { sheet: change.sheet, area: of }),
            }
          : {};
      entries.push([EVENT_CATEGORY, type, target, JSON.stringify({ ...args, ...place }), nextId()]);
    }
  };
  const { source } = origin;
  switch (change.kind) {
    case 'sheet-added':
    case 'sheet-deleted': {
      const type = change.kind === 'sheet-added' ? EVENT.worksheetAdded : EVENT.worksheetDeleted;
      send(type, [WHOLE_WORKBOOK], { source, worksheetId: change.sheet.id });
      break;
    }
    case 'table-added':
    case 'table-deleted': {
      const { id, name, sheet } = change.table;
      const type = change.kind === 'table-added' ? EVENT.tableAdded : EVENT.tableDeleted;
      send(type, [WHOLE_WORKBOOK, sheet.id], { source, tableId: id, tableName: name, worksheetId: sheet.id });
      break;
    }
    case 'cells': {
      const { sheet, area, changeType, shift, tables, single } = change;
      const details = single ? detailsOf(single.before, single.after) : {};
      const ofSheet = { ...origin, ...details, changeType, shiftDirection: shift, worksheetId: sheet.id };
      send(EVENT.worksheetChanged, [WHOLE_WORKBOOK, sheet.id], ofSheet, area);
      for (const each of tables) {
        const { id } = each.table;
        const ofTable = {
          ...details,
          source,
          changeType: each.changeType,
          worksheetId: sheet.id,
          tableId: id,
        };
        send(EVENT.tableChanged, [WHOLE_WORKBOOK, sheet.id, id], ofTable, each.area);
      }
      break;
    }
  }
  return entries;
}

const detailsOf = (before: Cell, after: Cell): Readonly<Record<string, Json>> => ({
  valueBefore: before.value,
  valueAfter: after.value,
  valueTypeBefore: valueType(before.value),
  valueTypeAfter: valueType(after.value),
});

/** The events that a client gets of its own person's selection. Nobody else's is told. */
export function selectionEvents(client: ClientState, address: string, nextId: () => number): EventEntry[] {
  const sheet = client.activeSheet;
  const args = JSON.stringify({ address, worksheetId: sheet.id });
  const asked = [WHOLE_WORKBOOK, sheet.id].filter((target) =>
    client.subscriptions.has(subscriptionKey(EVENT.worksheetSelection, target)),
  );
  return [
    // The workbook's own event is not asked for: every client gets it.
    [EVENT_CATEGORY, EVENT.documentSelection, '', '{}', nextId()],
    ...asked.map((target): EventEntry => [EVENT_CATEGORY, EVENT.worksheetSelection, target, args, nextId()]),
  ];
}

/** The events that a client gets when its person goes to another sheet. */
export function activationEvents(
  client: ClientState,
  from: Sheet,
  to: Sheet,
  nextId: () => number,
): EventEntry[] {
  const of = (type: number, sheet: Sheet): EventEntry[] =>
    [WHOLE_WORKBOOK, sheet.id]
      .filter((target) => client.subscriptions.has(subscriptionKey(type, target)))
      .map((target) => [EVENT_CATEGORY, type, target, JSON.stringify({ worksheetId: sheet.id }), nextId()]);
  return [...of(EVENT.worksheetDeactivated, from), ...of(EVENT.worksheetActivated, to)];
}
