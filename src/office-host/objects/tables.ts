import { itemNotFound } from '../host-error.ts';
import { findTable, type MemoryWorkbook, type Sheet, type Table } from '../memory-workbook.ts';
import { EVENT, WHOLE_WORKBOOK } from '../message-types.ts';
import { addTable } from '../table-edits.ts';
import { rangeFrom, text, truth, wholeNumber } from './arguments.ts';
import { LiveObject, type ObjectKind } from './object-kind.ts';
import { subscriptions } from './subscriptions.ts';

const wrapped = (table: Table): LiveObject => new LiveObject('Table', table);

const tablesOf = (workbook: MemoryWorkbook, sheet: Sheet | null): Table[] =>
  workbook.tables.filter((table) => sheet === null || table.sheet === sheet);

function find(workbook: MemoryWorkbook, sheet: Sheet | null, key: string): Table | null {
  const table = findTable(workbook, key);
  return table && (sheet === null || table.sheet === sheet) ? table : null;
}

export const tablesKind: ObjectKind<Sheet | null> = {
  scalars: { Count: (sheet, { editing }) => tablesOf(editing.workbook, sheet).length },
  items: (sheet, { editing }) => tablesOf(editing.workbook, sheet).map(wrapped),
  index: (sheet, key, { editing }) => {
    const table = find(editing.workbook, sheet, text(key));
    if (!table) throw itemNotFound();
    return wrapped(table);
  },
  methods: {
    ...subscriptions<Sheet | null>((sheet) => sheet?.id ?? WHOLE_WORKBOOK, {
      Added: EVENT.tableAdded,
      DataChanged: EVENT.tableChanged,
      Deleted: EVENT.tableDeleted,
    }),
    GetCount: (sheet, _args, { editing }) => tablesOf(editing.workbook, sheet).length,
    GetItemAt: (sheet, [index], { editing }) => {
      const table = tablesOf(editing.workbook, sheet)[wholeNumber(index)];
      if (!table) throw itemNotFound();
      return wrapped(table);
    },
    GetItemOrNullObject: (sheet, [key], { editing }) => {
      const table = find(editing.workbook, sheet, text(key));
      return table ? wrapped(table) : null;
    },
  },
  edits: {
    Add: (sheet, [address, hasHeaders], { editing, client }) => {
      const found = rangeFrom(address, editing.workbook, sheet ?? client.activeSheet);
      return wrapped(addTable(editing, found.sheet, found.area, truth(hasHeaders)));
    },
  },
};
