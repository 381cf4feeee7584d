import type { Day } from '../core/day.ts';
import { drawEntry } from '../core/draw.ts';
import { entryNeeds } from '../core/entry-needs.ts';
import type { Random } from '../core/identifier.ts';
import { type Ledger, markPart, standingFor } from '../core/ledger.ts';
import { stillNeeded } from '../core/still-needed.ts';
import type { Entry } from '../core/studio.ts';
import { quantityCell } from '../workbook/cell-write.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { drawnCells, type Tables } from '../workbook/written-cells.ts';
import {
  movementChanges,
  newPosting,
  openMovements,
  type Refusal,
  refuse,
  type Written,
} from './writing-desk.ts';

/** A log entry of which a posting was written only in part: some movements stand, others don't, nor is it marked. */
export interface HalfDrawn {
  readonly entry: Entry;
  readonly posting: string;
}

/**
 * The entries whose drawing broke off while it was being written: movements of a posting stand, some that are needed
 * don't, and Drawn is blank, which is written last. Without a column Drawn that can't be told.
 */
export function halfDrawn(ledger: Ledger, tables: Tables, today: Day): HalfDrawn[] {
  if (tables.get('treatmentlog')?.columns.has('Drawn') !== true) return [];
  return ledger.studio.entries.flatMap((entry) => {
    if (entry.key === null || entry.record.drawn !== null || entry.record.unreadable.has('Drawn')) return [];
    const standing = standingFor(ledger, entry.key, today);
    const posting = standing
      .map(({ movement }) => movement.record?.posting ?? null)
      .find((each) => each !== null);
    if (posting == null) return [];
    const isShort = stillNeeded(ledger, entry, entryNeeds(ledger, entry, today), today).some(
      ({ missing }) => missing.compare(0) > 0,
    );
    return isShort ? [{ entry, posting }] : [];
  });
}

/** Draws what the half-drawn entries of a posting still lack, and marks them. */
export function finishDrawing(
  snapshot: WorkbookSnapshot,
  posting: string,
  today: Day,
  random: Random,
): Written | Refusal {
  const desk = openMovements(snapshot, today, random, ['Entry']);
  if (!desk.ok) return desk;
  const { movementsTable } = desk;
  const halves = halfDrawn(desk.ledger, desk.tables, today).filter((each) => each.posting === posting);
  if (halves.length === 0) return refuse('Nothing of this posting is missing any more.');
  let { ledger } = desk;
  const drawings = halves.map(({ entry }) => {
    const drawing = drawEntry(markPart(ledger, entry.key ?? '', true), entry, today, desk.newIdentifier);
    ledger = drawing.ledger;
    return drawing;
  });
  const movements = drawings.flatMap((drawing) => drawing.movements);
  const entries = drawings.flatMap((drawing) => drawing.entries);
  const name = newPosting(desk, movementsTable, movements);
  return {
    ok: true,
    posting: name,
    drawing: { ledger, movements, entries, shortfalls: drawings.flatMap(({ shortfalls }) => shortfalls) },
    changes: [
      ...desk.changes,
      ...movementChanges(desk, movementsTable, ledger, movements, { name, by: null }),
      ...entries.flatMap(({ entry, drawn, extent }) =>
        drawnCells(desk.tables, entry, drawn, quantityCell(extent)),
      ),
    ],
    remarks: [],
  };
}
