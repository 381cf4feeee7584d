import { ROUND_TRIP_BYTES, type Weighed } from './round-trips.ts';

/** A table as the workbook lists it. */
export interface ListedTable {
  readonly id: string;
  readonly name: string;
  readonly tab: string;
  readonly hasTotals: boolean;
}

/** How large a table is, or was when it was last read. */
export interface TableSize {
  readonly rows: number;
  readonly bytesPerRow: number;
}

/** Body rows of a table that are read together. */
export interface Block extends Weighed {
  readonly table: ListedTable;
  readonly from: number;
  readonly count: number;
  /** Whether these are the last rows, with all that have come since the size was taken. */
  readonly toEnd: boolean;
}

/**
 * What a cell weighs in an answer before any was read: its value, its formula and its number format, with the
 * punctuation between them. The demo studio's cells weigh 23 bytes on
 * average; text takes more.
 */
const BYTES_PER_CELL = 40;

/** The size of a table of which nothing but its extent is known. */
export function sizeOf(rows: number, columns: number): TableSize {
  return { rows, bytesPerRow: columns * BYTES_PER_CELL };
}

/** Splits a table into blocks that fit into one answer each. */
export function blocksOf(table: ListedTable, size: TableSize, limit = ROUND_TRIP_BYTES): Block[] {
  const rows = Math.max(1, size.rows);
  const rowsPerBlock = Math.max(1, Math.floor(limit / Math.max(1, size.bytesPerRow)));
  return Array.from({ length: Math.ceil(rows / rowsPerBlock) }, (_, index): Block => {
    const from = index * rowsPerBlock;
    const count = Math.min(rowsPerBlock, rows - from);
    return { table, from, count, toEnd: from + count === rows, bytes: count * size.bytesPerRow };
  });
}

/** A block in two halves; null where it is a single row. */
export function halves(block: Block): readonly [Block, Block] | null {
  if (block.count < 2) return null;
  const first = Math.ceil(block.count / 2);
  const bytes = block.bytes / 2;
  return [
    { ...block, count: first, bytes, toEnd: false },
    { ...block, from: block.from + first, count: block.count - first, bytes },
  ];
}
