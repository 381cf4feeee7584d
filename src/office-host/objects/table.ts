import { invalidArgument, itemNotFound, notImplemented } from '../host-error.ts';
import { deleteUp } from '../insert-delete.ts';
import { bodyArea, rowBelowBody, type Table, tableArea } from '../memory-workbook.ts';
import { EVENT } from '../message-types.ts';
import { renameTable, resizeTable, showTotals } from '../table-edits.ts';
import { rangeFrom, text, truth } from './arguments.ts';
import { LiveObject, type ObjectKind } from './object-kind.ts';
import { subscriptions } from './subscriptions.ts';

/** Documented: a header or totals row that isn't shown can't be got. */
const headerRow = (table: Table): ReturnType<typeof tableArea> => {
  if (!table.showHeaders) throw itemNotFound();
  return { ...tableArea(table), rows: 1 };
};
const totalsRow = (table: Table): ReturnType<typeof tableArea> => {
  if (!table.showTotals) throw itemNotFound();
  return { ...tableArea(table), row: rowBelowBody(table), rows: 1 };
};

export const tableKind: ObjectKind<Table> = {
  id: ({ id }) => ({ Id: id }),
  scalars: {
    HighlightFirstColumn: ({ highlightFirstColumn }) => highlightFirstColumn,
    HighlightLastColumn: ({ highlightLastColumn }) => highlightLastColumn,
    Id: ({ id }) => id,
    Name: ({ name }) => name,
    ShowBandedColumns: ({ showBandedColumns }) => showBandedColumns,
    ShowBandedRows: ({ showBandedRows }) => showBandedRows,
    ShowFilterButton: ({ showFilterButton }) => showFilterButton,
    ShowHeaders: ({ showHeaders }) => showHeaders,
    ShowTotals: ({ showTotals: shown }) => shown,
    Style: ({ style }) => style,
  },
  setters: {
    HighlightFirstColumn: (table, value) => {
      table.highlightFirstColumn = truth(value);
    },
    HighlightLastColumn: (table, value) => {
      table.highlightLastColumn = truth(value);
    },
    Name: (table, value, { editing }) => {
      renameTable(editing, table, value);
    },
    ShowBandedColumns: (table, value) => {
      table.showBandedColumns = truth(value);
    },
    ShowBandedRows: (table, value) => {
      table.showBandedRows = truth(value);
    },
    ShowFilterButton: (table, value) => {
      table.showFilterButton = truth(value);
    },
    ShowHeaders: (table, value) => {
      if (truth(value) !== table.showHeaders)
        throw notImplemented('Table.showHeaders, set to another value,');
    },
    ShowTotals: (table, value, { editing }) => {
      showTotals(editing, table, truth(value));
    },
    Style: (table, value) => {
      const style = text(value);
      if (
        !/^TableStyle(?:Light(?:[1-9]|1\d|2[01])|Medium(?:[1-9]|1\d|2[0-8])|Dark(?:[1-9]|1[01]))$/.test(style)
      ) {
        throw invalidArgument();
      }
      table.style = style;
    },
  },
  navigations: {
    Columns: (table) => new LiveObject('TableColumnCollection', table),
    Rows: (table) => new LiveObject('TableRowCollection', table),
    Worksheet: (table) => new LiveObject('Worksheet', table.sheet),
  },
  methods: {
    ...subscriptions<Table>(({ id }) => id, { DataChanged: EVENT.tableChanged }),
    GetDataBodyRange: (table, _args, session) => session.range({ sheet: table.sheet, area: bodyArea(table) }),
    GetHeaderRowRange: (table, _args, session) =>
      session.range({ sheet: table.sheet, area: headerRow(table) }),
    GetRange: (table, _args, session) => session.range({ sheet: table.sheet, area: tableArea(table) }),
    GetTotalRowRange: (table, _args, session) =>
      session.range({ sheet: table.sheet, area: totalsRow(table) }),
  },
  edits: {
    ConvertToRange: (table, _args, session) => {
      const { workbook, tell } = session.editing;
      workbook.tables = workbook.tables.filter((each) => each !== table);
      tell({ kind: 'table-deleted', table });
      return session.range({ sheet: table.sheet, area: tableArea(table) });
    },
    Delete: (table, _args, { editing }) => {
      deleteUp(editing, table.sheet, tableArea(table));
      return null;
    },
    Resize: (table, [to], { editing }) => {
      const { sheet, area } = rangeFrom(to, editing.workbook, table.sheet);
      if (sheet !== table.sheet) throw invalidArgument();
      resizeTable(editing, table, area);
      return null;
    },
  },
};
