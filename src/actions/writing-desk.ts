import { keepBooks } from '../core/check.ts';
import type { Day } from '../core/day.ts';
import type { Drawing } from '../core/draw.ts';
import { type IdentifierMaker, identifierMaker, type Random } from '../core/identifier.ts';
import { costIn, type Ledger } from '../core/ledger.ts';
import type { Coins } from '../core/money.ts';
import type { Movement } from '../core/movement.ts';
import {
  appendRows,
  dayCell,
  moneyCell,
  type NewRow,
  quantityCell,
  textCell,
} from '../workbook/cell-write.ts';
import type { LocatedTable } from '../workbook/located-table.ts';
import { nameRows, takenIdentifiers } from '../workbook/name-rows.ts';
import type { Change, WorkbookSnapshot } from '../workbook/port.ts';
import { lotCells, type Tables } from '../workbook/written-cells.ts';
import { booksOf, readingOnly } from './books.ts';

/** What a person asked for can't be done; the message says why and what to do. Nothing was changed. */
export interface Refusal {
  readonly ok: false;
  readonly message: string;
}

/** What a writing action did: what was drawn, under which posting, and the changes that write it down. */
export interface Written {
  readonly ok: true;
  /** Null where no movement was written, or Movements has no column for it. */
  readonly posting: string | null;
  readonly drawing: Drawing;
  readonly changes: readonly Change[];
  /** What the person should know besides. */
  readonly remarks: readonly string[];
}

export function refuse(message: string): Refusal {
  return { ok: false, message };
}

/** A workbook laid out for writing: its ledger, a maker of identifiers, and the changes due before any other. */
export interface WritingDesk {
  readonly ok: true;
  readonly tables: Tables;
  readonly ledger: Ledger;
  readonly newIdentifier: IdentifierMaker;
  /** Identifiers for the rows that had none. */
  readonly changes: readonly Change[];
  readonly today: Day;
}

/** Reads a workbook so that something can be written to it; one with a newer layout is only read, never written. */
export function openDesk(snapshot: WorkbookSnapshot, today: Day, random: Random): WritingDesk | Refusal {
  const books = booksOf(snapshot);
  const { reading } = books;
  const obstacle = readingOnly(reading);
  if (obstacle !== null) return refuse(obstacle);
  const newIdentifier = identifierMaker(random, takenIdentifiers(reading));
  const named = nameRows(reading, newIdentifier);
  const { ledger } =
    named.changes.length === 0 ? books : keepBooks(named.records, reading.settings, reading.unreadable);
  return { ok: true, tables: reading.tables, ledger, newIdentifier, changes: named.changes, today };
}

/** A table that must be there for something to be written to it. */
export function tableNamed(
  desk: Pick<WritingDesk, 'tables'>,
  name: string,
  needed: readonly string[] = [],
): LocatedTable | Refusal {
  const table = desk.tables.get(name.toLowerCase());
  if (table === undefined) {
    return refuse(
      `This workbook has no table ${name} that can be read, and this must be written there: ` +
        `copy the tab ${name} from the starter workbook, or give the table its columns.`,
    );
  }
  const missing = needed.find((header) => !table.columns.has(header));
  if (missing !== undefined) {
    return refuse(
      `The table ${name} has no column ${missing}, without which nobody could tell afterwards what was drawn or ` +
        `taken back: add the column ${missing} to the table.`,
    );
  }
  const calculated = Object.values(table.definition.columns).find(
    ({ header, starred }) => starred && table.columns.get(header)?.column.calculated === true,
  );
  if (calculated !== undefined) {
    return refuse(
      `A formula fills the column ${calculated.header} of the table ${name}, which must be written: ` +
        `delete the formula from that column.`,
    );
  }
  return table;
}

/** A desk at which movements are written: with their table, which must have some columns besides the starred ones. */
export function openMovements(
  snapshot: WorkbookSnapshot,
  today: Day,
  random: Random,
  needed: readonly string[],
): (WritingDesk & { readonly movementsTable: LocatedTable }) | Refusal {
  const desk = openDesk(snapshot, today, random);
  if (!desk.ok) return desk;
  const movementsTable = tableNamed(desk, 'Movements', needed);
  return 'ok' in movementsTable ? movementsTable : { ...desk, movementsTable };
}

/** The name for a new posting; null where there is nothing to post, or no column to keep the name in. */
export function newPosting(
  desk: WritingDesk,
  table: LocatedTable,
  movements: readonly Movement[],
): string | null {
  return movements.length > 0 && table.columns.has('Posting') ? desk.newIdentifier('P') : null;
}

/**
 * The change that appends movements under one posting.
 * @param costOf what a movement costs; null for a lot without a cost
 */
export function movementRows(
  desk: WritingDesk,
  table: LocatedTable,
  movements: readonly Movement[],
  costOf: (movement: Movement) => Coins | null,
  posting: { readonly name: string | null; readonly by: string | null },
): Change[] {
  const { currency } = desk.ledger.studio.settings;
  return appendRows(
    table,
    movements.map(
      (movement): NewRow => ({
        movement: textCell(movement.name),
        date: dayCell(movement.date),
        kind: textCell(movement.kind),
        lot: textCell(movement.lot.name),
        quantity: quantityCell(movement.quantity),
        unit: textCell(movement.unit.name),
        job: textCell(movement.job),
        item: textCell(movement.item),
        entry: textCell(movement.entry),
        lotIs: textCell(movement.lotIs),
        into: textCell(movement.into),
        cost: moneyCell(costOf(movement), currency),
        reverses: textCell(movement.reverses?.name ?? null),
        by: textCell(posting.by),
        posted: dayCell(desk.today),
        posting: textCell(posting.name),
        note: textCell(movement.note),
      }),
    ),
  );
}

/**
 * The changes that write movements under one posting, and bring the written cells of their lots up to date.
 * @param ledger the ledger with the movements in it
 */
export function movementChanges(
  desk: WritingDesk,
  table: LocatedTable,
  ledger: Ledger,
  movements: readonly Movement[],
  posting: { readonly name: string | null; readonly by: string | null },
): Change[] {
  const lots = new Set(movements.map((movement) => movement.lot));
  return [
    ...movementRows(desk, table, movements, (movement) => costIn(ledger, movement), posting),
    ...lotCells(desk.tables, ledger, lots, desk.today),
  ];
}
