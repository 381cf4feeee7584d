/** The number that the client library gives the event of a pressed button, and the call that says that it is over. */
const COMMAND_INVOKED = 39;
const COMMAND_COMPLETED = 94;
const DONE = 0;

type Handler = (event: number, payload: unknown) => void;
type Callback = (result: unknown) => void;

/** The part of a window of the program that the client library calls for the buttons of the ribbon. */
interface ProgramWindow {
  RegisterEvent: (id: number, target: string, handler: Handler, callback: Callback) => void;
  Execute: (id: number, parameters: unknown, callback: Callback) => void;
}

/** The buttons of the ribbon that run code of the page; the client library looks the code up by its name. */
export interface Ribbon {
  /** Presses a button; resolves once the page has said that its command is over. */
  press(command: string): Promise<void>;
}

/** What the older interface hands over: an array that has to be asked for. */
function listOf(values: readonly unknown[]): { toArray: () => readonly unknown[] } {
  return { toArray: () => values };
}

/**
 * Adds the ribbon to the window of a program, before the client library loads there. The library itself finds the
 * code that was associated with the name and makes the event that the code completes.
 */
export function addRibbon(program: ProgramWindow): Ribbon {
  const { RegisterEvent, Execute } = program;
  const waiting = new Map<string, () => void>();
  let invoke: Handler | null = null;
  let count = 0;
  program.RegisterEvent = (id, target, handler, callback) => {
    if (id === COMMAND_INVOKED) invoke = handler;
    RegisterEvent(id, target, handler, callback);
  };
  program.Execute = (id, parameters, callback) => {
    if (id !== COMMAND_COMPLETED) {
      Execute(id, parameters, callback);
      return;
    }
    const [command] = parameters as readonly unknown[];
    waiting.get(String(command))?.();
    waiting.delete(String(command));
    callback(listOf([DONE]));
  };
  return {
    press: (command) => {
      if (invoke === null) throw new Error('The client library does not listen to the ribbon.');
      count += 1;
      const id = `command-${count}`;
      const over = new Promise<void>((resolve) => {
        waiting.set(id, resolve);
      });
      invoke(COMMAND_INVOKED, listOf([id, command, JSON.stringify({ source: { id: command } })]));
      return over;
    },
  };
}
