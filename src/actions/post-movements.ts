import { post } from '../core/ledger.ts';
import type { Movement } from '../core/movement.ts';
import type { LocatedTable } from '../workbook/located-table.ts';
import { movementChanges, newPosting, type WritingDesk, type Written } from './writing-desk.ts';

/** Posts movements that belong to no log entry under one posting, and brings the written cells of their lots up to date. */
export function postMovements(
  desk: WritingDesk & { readonly movementsTable: LocatedTable },
  movements: readonly Movement[],
  by: string | null,
  remarks: readonly string[] = [],
): Written {
  const { movementsTable } = desk;
  const ledger = post(desk.ledger, movements);
  const posting = newPosting(desk, movementsTable, movements);
  return {
    ok: true,
    posting,
    drawing: { ledger, movements, entries: [], shortfalls: [] },
    changes: [
      ...desk.changes,
      ...movementChanges(desk, movementsTable, ledger, movements, { name: posting, by }),
    ],
    remarks,
  };
}
