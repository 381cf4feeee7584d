import type { Day } from '../core/day.ts';
import { drawEntry } from '../core/draw.ts';
import type { Random } from '../core/identifier.ts';
import { standingFor } from '../core/ledger.ts';
import { reverse } from '../core/undo.ts';
import { quantityCell } from '../workbook/cell-write.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { drawnCells } from '../workbook/written-cells.ts';
import { undoObstacle } from './undo-posting.ts';
import {
  movementChanges,
  newPosting,
  openMovements,
  type Refusal,
  refuse,
  type Written,
} from './writing-desk.ts';

/**
 * Reverses what stands drawn for a log entry and draws it again for what the entry says now, under one posting: for
 * an entry that was edited, or that drew on a lot in which there turned out to be less.
 * @param row the entry's row in the treatment log
 */
export function redrawEntry(
  snapshot: WorkbookSnapshot,
  row: number,
  today: Day,
  random: Random,
  by: string | null = null,
): Written | Refusal {
  const desk = openMovements(snapshot, today, random, ['Entry', 'Reverses']);
  if (!desk.ok) return desk;
  const { movementsTable } = desk;
  const entry = desk.ledger.studio.entries.find(({ record }) => record.place.row === row);
  if (entry === undefined || entry.key === null) {
    return refuse('This row of the treatment log is no entry that can be drawn: see the notices about it.');
  }
  const standing = standingFor(desk.ledger, entry.key, today).map(({ movement }) => movement);
  const obstacle = undoObstacle(desk.ledger, `entry ${entry.name}`, standing);
  if (obstacle !== null) return refuse(obstacle);

  const undoing = reverse(desk.ledger, standing, today, desk.newIdentifier);
  const drawing = drawEntry(undoing.ledger, entry, today, desk.newIdentifier);
  const movements = [...undoing.movements, ...drawing.movements];
  const posting = newPosting(desk, movementsTable, movements);
  const [drawn] = drawing.entries;
  return {
    ok: true,
    posting,
    drawing: { ...drawing, movements },
    changes: [
      ...desk.changes,
      ...drawnCells(desk.tables, entry, drawn?.drawn ?? null, quantityCell(drawn?.extent ?? null)),
      ...movementChanges(desk, movementsTable, drawing.ledger, movements, { name: posting, by }),
    ],
    remarks: [],
  };
}
