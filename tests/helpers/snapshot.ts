import type { DateSystem } from '../../src/core/serial-date.ts';
import type { ColumnSnapshot, TableSnapshot, WorkbookSnapshot } from '../../src/workbook/port.ts';
import type { WorkbookReading } from '../../src/workbook/read-workbook.ts';
import { readWorkbook } from '../../src/workbook/read-workbook.ts';
import { headersOf, type Literal, type LiteralTable, storedValue, tableOf } from './literal.ts';

/** The snapshot of a workbook in memory, as an adapter would give it. */
export function snapshotOf(literal: Literal, dateSystem: DateSystem = 1900): WorkbookSnapshot {
  return {
    dateSystem,
    tables: Object.entries(literal).map(([name, table]) => tableSnapshot(name, tableOf(table), dateSystem)),
  };
}

/** What reading such a workbook gives. */
export function reading(literal: Literal, dateSystem: DateSystem = 1900): WorkbookReading {
  return readWorkbook(snapshotOf(literal, dateSystem));
}

function tableSnapshot(name: string, table: LiteralTable, dateSystem: DateSystem): TableSnapshot {
  const { rows, formulas = {}, tab = name, firstRow = 2, firstColumn = 1, below } = table;
  return {
    name,
    tab,
    firstRow,
    firstColumn,
    rowCount: Math.max(rows.length, 1),
    ...(below === undefined
      ? {}
      : { below: headersOf(name, table).map((header) => storedValue(below[header], dateSystem)) }),
    columns: headersOf(name, table).map((header): ColumnSnapshot => {
      const cells = rows.map((row) => row[header]);
      return {
        header,
        values: cells.map((cell) => storedValue(cell, dateSystem)),
        look: (row) => {
          const cell = cells[row];
          return (cell !== null && typeof cell === 'object' && cell.look) || 'plain';
        },
        hasFormula: (row) => {
          const cell = cells[row];
          return cell !== null && typeof cell === 'object' && cell.formula === true;
        },
        calculated: formulas[header] !== undefined,
      };
    }),
  };
}
