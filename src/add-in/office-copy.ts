import { fileNameIn } from '../office/file-name.ts';
import { plainMessage } from '../office/messages.ts';
import type { CopyOutcome, HandOverOutcome } from '../workbook/workbook-copy.ts';

const NO_FILE =
  'This spreadsheet program does not hand the workbook’s file to add-ins. Save a copy of the workbook, and carry it ' +
  'over with the command line or in the preview.';
const MACROS =
  'A workbook with macros can’t be opened as a new one from here. Save it, and carry it over with the command line or ' +
  'in the preview.';

/**
 * Copies the workbook that is open in the spreadsheet program: its file is asked for, and the changed copy opened in a
 * window of its own, where the person saves it. By the documentation of Document.getFileAsync Excel hands out its file
 * on Windows and Mac, not on the web.
 */
export async function copyOfficeWorkbook(): Promise<CopyOutcome> {
  if (!Office.context.requirements.isSetSupported('CompressedFile')) {
    return { kind: 'failed', message: NO_FILE };
  }
  const file = await openFile();
  if (file.status !== Office.AsyncResultStatus.Succeeded) return failed(file.error);
  try {
    const read = await bytesOf(file.value);
    if (read.kind === 'failed') return read;
    const { copyOfFile } = await import('../files/copy-of-file.ts');
    return copyOfFile(read.bytes, fileNameIn(Office.context.document.url), openNew);
  } finally {
    await new Promise<void>((resolve) => {
      file.value.closeAsync(() => {
        resolve();
      });
    });
  }
}

function openFile(): Promise<Office.AsyncResult<Office.File>> {
  return new Promise((resolve) => {
    Office.context.document.getFileAsync(Office.FileType.Compressed, resolve);
  });
}

type FileRead =
  | { readonly kind: 'read'; readonly bytes: Uint8Array }
  | Extract<CopyOutcome, { kind: 'failed' }>;

/** The slices one after the other: the program answers no second question meanwhile. */
function bytesOf(file: Office.File): Promise<FileRead> {
  const bytes = new Uint8Array(file.size);
  const readFrom = async (index: number, at: number): Promise<FileRead> => {
    if (index === file.sliceCount) return { kind: 'read', bytes };
    const slice = await new Promise<Office.AsyncResult<Office.Slice>>((resolve) => {
      file.getSliceAsync(index, resolve);
    });
    if (slice.status !== Office.AsyncResultStatus.Succeeded) return failed(slice.error);
    const data = slice.value.data as ArrayLike<number>;
    bytes.set(data, at);
    return readFrom(index + 1, at + data.length);
  };
  return readFrom(0, 0);
}

function failed({ message }: Office.Error): Extract<CopyOutcome, { kind: 'failed' }> {
  return {
    kind: 'failed',
    message: `The spreadsheet program did not hand out the workbook’s file: ${message} Save the workbook and do it again.`,
  };
}

async function openNew(bytes: Uint8Array, name: string): Promise<HandOverOutcome> {
  if (/\.xlsm$/i.test(name)) return { kind: 'failed', message: MACROS };
  try {
    await Excel.createWorkbook(await base64Of(bytes));
    return { kind: 'opened' };
  } catch (error) {
    return { kind: 'failed', message: plainMessage(error, 'Opening the new workbook') };
  }
}

function base64Of(bytes: Uint8Array): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.addEventListener('load', () => {
      const address = typeof reader.result === 'string' ? reader.result : '';
      resolve(address.slice(address.indexOf(',') + 1));
    });
    reader.addEventListener('error', () => {
      reject(reader.error ?? new Error('The workbook’s bytes could not be read.'));
    });
    reader.readAsDataURL(new Blob([bytes as Uint8Array<ArrayBuffer>]));
  });
}
