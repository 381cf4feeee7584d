import type { Area } from './cell-area.ts';
import { cellAfterInput } from './cell-input.ts';
import { selectionOf } from './client-state.ts';
import { itemNotFound } from './host-error.ts';
import type { HostSession } from './host-session.ts';
import { deleteUp, insertDown } from './insert-delete.ts';
import { cellAt, findSheet, findTable, type Sheet } from './memory-workbook.ts';
import { rangeFrom } from './objects/arguments.ts';
import { sheetName } from './objects/worksheets.ts';
import { deleteTableRows, renameTable } from './table-edits.ts';
import { type ValidationVerdict, validationVerdict } from './typed-validation.ts';
import { clearCells, writeCells } from './write-cells.ts';

/** How the host lets a person act: in one go, of which the clients are told. */
export interface Acting {
  readonly act: <Result>(edit: (session: HostSession) => Result) => Result;
  /** Does something that isn't an edit. */
  readonly look: <Result>(session: (session: HostSession) => Result) => Result;
  readonly undo: () => boolean;
  readonly setEditing: (editing: boolean) => void;
}

/**
 * What a person does with the workbook by hand. Cells and ranges are given by their addresses, of the sheet that is
 * before the person where none is named. Throws `HostError` where the program would refuse.
 */
export interface Person {
  /**
   * Types into one cell, as text is typed. Says what data validation had to say: a rule with the alert style Stop keeps
   * what stood there; with a milder one the person goes on, and it is written.
   */
  type(cell: string, input: string | number | boolean): ValidationVerdict;
  /** Pastes plain values from a cell on; they are taken as if typed. */
  paste(cell: string, rows: readonly (readonly (string | number | boolean | null)[])[]): void;
  /** Empties cells with the delete key: contents, not looks. */
  clear(range: string): void;
  /** Takes rows out of a table's body, counted from 0. */
  deleteTableRows(table: string, index: number, count?: number): void;
  /** Puts whole sheet rows in above the rows given, such as 5:6. */
  insertRows(rows: string): void;
  /** Takes whole sheet rows out, such as 5:6. */
  deleteRows(rows: string): void;
  select(range: string): void;
  activate(sheet: string): void;
  /** What this person has selected: its sheet, and its first cell, counted from 1. */
  selected(): { readonly sheet: string; readonly row: number; readonly column: number };
  renameSheet(sheet: string, name: string): void;
  renameTable(table: string, name: string): void;
  /** Takes back the last thing that this person or this person's add-in did. Says whether there was one. */
  undo(): boolean;
  /** Begins to type in a cell: until `stopEditing`, requests of the person's add-in fail or wait. */
  startEditing(): void;
  stopEditing(): void;
}

export function personOf(acting: Acting): Person {
  const place = (session: HostSession, address: string): { readonly sheet: Sheet; readonly area: Area } =>
    rangeFrom(address, session.editing.workbook, session.client.activeSheet);
  const tableNamed = (session: HostSession, name: string): NonNullable<ReturnType<typeof findTable>> => {
    const table = findTable(session.editing.workbook, name);
    if (!table) throw itemNotFound();
    return table;
  };
  const sheetNamed = (session: HostSession, name: string): Sheet => {
    const sheet = findSheet(session.editing.workbook, name);
    if (!sheet) throw itemNotFound();
    return sheet;
  };
  return {
    type: (cell, input) => {
      const verdict = acting.look((session): ValidationVerdict => {
        const { sheet, area } = place(session, cell);
        const { workbook, rules } = session.editing;
        const typed = cellAfterInput(cellAt(sheet, area.row, area.column), input, rules);
        return validationVerdict(workbook, sheet, area.row, area.column, typed);
      });
      if (verdict.kind === 'against' && verdict.alert.style === 'Stop') return verdict;
      acting.act((session) => {
        const { sheet, area } = place(session, cell);
        writeCells(session.editing, sheet, { ...area, rows: 1, columns: 1 }, input);
      });
      return verdict;
    },
    paste: (cell, rows) => {
      acting.act((session) => {
        const { sheet, area } = place(session, cell);
        const to = { ...area, rows: rows.length, columns: rows[0]?.length ?? 0 };
        writeCells(session.editing, sheet, to, rows);
      });
    },
    clear: (range) => {
      acting.act((session) => {
        const { sheet, area } = place(session, range);
        clearCells(session.editing, sheet, area, 'Contents');
      });
    },
    deleteTableRows: (name, index, count = 1) => {
      acting.act((session) => {
        deleteTableRows(session.editing, tableNamed(session, name), index, count);
      });
    },
    insertRows: (rows) => {
      acting.act((session) => {
        const { sheet, area } = place(session, rows);
        insertDown(session.editing, sheet, area);
      });
    },
    deleteRows: (rows) => {
      acting.act((session) => {
        const { sheet, area } = place(session, rows);
        deleteUp(session.editing, sheet, area);
      });
    },
    select: (range) => {
      acting.look((session) => {
        session.select(place(session, range));
      });
    },
    activate: (name) => {
      acting.look((session) => {
        session.activate(sheetNamed(session, name));
      });
    },
    selected: () =>
      acting.look(({ client }) => {
        const { sheet, area } = selectionOf(client);
        return { sheet: sheet.name, row: area.row + 1, column: area.column + 1 };
      }),
    renameSheet: (name, wanted) => {
      acting.act((session) => {
        sheetNamed(session, name).name = sheetName(wanted, session, sheetNamed(session, name));
      });
    },
    renameTable: (name, wanted) => {
      acting.act((session) => {
        renameTable(session.editing, tableNamed(session, name), wanted);
      });
    },
    undo: acting.undo,
    startEditing: () => {
      acting.setEditing(true);
    },
    stopEditing: () => {
      acting.setEditing(false);
    },
  };
}
