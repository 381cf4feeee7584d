import { openOfficeWorkbook } from '../office/office-workbook.ts';
import type { LiveWorkbook } from '../workbook/live-workbook.ts';
import type { PreviewPort } from '../workbook/preview-port.ts';
import type { CopyWorkbook } from '../workbook/workbook-copy.ts';
import { copyOfficeWorkbook } from './office-copy.ts';

/** The gate to the workbook beside this page, or in words why there is none. */
export type Gate =
  | {
      readonly kind: 'gate';
      readonly workbook: LiveWorkbook;
      readonly copy: CopyWorkbook;
      readonly isOffice: boolean;
    }
  | { readonly kind: 'none'; readonly title: string; readonly message: string };

/** The oldest set of calls that holds all that the adapter uses. */
const NEEDED_API = '1.14';

/**
 * Finds the workbook: through the spreadsheet program's own script where the page has it, else over the preview page.
 */
export async function openGate(preview: PreviewPort | null): Promise<Gate> {
  if (typeof Office === 'undefined') {
    if (preview !== null) {
      return { kind: 'gate', workbook: preview.workbook, copy: () => preview.copy(), isOffice: false };
    }
    return {
      kind: 'none',
      title: 'The spreadsheet’s script is not here',
      message:
        'This page talks to the spreadsheet through a script that Microsoft serves, and that script could not be loaded. ' +
        'Check that the computer is online and that nothing blocks appsforoffice.microsoft.com, then open the pane again.',
    };
  }
  const { host } = await Office.onReady();
  if (host !== Office.HostType.Excel) {
    return {
      kind: 'none',
      title: 'This page belongs beside a workbook',
      message:
        'Jarleaf works in the task pane of a spreadsheet program. Add it there as its read-me says, or start the preview, ' +
        'which needs no spreadsheet program.',
    };
  }
  if (!Office.context.requirements.isSetSupported('ExcelApi', NEEDED_API)) {
    return {
      kind: 'none',
      title: 'This spreadsheet program is too old',
      message: `Jarleaf needs one that knows the calls of ExcelApi ${NEEDED_API}. Update it, or use it in the browser.`,
    };
  }
  return { kind: 'gate', workbook: openOfficeWorkbook(Excel), copy: copyOfficeWorkbook, isOffice: true };
}
