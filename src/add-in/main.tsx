import { parseDay } from '../core/day.ts';
import { associateFunctions } from '../functions/associate.ts';
import { mountMessage } from '../pane/message-page.tsx';
import { mountPane } from '../pane/pane.tsx';
import { Session } from '../session/session.ts';
import { calendarDay, onNewDay } from './calendar.ts';
import { answerCells } from './cell-functions.ts';
import { associateCommands } from './commands.ts';
import { themeOf } from './office-theme.ts';
import { openGate } from './open-gate.ts';
import { addInPlanner } from './planner.ts';
import { previewPage } from './preview-page.ts';

/** 2 to the power of 32: how many values one random whole number of the browser can have. */
const RANDOM_VALUES = 2 ** 32;

function random(): number {
  const [value = 0] = crypto.getRandomValues(new Uint32Array(1));
  return value / RANDOM_VALUES;
}

async function open(element: HTMLElement): Promise<void> {
  // Before the script is ready: cells that are calculated while the page loads wait for it.
  associateFunctions();
  const preview = previewPage(window);
  const gate = await openGate(preview);
  if (gate.kind === 'none') {
    mountMessage(element, gate.title, gate.message);
    return;
  }
  const today = () => parseDay(preview?.today() ?? '') ?? calendarDay(new Date());
  const session = new Session({
    workbook: gate.workbook,
    copy: gate.copy,
    today,
    random,
    wait: (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds)),
    starter: async () => (await import('../samples/starter-blueprint.ts')).starterBlueprint().tabs,
  });
  const theme = gate.isOffice ? themeOf(Office.context.officeTheme) : null;
  mountPane(element, session, addInPlanner(), theme === null ? {} : { theme });
  answerCells(session, preview);
  if (gate.isOffice) associateCommands(session);
  preview?.onToday(() => void session.readAgain());
  onNewDay(window, today, () => void session.readAgain());
  await session.start();
}

const element = document.getElementById('pane');
if (element === null) throw new Error('The page has no element with the id pane.');
await open(element);
