/**
 * A file that can't be read, or a change that can't be made to it without damage.
 * The message is a sentence for the user: what is wrong, and what to do.
 */
export class FileRefused extends Error {
  override readonly name = 'FileRefused';
}

/** A workbook whose inner structure contradicts itself; `detail` says where. */
export function damaged(detail: string): FileRefused {
  return new FileRefused(
    `The workbook is damaged: ${detail}. Open it in your spreadsheet program, let it repair the file, ` +
      'and save it again, or take the last good copy.',
  );
}
