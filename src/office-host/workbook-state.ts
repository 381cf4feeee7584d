import type { MemoryWorkbook, Sheet, Table } from './memory-workbook.ts';

/** A workbook as it stood at a moment. */
export interface WorkbookState {
  readonly workbook: Omit<MemoryWorkbook, 'nextId' | 'dateSystem'>;
  readonly sheets: readonly { readonly sheet: Sheet; readonly fields: Sheet }[];
  readonly tables: readonly { readonly table: Table; readonly fields: Table }[];
}

const copyOfSheet = (sheet: Sheet): Sheet => ({
  ...sheet,
  rows: sheet.rows.slice(),
  columnWidths: new Map(sheet.columnWidths),
});

/** Keeps how a workbook stands. Rows and cells are shared, for they are never changed but replaced. */
export function stateOf(workbook: MemoryWorkbook): WorkbookState {
  const { nextId: _nextId, dateSystem: _dateSystem, ...fields } = workbook;
  return {
    workbook: {
      ...fields,
      sheets: [...workbook.sheets],
      tables: [...workbook.tables],
      names: workbook.names.map((each) => ({ ...each })),
      settings: new Map(workbook.settings),
    },
    sheets: workbook.sheets.map((sheet) => ({ sheet, fields: copyOfSheet(sheet) })),
    tables: workbook.tables.map((table) => ({ table, fields: { ...table } })),
  };
}

/** Makes a workbook stand as it stood. Sheets and tables stay the same objects, identifiers aren't used again. */
export function restoreState(workbook: MemoryWorkbook, state: WorkbookState): void {
  Object.assign(workbook, state.workbook, {
    sheets: [...state.workbook.sheets],
    tables: [...state.workbook.tables],
    names: state.workbook.names.map((each) => ({ ...each })),
    settings: new Map(state.workbook.settings),
  });
  for (const { sheet, fields } of state.sheets) Object.assign(sheet, copyOfSheet(fields));
  for (const { table, fields } of state.tables) Object.assign(table, fields);
}
