import type { Day } from '../core/day.ts';
import type { Drawing } from '../core/draw.ts';
import { identifierMaker, keyOf, type Random } from '../core/identifier.ts';
import type { Lot } from '../core/studio.ts';
import { RECORD_TABLES } from '../workbook/known-tables.ts';
import type { LocatedTable } from '../workbook/located-table.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { draftBatch } from './batch-draft.ts';
import { findPour, pouredRequest } from './batch-pour.ts';
import type { BatchPlan, BatchToMake } from './batch-to-make.ts';
import { booksOf } from './books.ts';
import { type LoggedEntry, logAtDesk } from './log-treatment.ts';
import { lotRowChanges, tableForLot } from './new-lot.ts';
import { provisionalRandom } from './plan-treatment.ts';
import {
  movementChanges,
  openMovements,
  type Refusal,
  tableNamed,
  type WritingDesk,
  type Written,
} from './writing-desk.ts';

export type { BatchPart } from '../core/batch.ts';
export type { BatchPlan, BatchPour, BatchToMake } from './batch-to-make.ts';

/**
 * Works out what making a batch would take, from which lots, at what cost, and how long it would keep. Nothing is
 * written, and the figures are those that making it would give, but for an odd coin between movements of one lot on
 * one day.
 */
export function planBatch(snapshot: WorkbookSnapshot, request: BatchToMake, today: Day): BatchPlan | Refusal {
  const { ledger } = booksOf(snapshot);
  const draft = draftBatch(ledger, request, today, identifierMaker(provisionalRandom(), new Set()));
  if (!draft.ok) return draft;
  const plan = { ...draft.plan, remarks: [...draft.plan.remarks, ...unreadParts(snapshot)] };
  if (request.pour === null) return plan;
  const named = findPour(draft, pouredRequest(draft, request.pour, request.by));
  return named.ok ? plan : named;
}

/** A batch that was made, and what was written for it. */
export type MadeBatch = Written & { readonly lot: Lot; readonly plan: BatchPlan };

/**
 * Makes a batch: its ingredients leave their lots by Make movements, and the new lot arrives in its stock table, with
 * what was weighed in the end and the cost of what was taken. It is made whatever the stock says; what no lot covers
 * stands in the plan's parts and in the lot's Notes. Where it is poured out at once, the treatment is logged under
 * the same posting, and takes it from the new lot.
 */
export function makeBatch(
  snapshot: WorkbookSnapshot,
  request: BatchToMake,
  today: Day,
  random: Random,
): MadeBatch | Refusal {
  const { pour } = request;
  const desk = openMovements(snapshot, today, random, pour === null ? ['Into'] : ['Into', 'Entry']);
  if (!desk.ok) return desk;
  const { movementsTable } = desk;
  const named = movementsTable.columns.has('Posting');
  const draft = draftBatch(desk.ledger, request, today, desk.newIdentifier, (isAnyWritten) =>
    named && (isAnyWritten || pour !== null) ? desk.newIdentifier('P') : null,
  );
  if (!draft.ok) return draft;
  const stockTable = tableForLot(desk, draft.lot.material);
  if ('ok' in stockTable) return stockTable;
  const nothing: Drawing = { ledger: draft.ledger, entries: [], movements: [], shortfalls: [] };
  const logged =
    pour === null
      ? { drawing: nothing, rows: [], remarks: [] }
      : logPour(desk, draft, pouredRequest(draft, pour, request.by));
  if ('ok' in logged) return logged;

  const { drawing } = logged;
  const movements = [...draft.movements, ...drawing.movements];
  const { posting } = draft.lot.record;
  const own = { name: posting, by: request.by };
  return {
    ok: true,
    posting,
    drawing: { ...drawing, movements },
    lot: draft.lot,
    plan: draft.plan,
    changes: [
      ...desk.changes,
      ...lotRowChanges(desk, stockTable, drawing.ledger, draft.lot),
      ...logged.rows,
      ...movementChanges(desk, movementsTable, drawing.ledger, movements, own),
    ],
    remarks: [
      ...draft.plan.remarks,
      ...unreadParts(snapshot),
      ...notKept(stockTable, draft.lot),
      ...logged.remarks,
    ],
  };
}

function logPour(
  desk: WritingDesk,
  draft: Parameters<typeof findPour>[0],
  request: Parameters<typeof findPour>[1],
): LoggedEntry | Refusal {
  const log = tableNamed(desk, 'TreatmentLog');
  if ('ok' in log) return log;
  const named = findPour(draft, request);
  return named.ok ? logAtDesk(desk, log, draft.ledger, request, named) : named;
}

/** A remark where rows of RecipeParts can't be worked out: an ingredient may be among them. */
function unreadParts(snapshot: WorkbookSnapshot): string[] {
  const { name } = RECORD_TABLES.recipeParts;
  const rows = booksOf(snapshot).notices.flatMap(({ code, at: { place } }) =>
    (code === 'unreadable' || code === 'unknown-reference') && keyOf(place.table) === keyOf(name)
      ? [place.sheetRow]
      : [],
  );
  const named = [...new Set(rows)].toSorted((a, b) => a - b).join(', ');
  return named === ''
    ? []
    : [
        `What these rows of ${name} say can't be worked out, so an ingredient may be left out: ${named}. See check.`,
      ];
}

/** What of the new lot its stock table has no column for. */
function notKept(table: LocatedTable, { record }: Lot): string[] {
  const held = {
    Recipe: record.recipe,
    Cost: record.cost,
    'Use by': record.useBy,
    Place: record.storedAt,
    Notes: record.notes,
  };
  const lost = Object.entries(held).flatMap(([header, value]) =>
    value === null || table.columns.has(header) ? [] : [header],
  );
  return lost.map(
    (header) =>
      `The table ${table.snapshot.name} has no column ${header}, so what belongs there of the new lot is not kept: ` +
      `add the column and fill it in.`,
  );
}
