import { logFrom, openSection } from '../pane/route.ts';
import type { Session } from '../session/session.ts';

/**
 * Associates the buttons of the ribbon with what they do, under the names that the manifest has; opening the pane
 * is the manifest's own affair. Both show the pane, which says what came of it; what is to stand in it is made ready
 * first, so that it does where a program can't bring the pane into view.
 */
export function associateCommands(session: Session): void {
  Office.actions.associate(
    'logFromRow',
    pressed(async () => {
      logFrom(session.view.chosen);
      await Office.addin.showAsTaskpane();
    }),
  );
  Office.actions.associate(
    'checkNow',
    pressed(async () => {
      openSection('today');
      await Promise.all([Office.addin.showAsTaskpane(), session.readAgain()]);
    }),
  );
}

/** A button stays pressed until it hears that its command is over, however that ended. */
function pressed(command: () => Promise<void>): (event: Office.AddinCommands.Event) => void {
  return (event) => void command().finally(() => event.completed());
}
