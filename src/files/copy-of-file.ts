import type { CopyOutcome, HandOverOutcome } from '../workbook/workbook-copy.ts';
import { FileRefused } from './file-refused.ts';
import { openXlsx } from './xlsx-workbook.ts';

/**
 * A copy of a workbook file in memory.
 * @param fileName the file's name; null where it has none yet
 * @param handOver is given the changed copy's bytes and the name for it
 */
export function copyOfFile(
  bytes: Uint8Array,
  fileName: string | null,
  handOver: (bytes: Uint8Array, name: string) => Promise<HandOverOutcome>,
): CopyOutcome {
  try {
    const workbook = openXlsx(bytes);
    return {
      kind: 'copied',
      copy: {
        fileName,
        snapshot: workbook.snapshot(),
        handOver: async (changes, removed, name) => {
          try {
            workbook.apply(changes);
            workbook.removeRowsOf(removed);
            // The bytes are made here, so that what the file can't hold is told before anybody is asked for a place.
            const saved = workbook.save();
            return await handOver(saved, workbook.macroEnabled ? name.replace(/\.xlsx$/i, '.xlsm') : name);
          } catch (error) {
            return refusal(error);
          }
        },
      },
    };
  } catch (error) {
    return refusal(error);
  }
}

/** What the file can't do is told; everything else is a mistake and is thrown on. */
function refusal(error: unknown): { readonly kind: 'failed'; readonly message: string } {
  if (!(error instanceof FileRefused)) throw error;
  return { kind: 'failed', message: error.message };
}
