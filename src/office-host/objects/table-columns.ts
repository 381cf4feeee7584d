import type { Area } from '../cell-area.ts';
import { itemNotFound, notImplemented } from '../host-error.ts';
import { bodyArea, headerRows, rowBelowBody, type Table, tableArea } from '../memory-workbook.ts';
import { addTableColumn, deleteTableColumn } from '../table-column-edits.ts';
import { writeCells } from '../write-cells.ts';
import { wholeNumber } from './arguments.ts';
import {
  type Argument,
  LiveObject,
  type ObjectKind,
  type RequestSession,
  type Subjects,
} from './object-kind.ts';

type Column = Subjects['TableColumn'];

function indexOf({ table, id }: Column): number {
  const index = table.columns.findIndex((column) => column.id === id);
  if (index < 0) throw itemNotFound();
  return index;
}

function find(table: Table, key: Argument | undefined): LiveObject | null {
  const found = table.columns.find(
    ({ id, name }) => id === key || (typeof key === 'string' && name.toLowerCase() === key.toLowerCase()),
  );
  return found ? new LiveObject('TableColumn', { table, id: found.id }) : null;
}

const part = (column: Column, rows: Pick<Area, 'row' | 'rows'>, session: RequestSession): LiveObject =>
  session.range({
    sheet: column.table.sheet,
    area: { ...rows, column: column.table.column + indexOf(column), columns: 1 },
  });

export const tableColumnsKind: ObjectKind<Table> = {
  scalars: { Count: ({ columns }) => columns.length },
  items: (table) => table.columns.map(({ id }) => new LiveObject('TableColumn', { table, id })),
  index: (table, key) => {
    const found = find(table, key);
    if (!found) throw itemNotFound();
    return found;
  },
  methods: {
    GetCount: ({ columns }) => columns.length,
    GetItemAt: (table, [index]) => {
      const found = table.columns[wholeNumber(index)];
      if (!found) throw itemNotFound();
      return new LiveObject('TableColumn', { table, id: found.id });
    },
    GetItemOrNullObject: (table, [key]) => find(table, key),
  },
  edits: {
    Add: (table, [index, values, name], { editing }) => {
      if (wholeNumber(index, -1) !== -1) throw notImplemented('TableColumnCollection.add before a column');
      if (values !== null && values !== undefined)
        throw notImplemented('TableColumnCollection.add with values');
      return new LiveObject('TableColumn', { table, id: addTableColumn(editing, table, name ?? null) });
    },
  },
};

export const tableColumnKind: ObjectKind<Column> = {
  id: ({ id }) => ({ Id: id }),
  scalars: {
    Id: ({ id }) => id,
    Index: indexOf,
    Name: (column) => column.table.columns[indexOf(column)]?.name ?? null,
    Values: (column, session) => {
      const whole = tableArea(column.table);
      const across = whole.column + indexOf(column);
      return Array.from({ length: whole.rows }, (_, down) => [
        session.valueAt(column.table.sheet, whole.row + down, across),
      ]);
    },
  },
  setters: {
    Name: (column, value, { editing }) => {
      const { table } = column;
      if (!table.showHeaders) throw itemNotFound();
      const at = { row: table.row, column: table.column + indexOf(column), rows: 1, columns: 1 };
      writeCells(editing, table.sheet, at, value);
    },
  },
  methods: {
    GetDataBodyRange: (column, _args, session) => part(column, bodyArea(column.table), session),
    GetHeaderRowRange: (column, _args, session) => {
      if (headerRows(column.table) === 0) throw itemNotFound();
      return part(column, { row: column.table.row, rows: 1 }, session);
    },
    GetRange: (column, _args, session) => part(column, tableArea(column.table), session),
    GetTotalRowRange: (column, _args, session) => {
      if (!column.table.showTotals) throw itemNotFound();
      return part(column, { row: rowBelowBody(column.table), rows: 1 }, session);
    },
  },
  edits: {
    Delete: (column, _args, { editing }) => {
      deleteTableColumn(editing, column.table, indexOf(column));
      return null;
    },
  },
};
