import type { Changer, LiveListener } from '../workbook/live-workbook.ts';
import { firstCell } from './first-cell.ts';
import type { OwnWrites } from './own-writes.ts';
import { oneAfterAnother, type WithWorkbook } from './with-workbook.ts';

const OURS = 'ThisLocalAddin';

/** Tells a listener of changes and of the selection, until the function given is called. */
export async function listenTo(
  excel: typeof Excel,
  withWorkbook: WithWorkbook,
  own: OwnWrites,
  listener: LiveListener,
): Promise<() => Promise<void>> {
  const inOrder = oneAfterAnother();
  let listening = true;
  const changed = (source: string, isOurs: boolean): Promise<void> => {
    const by: Changer = source === 'Remote' ? 'other' : 'person';
    if (listening && (by === 'other' || !isOurs)) listener.changed(by);
    return Promise.resolve();
  };
  const selected = async ({
    worksheetId,
    address,
  }: Excel.WorksheetSelectionChangedEventArgs): Promise<void> => {
    const cell = firstCell(address);
    const tab = cell === null ? null : await inOrder(() => tabName(withWorkbook, worksheetId));
    if (listening && cell !== null && tab !== null) listener.selected({ tab, ...cell });
  };
  const { context, handlers } = await withWorkbook(async (runContext) => {
    const { worksheets } = runContext.workbook;
    const added = [
      worksheets.onChanged.add((args) => changed(args.source, isOwnChange(args, own))),
      worksheets.onAdded.add((args) => changed(args.source, own.isWriting || own.isOwnTab(args.worksheetId))),
      worksheets.onDeleted.add((args) =>
        changed(args.source, own.isWriting && own.isOwnTab(args.worksheetId)),
      ),
      worksheets.onSelectionChanged.add(selected),
    ];
    await runContext.sync();
    return { context: runContext, handlers: added };
  });
  return async () => {
    listening = false;
    await excel.run(context, async (sameContext) => {
      for (const handler of handlers) handler.remove();
      await sameContext.sync();
    });
  };
}

function isOwnChange({ triggerSource }: Excel.WorksheetChangedEventArgs, own: OwnWrites): boolean {
  // Programs without the mark leave it out, whatever its type says.
  const mark: string | undefined = triggerSource;
  return mark === undefined ? own.isWriting : mark === OURS;
}

/** The name that a tab bears now; null where it is gone or can't be asked for. */
function tabName(withWorkbook: WithWorkbook, id: string): Promise<string | null> {
  return withWorkbook(async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(id).load('name');
    await context.sync();
    return sheet.isNullObject ? null : sheet.name;
  }).catch(() => null); // A selection whose tab can't be asked for is past; the next one is told.
}
