import { type Day, spokenDay } from '../core/day.ts';
import { type Drawing, drawEntry } from '../core/draw.ts';
import { entryStatus } from '../core/entry-needs.ts';
import { keyOf, type Random } from '../core/identifier.ts';
import type { Ledger } from '../core/ledger.ts';
import type { Entry } from '../core/studio.ts';
import { withEntry } from '../core/with-entry.ts';
import { appendRows, dayCell, quantityCell, textCell } from '../workbook/cell-write.ts';
import type { LocatedTable } from '../workbook/located-table.ts';
import type { Change, WorkbookSnapshot } from '../workbook/port.ts';
import { entryRecordOf, findNamed, type NamedTreatment, type TreatmentToLog } from './treatment-to-log.ts';
import {
  movementChanges,
  newPosting,
  openDesk,
  type Refusal,
  refuse,
  tableNamed,
  type WritingDesk,
  type Written,
} from './writing-desk.ts';

/** Adds an entry to the treatment log and draws its materials down. An entry of a later day is kept, and waits. */
export function logTreatment(
  snapshot: WorkbookSnapshot,
  request: TreatmentToLog,
  today: Day,
  random: Random,
): Written | Refusal {
  const desk = openDesk(snapshot, today, random);
  if (!desk.ok) return desk;
  const log = tableNamed(desk, 'TreatmentLog');
  if ('ok' in log) return log;
  const movementsTable = tableNamed(desk, 'Movements', ['Entry']);
  if ('ok' in movementsTable) return movementsTable;
  const named = findNamed(desk.ledger.studio, request);
  if (!named.ok) return named;
  const logged = logAtDesk(desk, log, desk.ledger, request, named);
  if ('ok' in logged) return logged;
  const { drawing } = logged;
  const posting = newPosting(desk, movementsTable, drawing.movements);
  const own = { name: posting, by: request.by };
  return {
    ok: true,
    posting,
    drawing,
    changes: [
      ...desk.changes,
      ...logged.rows,
      ...movementChanges(desk, movementsTable, drawing.ledger, drawing.movements, own),
    ],
    remarks: logged.remarks,
  };
}

/** An entry of the treatment log that is drawn down, and the change that writes its row. */
export interface LoggedEntry {
  readonly drawing: Drawing;
  readonly rows: readonly Change[];
  readonly remarks: readonly string[];
}

/**
 * Draws a new entry of the treatment log down; its movements are still to be written.
 * @param ledger the desk's own, or that with what is written in the same go
 */
export function logAtDesk(
  desk: WritingDesk,
  log: LocatedTable,
  ledger: Ledger,
  request: TreatmentToLog,
  named: NamedTreatment,
): LoggedEntry | Refusal {
  const record = entryRecordOf(request, named, desk.newIdentifier('E'), log.snapshot.name);
  const { ledger: before, entry } = withEntry(ledger, record, named.treatment, named.asUsed);
  const waits = entryStatus(before, entry, desk.today) === 'waiting';
  if (waits && request.asUsed.length > 0) {
    return refuse(
      `The treatment is dated ${spokenDay(record.date)}, after today, so nothing is used for it yet: ` +
        `leave out the amounts used, or give the day on which it was done.`,
    );
  }
  const drawing: Drawing = waits
    ? {
        ledger: before,
        entries: [{ entry, drawn: null, extent: record.extent }],
        movements: [],
        shortfalls: [],
      }
    : drawEntry(before, entry, desk.today, desk.newIdentifier);
  const drawn = drawing.entries[0]?.drawn ?? null;
  const entryRow = {
    entry: textCell(record.entry),
    date: dayCell(record.date),
    job: textCell(record.job),
    item: textCell(record.item),
    treatment: textCell(record.treatment),
    extent: quantityCell(record.extent),
    minutes: quantityCell(record.minutes),
    by: textCell(request.by),
    notes: textCell(record.notes),
    drawn: textCell(drawn),
    drawnFor: quantityCell(drawn === null ? null : record.extent),
  };
  return {
    drawing,
    rows: appendRows(log, [entryRow]),
    remarks: [
      ...(waits
        ? [`The entry is dated ${spokenDay(record.date)}, after today, so it is kept and not drawn yet.`]
        : []),
      ...(record.notes !== null && !log.columns.has('Notes')
        ? ['The treatment log has no column Notes, so what you said besides the extent is not kept there.']
        : []),
      ...sameUndrawn(desk, entry),
    ],
  };
}

/** A remark where the log holds the same treatment already, undrawn: taken back before, perhaps, and now logged again. */
function sameUndrawn(desk: WritingDesk, logged: Entry): string[] {
  const { studio } = desk.ledger;
  const same = studio.entries.find(
    (entry) =>
      entry.treatment === logged.treatment &&
      entry.record.date === logged.record.date &&
      keyOf(entry.record.job) === keyOf(logged.record.job) &&
      keyOf(entry.record.item ?? '') === keyOf(logged.record.item ?? '') &&
      entryStatus(desk.ledger, entry, desk.today) === 'not drawn',
  );
  if (same === undefined) return [];
  return [
    `Entry ${same.name} is the same treatment of the same job and day, and not drawn. If it is this one, delete its row ` +
      `from the treatment log; else draw will draw it as well.`,
  ];
}
