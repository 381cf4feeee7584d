import type { GoToOutcome, TabCell } from '../workbook/live-workbook.ts';
import { plainMessage } from './messages.ts';
import type { WithWorkbook } from './with-workbook.ts';

/** Shows a cell's tab and chooses the cell, which brings it into view. */
export async function goToCell(
  withWorkbook: WithWorkbook,
  { tab, row, column }: TabCell,
): Promise<GoToOutcome> {
  try {
    return await withWorkbook(async (context): Promise<GoToOutcome> => {
      const sheet = context.workbook.worksheets.getItemOrNullObject(tab).load('visibility');
      await context.sync();
      if (sheet.isNullObject) {
        return { kind: 'failed', message: `There is no tab ${tab} any more: it was renamed or deleted.` };
      }
      if (sheet.visibility !== 'Visible') {
        return { kind: 'failed', message: `The tab ${tab} is hidden: unhide it to see the cell.` };
      }
      sheet.activate();
      sheet.getRangeByIndexes(row - 1, column - 1, 1, 1).select();
      await context.sync();
      return { kind: 'there' };
    });
  } catch (error) {
    return { kind: 'failed', message: plainMessage(error, 'Going to the cell') };
  }
}
