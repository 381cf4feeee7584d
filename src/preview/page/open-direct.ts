import { openXlsx } from '../../files/xlsx-workbook.ts';
import { EditableFile } from '../model/editable-file.ts';
import { type CellView, FileLiveWorkbook } from '../model/file-live-workbook.ts';
import type { WorkbookOpener } from './workplace.ts';

/** Opens a file so that grid and pane work on it without any spreadsheet program's code between. */
export const openDirect: WorkbookOpener = (bytes, bench) => {
  const file = new EditableFile(openXlsx(bytes));
  const view: CellView = {
    show: (cell) => bench().show(cell),
    onSelect: (listener) => bench().onSelect(listener),
  };
  return { source: file, gate: new FileLiveWorkbook(file, view), close: () => undefined };
};
