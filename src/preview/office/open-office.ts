import { cellName } from '../../files/cell-reference.ts';
import { openXlsx } from '../../files/xlsx-workbook.ts';
import { createContainer, DARK_THEME, LIGHT_THEME } from '../../office-host/container.ts';
import { type Bridge, createMemoryWorkbook, createOfficeHost } from '../../office-host/office-host.ts';
import type { LiveWorkbook } from '../../workbook/live-workbook.ts';
import type { Workbench } from '../model/workbench.ts';
import type { OpenWorkbook } from '../page/workplace.ts';
import { describeWorkbook } from './describe-workbook.ts';
import { OfficeSource } from './office-source.ts';
import { writeBack } from './write-back.ts';

const CLIENT = 'pane';

/** A workbook in the host, and how a frame gets at it. */
export interface OfficeWorkbookOpened extends OpenWorkbook {
  /** Makes a frame's window one of the spreadsheet program, before its script loads there. */
  readonly install: (window: Window) => void;
}

/**
 * Opens a file into a host in memory, which the pane reaches through the spreadsheet's own script.
 * @param openNew is given the file of a workbook that the pane wants to be opened beside this one
 */
export function openOffice(
  bytes: Uint8Array,
  bench: () => Workbench,
  fileName: string,
  openNew: (file: Uint8Array) => void,
): OfficeWorkbookOpened {
  const file = openXlsx(bytes);
  const host = createOfficeHost(createMemoryWorkbook(describeWorkbook(file)), {
    openWorkbook: (base64) => {
      openNew(Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0)));
    },
  });
  const { bridge } = host.connect(CLIENT);
  const person = host.person(CLIENT);
  const tabs = new Map(file.tabs().map((tab) => [tab.name, tab]));
  const source = new OfficeSource(host, CLIENT, tabs, (each) => writeBack(bytes, each));
  let chosen = JSON.stringify(person.selected());
  let ended = false;
  const followHost = (): void => {
    // What the pane still hears when another workbook has taken this one's place is about nothing on view.
    if (ended) return;
    source.look();
    const { sheet, row, column } = person.selected();
    const now = JSON.stringify({ sheet, row, column });
    if (now === chosen) return;
    chosen = now;
    bench().show({ tab: sheet, row, column });
  };
  let stopFollowing = (): void => undefined;
  const followPerson = (): void => {
    if (ended) return;
    stopFollowing = bench().onSelect(({ tab, row, column }) => {
      const now = JSON.stringify({ sheet: tab, row, column });
      if (now === chosen) return;
      chosen = now;
      person.activate(tab);
      person.select(cellName(row, column));
    });
  };
  const close = (): void => {
    ended = true;
    stopFollowing();
  };
  // The bench comes to be only after its first workbook.
  queueMicrotask(followPerson);
  const dark = window.matchMedia('(prefers-color-scheme: dark)').matches;
  const container = createContainer({
    bridge: followed(bridge, followHost),
    requirementSets: host.requirementSets,
    theme: dark ? DARK_THEME : LIGHT_THEME,
    documentName: fileName,
    documentFile: () => {
      const saved = source.save();
      if (saved.kind === 'saved') return saved.bytes;
      bench().say('problem', saved.message);
      return null;
    },
  });
  return { source, gate: NO_GATE, install: (frame) => container.install(frame), close };
}

/** The host's bridge, with a look at the workbook after everything that the pane has heard. */
function followed(bridge: Bridge, look: () => void): Bridge {
  return {
    sendMessageToHost: (text) => bridge.sendMessageToHost(text),
    get onMessageFromHost() {
      return bridge.onMessageFromHost;
    },
    set onMessageFromHost(listener) {
      bridge.onMessageFromHost =
        listener &&
        ((text) => {
          listener(text);
          look();
        });
    },
  };
}

const WAY = 'Here the pane goes through the spreadsheet’s own script.';
/** The direct way, which is closed where the pane goes through the script. */
const NO_GATE: LiveWorkbook = {
  read: () => Promise.resolve({ kind: 'failed', message: WAY }),
  write: () => Promise.resolve({ kind: 'failed', message: WAY }),
  addTabs: () => Promise.resolve({ kind: 'failed', message: WAY }),
  goTo: () => Promise.resolve({ kind: 'failed', message: WAY }),
  listen: () => Promise.resolve({ kind: 'failed', message: WAY }),
};
