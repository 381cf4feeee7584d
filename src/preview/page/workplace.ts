import { signal } from '@preact/signals';
import { copyOfFile } from '../../files/copy-of-file.ts';
import { FileRefused } from '../../files/file-refused.ts';
import type { LiveWorkbook } from '../../workbook/live-workbook.ts';
import type { PreviewPort } from '../../workbook/preview-port.ts';
import type { CopyOutcome, HandOverOutcome } from '../../workbook/workbook-copy.ts';
import type { GridSource } from '../model/grid-source.ts';
import { Today } from '../model/today.ts';
import { Workbench } from '../model/workbench.ts';
import { type DiskFile, type OpenedFile, pickFile, saveFile } from './disk-files.ts';

/** How a workbook file becomes what the grid shows and the pane works on. */
export interface OpenWorkbook {
  readonly source: GridSource;
  readonly gate: LiveWorkbook;
  /** Lets go of what it follows, when another workbook takes its place. */
  readonly close: () => void;
}

/** @param fileName what the file is called */
export type WorkbookOpener = (bytes: Uint8Array, bench: () => Workbench, fileName: string) => OpenWorkbook;

/** The first file, as the server gives it. */
export interface FirstFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** The sample studio's own day; null for any other file. */
  readonly day: string | null;
}

/** The page's whole state: the file that is open, its workbench, the day, and what the pane is given. */
export class Workplace {
  readonly bench: Workbench;
  readonly today = new Today(() => new Date());
  readonly file = signal<DiskFile>({ name: '', handle: null });
  /** Grows with every workbook that is opened, so that the pane begins anew with it. */
  readonly paneNumber = signal(0);
  readonly #first: FirstFile;
  readonly #open: WorkbookOpener;
  #opened: OpenWorkbook;

  constructor(first: FirstFile, open: WorkbookOpener) {
    this.#first = first;
    this.#open = open;
    this.#opened = open(first.bytes, () => this.bench, first.name);
    this.bench = new Workbench(this.#opened.source);
    this.#begin({ name: first.name, handle: null }, first.day);
  }

  /** What the pane in the frame finds. */
  port(): PreviewPort {
    const gate = (): LiveWorkbook => this.#opened.gate;
    return {
      get workbook() {
        return gate();
      },
      copy: () => Promise.resolve(this.#copy()),
      today: () => this.today.day.value,
      onToday: (listener) => this.today.onChange(listener),
      registerFunctions: (evaluate) => this.bench.registerFunctions(evaluate),
    };
  }

  /** Saves a workbook that the pane has made, where the person wants it. */
  async saveNew(bytes: Uint8Array): Promise<void> {
    await this.#told('saved', async () => {
      const file = await saveFile({ name: 'New workbook.xlsx', handle: null }, bytes);
      if (file) this.bench.say('news', `${file.name} saved.`);
    });
  }

  #copy(): CopyOutcome {
    const saved = this.bench.source.value.save();
    if (saved.kind === 'refused') return { kind: 'failed', message: saved.message };
    return copyOfFile(saved.bytes, this.file.value.name, saveCopy);
  }

  /** Shows the first file again, as it was. */
  startAgain(): void {
    this.#show({ name: this.#first.name, handle: null, bytes: this.#first.bytes }, this.#first.day);
  }

  async openFromDisk(): Promise<void> {
    await this.#told('opened', async () => {
      const picked = await pickFile();
      if (picked) this.#show(picked, null);
    });
  }

  async save(): Promise<void> {
    const source = this.bench.source.value;
    const state = source.state();
    const saved = source.save();
    if (saved.kind === 'refused') {
      this.bench.say('problem', saved.message);
      return;
    }
    await this.#told('saved', async () => {
      const file = await saveFile(this.file.value, saved.bytes);
      // Another workbook may have been opened while the person was asked where to save.
      if (!file || this.bench.source.value !== source) return;
      this.file.value = file;
      this.bench.saved(state);
      this.bench.say('news', `${file.name} saved.`);
    });
  }

  #show(file: OpenedFile, day: string | null): void {
    try {
      const opened = this.#open(file.bytes, () => this.bench, file.name);
      this.#opened.close();
      this.#opened = opened;
      this.bench.open(opened.source);
      this.#begin(file, day);
    } catch (error) {
      if (!(error instanceof FileRefused)) throw error;
      this.bench.say('problem', `${file.name} was not opened. ${error.message}`);
    }
  }

  #begin({ name, handle }: DiskFile, day: string | null): void {
    this.file.value = { name, handle };
    this.today.set(day ?? this.today.machineDay());
    this.paneNumber.value++;
    this.bench.say('news', `${name} is open.`);
  }

  /** The browser and the disk may refuse for reasons of their own, which are told as they tell them. */
  async #told(what: string, act: () => Promise<void>): Promise<void> {
    try {
      await act();
    } catch (error) {
      if (!(error instanceof DOMException)) throw error;
      this.bench.say('problem', `The file could not be ${what}: ${error.message}`);
    }
  }
}

async function saveCopy(bytes: Uint8Array, name: string): Promise<HandOverOutcome> {
  try {
    const file = await saveFile({ name, handle: null }, bytes);
    return file === null ? { kind: 'cancelled' } : { kind: 'saved', name: file.name };
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    return { kind: 'failed', message: `The new workbook could not be saved: ${error.message}` };
  }
}
