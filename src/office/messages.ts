/** The code by which the program says what went wrong; '' where it gave none. */
export function errorCode(error: unknown): string {
  if (typeof error !== 'object' || error === null || !('code' in error)) return '';
  return typeof error.code === 'string' ? error.code : '';
}

const EDITING = 'InvalidOperationInCellEditMode';
const REQUEST_TOO_LARGE = 'RequestPayloadSizeLimitExceeded';
const RESPONSE_TOO_LARGE = 'ResponsePayloadSizeLimitExceeded';
const TOO_MANY_CELLS = 'RangeExceedsLimit';

/** Whether an answer would have been larger than the program sends. */
export function isAnswerTooLarge(error: unknown): boolean {
  return [RESPONSE_TOO_LARGE, TOO_MANY_CELLS].includes(errorCode(error));
}

/** Whether a request was refused before any of it was carried out. */
export function isRefusedWhole(error: unknown): boolean {
  return [EDITING, REQUEST_TOO_LARGE].includes(errorCode(error));
}

const SENTENCES: Readonly<Record<string, string>> = {
  [EDITING]: 'A cell is being edited: finish with Enter, or leave it with Esc, and try again.',
  AccessDenied:
    "The workbook can't be written to: it is open read-only, or a tab of it is protected. " +
    'Enable editing, or lift the protection, and try again.',
  [REQUEST_TOO_LARGE]: 'That is more than can be written at once. Do it in smaller steps.',
  [RESPONSE_TOO_LARGE]:
    'A row of a table holds more text than can be read at once. Shorten its longest cells.',
  InsertDeleteConflict:
    "Rows can't be put in below the table, because that would tear another table apart: " +
    'move one of the two to a tab of its own.',
  ApiNotFound: 'This version of the spreadsheet program is too old for Jarleaf: update it.',
  RequestAborted: 'The spreadsheet program broke off the work. Try again.',
  Timeout: 'The spreadsheet program took too long to answer. Try again.',
  ConnectionFailure: 'The connection to the workbook is lost. Try again when it is back.',
};

/**
 * What a person is told of an error of the spreadsheet program, with what to do.
 * @param doing what was being done: 'Reading the workbook'
 */
export function plainMessage(error: unknown, doing: string): string {
  const known = SENTENCES[errorCode(error)];
  if (known !== undefined) return known;
  const said = error instanceof Error ? error.message.trim() : '';
  return `${doing} did not work${said === '' ? '.' : `. The spreadsheet program says: ${said}`}`;
}
