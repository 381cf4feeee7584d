import type { Day } from '../core/day.ts';
import type { Random } from '../core/identifier.ts';
import type { Lot } from '../core/studio.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { withChanges } from '../workbook/with-changes.ts';
import { lotCells } from '../workbook/written-cells.ts';
import { findLot } from './find-lot.ts';
import { type LotCell, writeLotCells } from './lot-cells.ts';
import { openDesk, type Refusal, type WritingDesk, type Written } from './writing-desk.ts';

/** A lot whose row was changed, as it is now. */
export type ChangedLot = Written & { readonly lot: Lot };

/** Writes cells of a lot's own row, and brings what depends on them (Good until) up to date. No movement is written. */
export function changeLot(
  snapshot: WorkbookSnapshot,
  desk: WritingDesk,
  lot: Lot,
  cells: readonly LotCell[],
  { today, random }: { readonly today: Day; readonly random: Random },
): ChangedLot | Refusal {
  const written = writeLotCells(desk, lot, cells);
  if ('ok' in written) return written;
  const changes = [...desk.changes, ...written.changes];
  const after = openDesk(withChanges(snapshot, changes), today, random);
  if (!after.ok) return after;
  const changed = findLot(after.ledger.studio, lot.name);
  if ('ok' in changed) return changed;
  return {
    ok: true,
    posting: null,
    lot: changed,
    drawing: { ledger: after.ledger, movements: [], entries: [], shortfalls: [] },
    changes: [...changes, ...lotCells(after.tables, after.ledger, [changed], today)],
    remarks: written.remarks,
  };
}
