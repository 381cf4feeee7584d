import { isDeepStrictEqual } from 'node:util';
import { serialOfDay } from '../../src/core/serial-date.ts';
import type { WorkbookDescription } from '../../src/office-host/workbook-description.ts';
import {
  type ContractTable,
  type ContractWorkbook,
  workbookContract,
} from '../contract/workbook-contract.ts';
import { type AddIn, hostOver, plain, readSnapshot, writeAll } from './office-bench.ts';

function description(tables: readonly ContractTable[], dateSystem: 1900 | 1904): WorkbookDescription {
  return {
    dateSystem,
    sheets: tables.map(({ name, headers, days, twice, rows, totals }) => ({
      name,
      tables: [
        {
          name,
          at: 'A1',
          columns: headers.map((header) => ({
            name: header,
            ...(days?.includes(header) ? { numberFormat: 'yyyy-mm-dd' } : {}),
            ...(twice?.header === header ? { formula: `=[@${twice.of}]*2` } : {}),
          })),
          rows: rows.map((row) =>
            row.map((cell) => {
              if (cell.kind === 'day') {
                return { value: serialOfDay(cell.day, dateSystem), numberFormat: 'yyyy-mm-dd' };
              }
              if (cell.kind === 'number') return cell.number;
              return cell.kind === 'text' ? { value: cell.text, numberFormat: '@' } : null;
            }),
          ),
          ...(totals ? { totals: ['Total', { formula: '=SUBTOTAL(109,[Quantity])', value: 5.1 }] } : {}),
        },
      ],
    })),
  };
}

/** A workbook through the real client; opened again, by another client that knows nothing yet. */
function contractWorkbook(open: () => AddIn): ContractWorkbook {
  const { live } = open();
  return {
    snapshot: () => readSnapshot(live),
    apply: async (changes) => {
      const written = await writeAll(live, changes);
      const read = await readSnapshot(live);
      if (!isDeepStrictEqual(plain(written), plain(read))) {
        throw new Error(
          `What was said to stand is not what is read:\n${JSON.stringify(plain(written))}\n${JSON.stringify(plain(read))}`,
        );
      }
    },
    reopen: () => contractWorkbook(open),
  };
}

for (const dateSystem of [1900, 1904] as const) {
  workbookContract(`Office.js, on our host, counting from ${dateSystem}`, (tables) =>
    contractWorkbook(hostOver(description(tables, dateSystem)).open),
  );
}
