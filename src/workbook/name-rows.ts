import { type IdentifierMaker, keyOf } from '../core/identifier.ts';
import type { LotRecord, Records, Row } from '../core/records.ts';
import { setCell, textCell } from './cell-write.ts';
import { RECORD_TABLES } from './known-tables.ts';
import type { LocatedTable } from './located-table.ts';
import type { Change } from './port.ts';
import type { WorkbookReading } from './read-workbook.ts';
import { identifierColumn, type TableDefinition } from './table-definition.ts';
import { stockTable } from './tables-stock.ts';

/** Records of which every row has an identifier, and the changes that write the new ones. */
export interface NamedRecords {
  readonly records: Records;
  readonly changes: readonly Change[];
}

/** Gives an identifier to every filled row that has none of its own. */
export function nameRows(reading: WorkbookReading, newIdentifier: IdentifierMaker): NamedRecords {
  const changes: Change[] = [];
  const named = <R extends Row>(rows: readonly R[], definition: TableDefinition): readonly R[] => {
    const own = identifierColumn(definition);
    const { letter } = definition;
    if (own === null || letter === null) return rows;
    const { field, header } = own;
    return rows.map((row) => {
      const table = reading.tables.get(row.place.table.toLowerCase());
      if (table === undefined || !isWritable(table, header, row) || fieldOf(row, field) !== null) return row;
      const identifier = newIdentifier(letter);
      changes.push(...setCell(table, row.place.row, header, textCell(identifier)));
      return { ...row, [field]: identifier };
    });
  };
  const records = Object.fromEntries(
    Object.entries(RECORD_TABLES).map(([field, definition]) => [
      field,
      named(
        reading.records[field as keyof typeof RECORD_TABLES] as readonly Row[],
        definition as TableDefinition,
      ),
    ]),
  );
  const lots: readonly LotRecord[] = named(reading.records.lots, stockTable(''));
  // Each field keeps its own rows, of which only the identifier was filled in.
  return { records: { ...records, lots } as unknown as Records, changes };
}

function fieldOf(row: Row, field: string): unknown {
  return (row as unknown as Record<string, unknown>)[field];
}

function isWritable(table: LocatedTable, header: string, row: Row): boolean {
  const column = table.columns.get(header)?.column;
  return column !== undefined && !column.hasFormula(row.place.row) && !row.unreadable.has(header);
}

/** The keys of everything that a new identifier must differ from: all identifiers, and the postings. */
export function takenIdentifiers({ records, unreadable }: WorkbookReading): ReadonlySet<string> {
  const taken = new Set<string>();
  for (const identifiers of Object.values(unreadable)) for (const key of identifiers) taken.add(key);
  const add = (rows: readonly Row[], definition: TableDefinition): void => {
    const own = identifierColumn(definition);
    if (own === null) return;
    for (const row of rows) {
      const identifier = fieldOf(row, own.field);
      if (typeof identifier === 'string') taken.add(keyOf(identifier));
    }
  };
  for (const [field, definition] of Object.entries(RECORD_TABLES)) {
    add(records[field as keyof typeof RECORD_TABLES], definition as TableDefinition);
  }
  add(records.lots, stockTable(''));
  for (const { posting } of [...records.movements, ...records.lots]) {
    if (posting !== null) taken.add(keyOf(posting));
  }
  return taken;
}
