import { CONTENT_TYPES_PART } from './content-types.ts';
import { FileRefused } from './file-refused.ts';
import type { PackageParts } from './package-parts.ts';

const ZIP_START = [0x50, 0x4b];
const COMPOUND_FILE_START = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];

/** Refuses what is plainly no workbook of the newer kind, by its first bytes. */
export function refuseOtherContainers(bytes: Uint8Array): void {
  if (bytes.length === 0)
    throw new FileRefused('The file is empty. Take the last good copy of the workbook.');
  if (startsWith(bytes, COMPOUND_FILE_START)) throw compoundFile(bytes);
  if (!startsWith(bytes, ZIP_START)) {
    throw new FileRefused(
      'The file is no .xlsx workbook, whatever its name says. Open it in your spreadsheet program and save it ' +
        'as an Excel workbook (.xlsx).',
    );
  }
}

function compoundFile(bytes: Uint8Array): FileRefused {
  if (holdsName(bytes, 'EncryptedPackage')) {
    return new FileRefused(
      'The workbook is protected by a password for opening. Save a copy without that password and use the copy.',
    );
  }
  if (holdsName(bytes, 'Workbook') || holdsName(bytes, 'Book')) {
    return new FileRefused(
      'The file is a workbook of the old kind (.xls). Open it in your spreadsheet program and save it as .xlsx.',
    );
  }
  return new FileRefused(
    'The file is no .xlsx workbook: it is either protected by a password or of an older kind (.xls). Save a copy ' +
      'as .xlsx without a password and use that.',
  );
}

/** Compound files name their streams in UTF-16. */
function holdsName(bytes: Uint8Array, name: string): boolean {
  const wanted = Array.from(`${name}\0`).flatMap((character) => [character.charCodeAt(0), 0]);
  let at = bytes.indexOf(wanted[0] as number);
  for (; at >= 0; at = bytes.indexOf(wanted[0] as number, at + 1)) {
    if (wanted.every((byte, index) => bytes[at + index] === byte)) return true;
  }
  return false;
}

function startsWith(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((byte, index) => bytes[index] === byte);
}

const WORKBOOK_TYPES = /(?:spreadsheetml|ms-excel)\.(sheet(?:\.macroEnabled)?)\.main\+xml$/;

/**
 * Refuses packages that hold something else than a workbook of this kind.
 * @returns whether the workbook holds macros
 */
export function refuseOtherPackages(parts: PackageParts, workbookPart: string | undefined): boolean {
  if (!parts.has(CONTENT_TYPES_PART) && parts.find('mimetype')?.includes('opendocument')) {
    throw new FileRefused(
      'The file is an OpenDocument file (.ods), not an .xlsx workbook. Open it in your spreadsheet program and ' +
        'save it as an Excel workbook (.xlsx).',
    );
  }
  const type = parts.has(CONTENT_TYPES_PART) && workbookPart ? parts.contentType(workbookPart) : undefined;
  if (type?.includes('sheet.binary')) {
    throw new FileRefused(
      'The file is a binary workbook (.xlsb). Open it in your spreadsheet program and save it as .xlsx.',
    );
  }
  if (type?.includes('template')) {
    throw new FileRefused(
      'The file is a template for workbooks. Make a workbook from it, save that as .xlsx, and use it.',
    );
  }
  const kind = WORKBOOK_TYPES.exec(type ?? '')?.[1];
  if (kind === undefined) {
    throw new FileRefused(
      'The file holds no workbook: it is a zip file of another kind. Choose the .xlsx file that your materials are in.',
    );
  }
  return kind.includes('macro');
}
