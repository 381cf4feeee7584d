import type { WorkbookBlueprint } from '../../src/workbook/blueprint.ts';
import type { ContractTable } from '../contract/workbook-contract.ts';

/** The workbook that the contract asks for, as a blueprint. */
export function contractBlueprint(
  tables: readonly ContractTable[],
  dateSystem: 1900 | 1904,
): WorkbookBlueprint {
  const tabs = tables.map(({ name, headers, days, twice, rows, totals }) => ({
    name,
    table: {
      name,
      columns: headers.map((header) => ({
        header,
        width: 12,
        format: days?.includes(header) ? ('day' as const) : ('number' as const),
        ...(twice?.header === header ? { formula: `${name}[[#This Row],[${twice.of}]]*2` } : {}),
      })),
      rows,
      ...(totals ? { totals: { label: 'Total', sums: ['Quantity'] } } : {}),
    },
  }));
  return { tabs, dateSystem };
}
