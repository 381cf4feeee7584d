import { createXlsx } from '../files/new-xlsx.ts';
import { starterBlueprint } from './starter-blueprint.ts';

/** The starter workbook as a file. */
export function starterWorkbook(): Uint8Array {
  return createXlsx(starterBlueprint());
}
