import { createXlsx, type XlsxBlueprint } from '../../src/files/new-xlsx.ts';
import { openXlsx, type XlsxWorkbook } from '../../src/files/xlsx-workbook.ts';
import {
  type ContractTable,
  type ContractWorkbook,
  workbookContract,
} from '../contract/workbook-contract.ts';

function contractWorkbook(workbook: XlsxWorkbook): ContractWorkbook {
  return {
    snapshot: () => workbook.snapshot(),
    apply: (changes) => workbook.apply(changes),
    reopen: () => contractWorkbook(openXlsx(workbook.save())),
  };
}

function blueprint(tables: readonly ContractTable[], dateSystem: 1900 | 1904): XlsxBlueprint {
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

workbookContract('an .xlsx file', (tables) =>
  contractWorkbook(openXlsx(createXlsx(blueprint(tables, 1900)))),
);
workbookContract('an .xlsx file that counts from 1904', (tables) =>
  contractWorkbook(openXlsx(createXlsx(blueprint(tables, 1904)))),
);
