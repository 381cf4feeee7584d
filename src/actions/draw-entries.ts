import type { Day } from '../core/day.ts';
import { drawAll } from '../core/draw.ts';
import type { Random } from '../core/identifier.ts';
import { quantityCell } from '../workbook/cell-write.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { drawnCells } from '../workbook/written-cells.ts';
import { movementChanges, newPosting, openMovements, type Refusal, type Written } from './writing-desk.ts';

/**
 * Draws down the log entries that are not drawn yet, or in part only, up to today.
 * @param only the rows of the treatment log to which this is confined; all where not given
 */
export function drawEntries(
  snapshot: WorkbookSnapshot,
  today: Day,
  random: Random,
  by: string | null = null,
  only: ReadonlySet<number> | null = null,
): Written | Refusal {
  const desk = openMovements(snapshot, today, random, ['Entry']);
  if (!desk.ok) return desk;
  const { movementsTable } = desk;
  const drawing = drawAll(
    desk.ledger,
    today,
    desk.newIdentifier,
    ({ record }) => only === null || only.has(record.place.row),
  );
  const posting = newPosting(desk, movementsTable, drawing.movements);
  const marks = drawing.entries.flatMap(({ entry, drawn, extent }) =>
    drawnCells(desk.tables, entry, drawn, quantityCell(extent)),
  );
  const written = movementChanges(desk, movementsTable, drawing.ledger, drawing.movements, {
    name: posting,
    by,
  });
  return { ok: true, posting, drawing, changes: [...desk.changes, ...marks, ...written], remarks: [] };
}
