import { isoDay } from '../../core/day.ts';
import { type DateSystem, dayOfSerial } from '../../core/serial-date.ts';
import type { ShownCell } from '../../files/tab-cells.ts';
import type { TypedCell } from '../../files/typed-cell.ts';
import type { Cell } from '../../office-host/memory-workbook.ts';
import type { CellDescription, CellLiteral } from '../../office-host/workbook-description.ts';
import { lookOfCode } from '../../workbook/number-formats.ts';
import type { CellValue } from '../../workbook/port.ts';

const ERROR = /^#(?:N\/A|NAME\?|REF!|VALUE!|DIV\/0!|NUM!|NULL!|CALC!|SPILL!|BUSY!|GETTING_DATA)$/;
/** What the host puts into a formula's cell of which it knows no result. */
const NO_RESULT = '#CALC!';

/** A cell of the file as it is described to the host. */
export function describedCell({ value, formula, format }: ShownCell): CellLiteral {
  const plain = typeof value === 'object' && value !== null ? value.shown : value;
  if (formula === null && format === 'General') return plain;
  const isUnknown = formula !== null && typeof plain === 'string' && plain.startsWith('=');
  const described: CellDescription = {
    ...(isUnknown ? {} : { value: plain }),
    ...(formula === null ? {} : { formula: `=${formula}` }),
    numberFormat: format,
  };
  return described;
}

/** A cell of the host as the grid shows it. */
export function shownHostCell(column: number, cell: Cell): ShownCell {
  const formula = cell.formula === undefined ? null : cell.formula.replace(/^=/, '');
  return {
    column,
    value: valueIn(cell, formula),
    formula,
    format: cell.numberFormat,
    look: lookOfCode(cell.numberFormat),
  };
}

function valueIn({ value }: Cell, formula: string | null): CellValue {
  if (value === '') return null;
  if (formula !== null && value === NO_RESULT) return { shown: `=${formula}` };
  return typeof value === 'string' && ERROR.test(value) ? { shown: value } : value;
}

/** What a person would type at the host's cell to get this. */
export function hostInput(cell: TypedCell, before: ShownCell | undefined): string | number | boolean {
  switch (cell.kind) {
    case 'blank':
      return '';
    case 'text':
      return cell.text === '' ? '' : `'${cell.text}`;
    case 'number':
      return cell.number;
    case 'boolean':
      return cell.value;
    case 'percent':
      return before?.look === 'percent' ? cell.number : `${Number((cell.number * 100).toPrecision(15))}%`;
    case 'day':
      return isoDay(cell.day);
    case 'formula':
      return `=${cell.formula}`;
  }
}

/** What is to be written into the file for a cell as the host has it. */
export function typedOf(cell: ShownCell | undefined, dateSystem: DateSystem): TypedCell {
  if (!cell) return { kind: 'blank' };
  const { value, formula, look } = cell;
  if (formula !== null) return { kind: 'formula', formula };
  if (value === null) return { kind: 'blank' };
  if (typeof value === 'object') return { kind: 'text', text: value.shown };
  if (typeof value === 'boolean') return { kind: 'boolean', value };
  if (typeof value === 'string') return { kind: 'text', text: value };
  const day = look === 'date' && Number.isInteger(value) ? dayOfSerial(value, dateSystem) : null;
  if (day !== null) return { kind: 'day', day };
  return look === 'percent' ? { kind: 'percent', number: value } : { kind: 'number', number: value };
}

/** Whether two cells hold the same: a formula counts by what it says, not by its result. */
export function holdsSame(a: ShownCell | undefined, b: ShownCell | undefined): boolean {
  const formula = a?.formula ?? null;
  if (formula !== (b?.formula ?? null)) return false;
  return formula !== null || plainValue(a) === plainValue(b);
}

function plainValue(cell: ShownCell | undefined): string | number | boolean | null {
  const value = cell?.value ?? null;
  if (value === '') return null;
  return typeof value === 'object' && value !== null ? value.shown : value;
}
