import { createXlsx } from '../../src/files/new-xlsx.ts';
import { openXlsx, type XlsxWorkbook } from '../../src/files/xlsx-workbook.ts';
import { type ChartWorkbook, chartContract } from '../contract/chart-contract.ts';
import { chartsIn } from '../helpers/charts-in-file.ts';
import { contractBlueprint } from '../helpers/contract-blueprint.ts';
import { checkPackage } from './closed-package.ts';
import { checkFile } from './well-formed.ts';

function chartWorkbook(workbook: XlsxWorkbook): ChartWorkbook {
  const saved = (): Uint8Array => {
    const bytes = workbook.save();
    checkFile(bytes);
    checkPackage(bytes);
    return bytes;
  };
  return {
    snapshot: () => workbook.snapshot(),
    addTabs: (tabs) => workbook.addTabs(tabs),
    charts: () => chartsIn(saved()),
    reopen: () => chartWorkbook(openXlsx(saved())),
  };
}

for (const dateSystem of [1900, 1904] as const) {
  chartContract(`an .xlsx file that counts from ${dateSystem}`, (tables) =>
    chartWorkbook(openXlsx(createXlsx(contractBlueprint(tables, dateSystem)))),
  );
}
