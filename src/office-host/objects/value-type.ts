import type { CellScalar } from '../workbook-description.ts';

const ERROR =
  /^#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|CALC!|SPILL!|FIELD!|BLOCKED!|BUSY!|GETTING_DATA)$/;

export const isErrorValue = (value: CellScalar): boolean => typeof value === 'string' && ERROR.test(value);

/** The type of a value as the program names it. */
export function valueType(value: CellScalar): 'Empty' | 'String' | 'Double' | 'Boolean' | 'Error' {
  if (value === '') return 'Empty';
  if (typeof value === 'number') return 'Double';
  if (typeof value === 'boolean') return 'Boolean';
  return isErrorValue(value) ? 'Error' : 'String';
}
