import type { TableSnapshot, WorkbookSnapshot } from '../workbook/port.ts';
import { cellValue } from './cell-values.ts';
import { errorCode } from './messages.ts';
import { inTurn, roundTrips, type Weighed } from './round-trips.ts';
import { dataOfTable, snapshotOfTable } from './table-data.ts';
import type { WithWorkbook } from './with-workbook.ts';

/** Rows of a column with formulas that are read again. */
interface Piece extends Weighed {
  readonly table: TableSnapshot;
  readonly column: number;
  readonly from: number;
  readonly count: number;
}

const BYTES_PER_VALUE = 24;
const ROWS_PER_PIECE = 100_000;

/**
 * Reads again what formulas give, after something was written that they may depend on.
 * @returns null where a table is no longer as the snapshot says
 */
export async function refreshFormulas(
  withWorkbook: WithWorkbook,
  snapshot: WorkbookSnapshot,
): Promise<WorkbookSnapshot | null> {
  const pieces = snapshot.tables.flatMap(piecesOf);
  if (pieces.length === 0) return snapshot;
  const fresh = new Map<Piece, readonly (readonly unknown[])[]>();
  try {
    await inTurn(roundTrips(pieces), (trip) => readPieces(withWorkbook, trip, fresh));
  } catch (error) {
    if (errorCode(error) === 'ItemNotFound') return null;
    throw error;
  }
  if (fresh.size < pieces.length) return null;
  return {
    ...snapshot,
    tables: snapshot.tables.map((table) => {
      const own = pieces.filter((piece) => piece.table === table);
      return own.length === 0 ? table : withFresh(table, own, fresh);
    }),
  };
}

function piecesOf(table: TableSnapshot): Piece[] {
  const rows = Array.from({ length: table.rowCount }, (_, row) => row);
  return table.columns.flatMap((each, column) => {
    if (!rows.some((row) => each.hasFormula(row))) return [];
    return Array.from({ length: Math.ceil(table.rowCount / ROWS_PER_PIECE) }, (_, index): Piece => {
      const from = index * ROWS_PER_PIECE;
      const count = Math.min(ROWS_PER_PIECE, table.rowCount - from);
      return { table, column, from, count, bytes: count * BYTES_PER_VALUE };
    });
  });
}

/** Reads pieces in one round trip; those whose table has moved are left out. */
function readPieces(
  withWorkbook: WithWorkbook,
  pieces: readonly Piece[],
  fresh: Map<Piece, readonly (readonly unknown[])[]>,
): Promise<void> {
  return withWorkbook(async (context) => {
    const queued = pieces.map(({ table, column, from, count }) => {
      const body = context.workbook.tables.getItem(table.name).getDataBodyRange();
      body.load('rowIndex,columnIndex,rowCount');
      return {
        body,
        cells: body
          .getCell(from, column)
          .getResizedRange(count - 1, 0)
          .load('values'),
      };
    });
    await context.sync();
    for (const [index, piece] of pieces.entries()) {
      const found = queued[index];
      const { firstRow, firstColumn, rowCount } = piece.table;
      if (
        found?.body.rowIndex === firstRow - 1 &&
        found.body.columnIndex === firstColumn - 1 &&
        found.body.rowCount === rowCount
      ) {
        fresh.set(piece, found.cells.values);
      }
    }
  });
}

function withFresh(
  table: TableSnapshot,
  pieces: readonly Piece[],
  fresh: ReadonlyMap<Piece, readonly (readonly unknown[])[]>,
): TableSnapshot {
  const data = dataOfTable(table);
  for (const piece of pieces) {
    const column = data.columns[piece.column];
    for (const [index, [value]] of (fresh.get(piece) ?? []).entries()) {
      const row = piece.from + index;
      if (column?.formulas[row]) column.values[row] = cellValue(value, true, undefined);
    }
  }
  return snapshotOfTable(data);
}
