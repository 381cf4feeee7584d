import type { LiveWorkbook } from '../workbook/live-workbook.ts';
import { addTabs } from './add-tabs.ts';
import { listenTo } from './events.ts';
import { goToCell } from './go-to.ts';
import { plainMessage } from './messages.ts';
import { OwnWrites } from './own-writes.ts';
import { newReadingMemory, readTables } from './read-tables.ts';
import { oneAfterAnother, workbookRunner } from './with-workbook.ts';
import { writeChanges } from './write-changes.ts';

/**
 * The workbook that is open in the spreadsheet program, over its JavaScript interface (ExcelApi 1.14).
 * @param excel the namespace that the platform's script provides
 */
export function openOfficeWorkbook(excel: typeof Excel): LiveWorkbook {
  const withWorkbook = workbookRunner(excel);
  const memory = newReadingMemory();
  const own = new OwnWrites();
  // Reading between the round trips of a write would show a half of it.
  const inTurn = oneAfterAnother();
  return {
    read: () =>
      inTurn(async () => {
        try {
          return { kind: 'read', snapshot: await readTables(withWorkbook, memory) };
        } catch (error) {
          return { kind: 'failed', message: plainMessage(error, 'Reading the workbook') };
        }
      }),
    write: (changes, basis) =>
      inTurn(() => own.during(() => writeChanges(withWorkbook, memory, changes, basis))),
    addTabs: (tabs) =>
      inTurn(() => own.during(() => addTabs(withWorkbook, memory, tabs, (id) => own.addTab(id)))),
    goTo: (cell) => goToCell(withWorkbook, cell),
    listen: async (listener) => {
      try {
        return { kind: 'listening', stop: await listenTo(excel, withWorkbook, own, listener) };
      } catch (error) {
        return { kind: 'failed', message: plainMessage(error, 'Following the workbook') };
      }
    },
  };
}
