import { HostError, invalidArgument, itemNotFound } from '../host-error.ts';
import { findSheet, newSheet, type Sheet } from '../memory-workbook.ts';
import { EVENT, WHOLE_WORKBOOK } from '../message-types.ts';
import { text, truth } from './arguments.ts';
import { type Argument, LiveObject, type ObjectKind, type RequestSession } from './object-kind.ts';
import { subscriptions } from './subscriptions.ts';

/** The name of a sheet, checked. Throws `InvalidArgument`, or `ItemAlreadyExists` where another sheet has it. */
export function sheetName(given: Argument | undefined, session: RequestSession, own?: Sheet): string {
  const name = text(given);
  if (name === '' || name.length > 31 || /[:\\/?*[\]]|^'|'$/.test(name)) throw invalidArgument();
  const other = findSheet(session.editing.workbook, name);
  if (other && other !== own) {
    throw new HostError('ItemAlreadyExists', 'A resource with the same name or identifier already exists.');
  }
  return name;
}

const wrapped = (sheet: Sheet): LiveObject => new LiveObject('Worksheet', sheet);

function visible(session: RequestSession, visibleOnly: Argument | undefined): readonly Sheet[] {
  const only = visibleOnly !== null && visibleOnly !== undefined && truth(visibleOnly);
  const { sheets } = session.editing.workbook;
  return only ? sheets.filter(({ visibility }) => visibility === 'Visible') : sheets;
}

export const worksheetsKind: ObjectKind<null> = {
  items: (_, { editing }) => editing.workbook.sheets.map(wrapped),
  index: (_, key, { editing }) => {
    const sheet = findSheet(editing.workbook, text(key));
    if (!sheet) throw itemNotFound();
    return wrapped(sheet);
  },
  methods: {
    ...subscriptions<null>(() => WHOLE_WORKBOOK, {
      Activated: EVENT.worksheetActivated,
      Added: EVENT.worksheetAdded,
      DataChanged: EVENT.worksheetChanged,
      Deactivated: EVENT.worksheetDeactivated,
      Deleted: EVENT.worksheetDeleted,
      SelectionChanged: EVENT.worksheetSelection,
    }),
    GetActiveWorksheet: (_, _args, { client }) => wrapped(client.activeSheet),
    GetCount: (_, [visibleOnly], session) => visible(session, visibleOnly).length,
    GetFirst: (_, [visibleOnly], session) => {
      const first = visible(session, visibleOnly)[0];
      return first ? wrapped(first) : null;
    },
    GetItemOrNullObject: (_, [key], { editing }) => {
      const sheet = findSheet(editing.workbook, text(key));
      return sheet ? wrapped(sheet) : null;
    },
    GetLast: (_, [visibleOnly], session) => {
      const last = visible(session, visibleOnly).at(-1);
      return last ? wrapped(last) : null;
    },
  },
  edits: {
    Add: (_, [name], session) => {
      const { workbook, tell } = session.editing;
      let number = workbook.sheets.length + 1;
      while (findSheet(workbook, `Sheet${number}`)) number++;
      const given = name === null || name === undefined ? `Sheet${number}` : sheetName(name, session);
      const sheet = newSheet(workbook, given);
      workbook.sheets.push(sheet);
      tell({ kind: 'sheet-added', sheet });
      return wrapped(sheet);
    },
  },
};
