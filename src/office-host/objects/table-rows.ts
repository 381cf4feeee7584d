import { type Area, lastRow } from '../cell-area.ts';
import { invalidArgument, itemNotFound } from '../host-error.ts';
import { bodyArea, type Table } from '../memory-workbook.ts';
import { addTableRows, deleteTableRows } from '../table-edits.ts';
import { writeCells } from '../write-cells.ts';
import { plain, wholeNumber } from './arguments.ts';
import { LiveObject, type ObjectKind, type Subjects } from './object-kind.ts';

type Row = Subjects['TableRow'];

function areaOfRow({ table, index }: Row): Area {
  const body = bodyArea(table);
  const at = { ...body, row: body.row + index, rows: 1 };
  if (index < 0 || at.row > lastRow(body)) throw itemNotFound();
  return at;
}

export const tableRowsKind: ObjectKind<Table> = {
  scalars: { Count: ({ bodyRows }) => bodyRows },
  items: (table) =>
    Array.from({ length: table.bodyRows }, (_, index) => new LiveObject('TableRow', { table, index })),
  methods: {
    GetCount: ({ bodyRows }) => bodyRows,
    GetItemAt: (table, [index]) => {
      const row = { table, index: wholeNumber(index) };
      areaOfRow(row);
      return new LiveObject('TableRow', row);
    },
  },
  edits: {
    Add: (table, [index, values], { editing }) => {
      const at = index === null || index === undefined ? null : wholeNumber(index);
      return new LiveObject('TableRow', { table, index: addTableRows(editing, table, at, plain(values)) });
    },
    DeleteRowsAt: (table, [index, count], { editing }) => {
      deleteTableRows(editing, table, wholeNumber(index), wholeNumber(count, 1));
      return null;
    },
    // Rows given by their numbers: taken out from the last on, so that the numbers keep their meaning.
    DeleteRows: (table, [rows], { editing }) => {
      if (!Array.isArray(rows) || rows.length === 0) throw invalidArgument();
      const indexes = rows.map((row) => {
        if (typeof row === 'number') return row;
        if (row instanceof LiveObject && row.kind === 'TableRow') return (row.subject as Row).index;
        throw invalidArgument();
      });
      const descending = [...new Set(indexes)].toSorted((a, b) => b - a);
      for (const index of descending) deleteTableRows(editing, table, index, 1);
      return null;
    },
  },
};

export const tableRowKind: ObjectKind<Row> = {
  scalars: {
    Index: ({ index }) => index,
    Values: (row, session) => {
      const of = areaOfRow(row);
      return [
        Array.from({ length: of.columns }, (_, across) =>
          session.valueAt(row.table.sheet, of.row, of.column + across),
        ),
      ];
    },
  },
  setters: {
    Values: (row, value, { editing }) => {
      writeCells(editing, row.table.sheet, areaOfRow(row), value);
    },
  },
  methods: {
    GetRange: (row, _args, session) => session.range({ sheet: row.table.sheet, area: areaOfRow(row) }),
  },
  edits: {
    Delete: ({ table, index }, _args, { editing }) => {
      deleteTableRows(editing, table, index, 1);
      return null;
    },
  },
};
