/** Opening and saving files of the person's disk: with their leave in place, else by picking and downloading. */

/** A file that was opened or is to be saved. */
export interface DiskFile {
  readonly name: string;
  /** Where to write it back, in browsers that can. */
  readonly handle: WritableHandle | null;
}

export interface OpenedFile extends DiskFile {
  readonly bytes: Uint8Array;
}

/** The File System Access API, as far as it is used; not every browser has it. */
interface WritableHandle {
  readonly name: string;
  getFile(): Promise<File>;
  createWritable(): Promise<{ write(data: Uint8Array): Promise<void>; close(): Promise<void> }>;
}

interface PickerWindow {
  showOpenFilePicker?(options: object): Promise<WritableHandle[]>;
  showSaveFilePicker?(options: object): Promise<WritableHandle>;
}

const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
const MACRO_TYPE = 'application/vnd.ms-excel.sheet.macroEnabled.12';
const PICKED = {
  id: 'workbook',
  types: [{ description: 'Workbooks', accept: { [TYPE]: ['.xlsx'], [MACRO_TYPE]: ['.xlsm'] } }],
};

const pickers = (): PickerWindow => window as unknown as PickerWindow;

/** Lets the person pick a workbook; null where they pick none. */
export async function pickFile(): Promise<OpenedFile | null> {
  const pick = pickers().showOpenFilePicker?.bind(window);
  if (!pick) return pickByInput();
  const handle = await unlessCancelled(async () => (await pick(PICKED))[0] ?? null);
  if (!handle) return null;
  const file = await handle.getFile();
  return { name: file.name, handle, bytes: new Uint8Array(await file.arrayBuffer()) };
}

function pickByInput(): Promise<OpenedFile | null> {
  return new Promise((resolve, reject) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.xlsx,.xlsm';
    input.addEventListener('cancel', () => resolve(null));
    input.addEventListener('change', () => {
      const file = input.files?.[0];
      if (!file) return resolve(null);
      file
        .arrayBuffer()
        .then((bytes) => resolve({ name: file.name, handle: null, bytes: new Uint8Array(bytes) }))
        .catch(reject);
    });
    input.click();
  });
}

/** Saves to where the file came from, to a place that is picked, or as a download; null where none is picked. */
export async function saveFile(file: DiskFile, bytes: Uint8Array): Promise<DiskFile | null> {
  const pick = pickers().showSaveFilePicker?.bind(window);
  if (!file.handle && !pick) {
    download(file.name, bytes);
    return file;
  }
  const handle =
    file.handle ??
    (await unlessCancelled(async () => (await pick?.({ ...PICKED, suggestedName: file.name })) ?? null));
  if (!handle) return null;
  const writable = await handle.createWritable();
  await writable.write(bytes);
  await writable.close();
  return { name: handle.name, handle };
}

function download(name: string, bytes: Uint8Array): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: TYPE }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the address after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** A picker that is closed without a choice rejects with this; everything else is a real failure. */
async function unlessCancelled<T>(pick: () => Promise<T>): Promise<T | null> {
  try {
    return await pick();
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
}
