import { logFrom, openSection } from '../pane/route.ts';
import type { Session } from '../session/session.ts';

/**
 * Associates the buttons of the ribbon with what they do, under the names that the manifest has; opening the pane
 * is the manifest's own affair. Both show the pane, which says what came of it.
 */
export function associateCommands(session: Session): void {
  Office.actions.associate(
    'logFromRow',
    pressed(async () => {
      await Office.addin.showAsTaskpane();
      logFrom(session.view.chosen);
    }),
  );
  Office.actions.associate(
    'checkNow',
    pressed(async () => {
      await Office.addin.showAsTaskpane();
      openSection('today');
      await session.readAgain();
    }),
  );
}

/** A button stays pressed until it hears that its command is over, however that ended. */
function pressed(command: () => Promise<void>): (event: Office.AddinCommands.Event) => void {
  return (event) => void command().finally(() => event.completed());
}
