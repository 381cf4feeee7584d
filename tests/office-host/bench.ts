import {
  createMemoryWorkbook,
  createOfficeHost,
  type HostClient,
  type OfficeHost,
  type OfficeHostOptions,
} from '../../src/office-host/office-host.ts';
import type { WorkbookDescription } from '../../src/office-host/workbook-description.ts';
import { type LoadedExcel, loadExcel } from '../helpers/office-client.ts';

export interface Client extends HostClient {
  readonly Excel: LoadedExcel['Excel'];
  readonly OfficeExtension: LoadedExcel['OfficeExtension'];
  readonly CustomFunctions: LoadedExcel['CustomFunctions'];
}

export interface Bench {
  readonly host: OfficeHost;
  readonly a: Client;
  readonly connect: (id: string) => Client;
}

/** Two tables, one of them with a calculated column and a totals row; and a sheet with nothing on it. */
export const STUDIO: WorkbookDescription = {
  sheets: [
    {
      name: 'Stock',
      tables: [
        {
          name: 'Lots',
          at: 'B3',
          columns: ['Lot', 'Material', { name: 'Quantity', numberFormat: '0.00' }],
          rows: [
            ['L-1', 'Tissue', 12],
            ['L-2', 'Starch', 3],
          ],
        },
      ],
    },
    {
      name: 'My sums',
      tables: [
        {
          name: 'Sums',
          at: 'A1',
          columns: ['Item', 'Price', { name: 'Twice', formula: '=[@Price]*2' }],
          rows: [
            ['pen', 2],
            ['ink', 3],
          ],
          totals: ['Total', null, { formula: '=SUBTOTAL(109,[Twice])', value: 10 }],
        },
      ],
    },
    { name: 'Blank' },
  ],
};

/** A host over a workbook, and one client with the real library. */
export function bench(options: OfficeHostOptions = {}, description = STUDIO): Bench {
  const host = createOfficeHost(createMemoryWorkbook(description), options);
  const connect = (id: string): Client => {
    const client = host.connect(id);
    const { Excel, OfficeExtension, CustomFunctions } = loadExcel(client.bridge, {
      sets: host.requirementSets,
    });
    return { ...client, Excel, OfficeExtension, CustomFunctions };
  };
  return { host, a: connect('a'), connect };
}

/** Lets all that is under way arrive. */
export const settle = async (): Promise<void> => {
  for (let turn = 0; turn < 5; turn++) await new Promise((resolve) => setTimeout(resolve, 1));
};

/** The values of a range, read by the real client. */
export const valuesOf = async ({ Excel }: Client, sheet: string, address: string): Promise<unknown[][]> =>
  Excel.run(async (context) => {
    const range = context.workbook.worksheets.getItem(sheet).getRange(address).load('values');
    await context.sync();
    return range.values;
  });

/** The body of a table, read by the real client. */
export const bodyOf = async ({ Excel }: Client, table: string): Promise<unknown[][]> =>
  Excel.run(async (context) => {
    const range = context.workbook.tables.getItem(table).getDataBodyRange().load('values');
    await context.sync();
    return range.values;
  });
