import { createXlsx } from '../../src/files/new-xlsx.ts';
import { openXlsx, type XlsxWorkbook } from '../../src/files/xlsx-workbook.ts';
import { type ContractWorkbook, workbookContract } from '../contract/workbook-contract.ts';
import { contractBlueprint } from '../helpers/contract-blueprint.ts';

function contractWorkbook(workbook: XlsxWorkbook): ContractWorkbook {
  return {
    snapshot: () => workbook.snapshot(),
    apply: (changes) => workbook.apply(changes),
    reopen: () => contractWorkbook(openXlsx(workbook.save())),
  };
}

workbookContract('an .xlsx file', (tables) =>
  contractWorkbook(openXlsx(createXlsx(contractBlueprint(tables, 1900)))),
);
workbookContract('an .xlsx file that counts from 1904', (tables) =>
  contractWorkbook(openXlsx(createXlsx(contractBlueprint(tables, 1904)))),
);
