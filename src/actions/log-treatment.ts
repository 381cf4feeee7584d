import { type AmountUsed, type AsUsed, notesWithAmounts } from '../core/as-used.ts';
import { type Day, spokenDay } from '../core/day.ts';
import { type Drawing, drawEntry } from '../core/draw.ts';
import { entryStatus } from '../core/entry-needs.ts';
import { type Exact, roundQuantity } from '../core/exact-number.ts';
import { keyOf, type Random } from '../core/identifier.ts';
import type { EntryRecord } from '../core/records.ts';
import { type Entry, type Material, STUDIO_JOB, type Studio, type Treatment } from '../core/studio.ts';
import type { Unit } from '../core/unit.ts';
import { withEntry } from '../core/with-entry.ts';
import { unitFor } from '../core/wording.ts';
import { appendRows, dayCell, quantityCell, textCell } from '../workbook/cell-write.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { noSuchName } from './nearest-name.ts';
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

/** A treatment to be logged, in a person's words. */
export interface TreatmentToLog {
  readonly job: string;
  readonly item: string | null;
  readonly treatment: string;
  readonly extent: Exact;
  readonly date: Day;
  readonly minutes: Exact | null;
  readonly by: string | null;
  readonly notes: string | null;
  readonly asUsed: readonly AmountUsed[];
}

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

  const record = recordOf(request, named, desk.newIdentifier('E'), log.snapshot.name);
  const { ledger, entry } = withEntry(desk.ledger, record, named.treatment, named.asUsed);
  const waits = entryStatus(ledger, entry, today) === 'waiting';
  if (waits && request.asUsed.length > 0) {
    return refuse(
      `The treatment is dated ${spokenDay(record.date)}, after today, so nothing is used for it yet: ` +
        `leave out the amounts used, or give the day on which it was done.`,
    );
  }
  const drawing: Drawing = waits
    ? { ledger, entries: [{ entry, drawn: null, extent: record.extent }], movements: [], shortfalls: [] }
    : drawEntry(ledger, entry, today, desk.newIdentifier);
  const drawn = drawing.entries[0]?.drawn ?? null;
  const posting = newPosting(desk, movementsTable, drawing.movements);
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
    ok: true,
    posting,
    drawing,
    changes: [
      ...desk.changes,
      ...appendRows(log, [entryRow]),
      ...movementChanges(desk, movementsTable, drawing.ledger, drawing.movements, {
        name: posting,
        by: request.by,
      }),
    ],
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

interface Named {
  readonly ok: true;
  readonly job: string;
  readonly item: string | null;
  readonly treatment: Treatment;
  readonly asUsed: readonly AsUsed[];
}

function findNamed(studio: Studio, request: TreatmentToLog): Named | Refusal {
  const job = studio.jobsByKey.get(keyOf(request.job))?.job ?? null;
  const isStudio = keyOf(request.job) === keyOf(STUDIO_JOB);
  if (job === null && !isStudio)
    return noSuchName(
      'job',
      request.job,
      'Jobs',
      studio.jobs.map((each) => each.job ?? ''),
    );
  const treatment = studio.treatmentsByKey.get(keyOf(request.treatment));
  if (treatment === undefined) {
    return noSuchName(
      'treatment',
      request.treatment,
      'Treatments',
      studio.treatments.map(({ name }) => name),
    );
  }
  const items = studio.items
    .filter((each) => keyOf(each.job) === keyOf(request.job))
    .map(({ item }) => item ?? '');
  const item = request.item === null ? null : items.find((each) => keyOf(each) === keyOf(request.item ?? ''));
  if (item === undefined) return noSuchName(`item of job ${request.job}`, request.item ?? '', 'Items', items);
  const asUsed: AsUsed[] = [];
  for (const amount of request.asUsed) {
    const found = findAmount(studio, amount);
    if ('ok' in found) return found;
    asUsed.push(found);
  }
  return { ok: true, job: job ?? STUDIO_JOB, item, treatment, asUsed };
}

function findAmount(studio: Studio, amount: AmountUsed): AsUsed | Refusal {
  const material = studio.materialsByKey.get(keyOf(amount.material));
  if (material === undefined) {
    return noSuchName(
      'material',
      amount.material,
      'Materials',
      studio.materials.map(({ name }) => name),
    );
  }
  if (!material.counted) {
    return refuse(
      `${material.name} is not counted, so no amount of it is drawn: leave out what was used of it.`,
    );
  }
  const lots = studio.lotsOfMaterial.get(material) ?? [];
  const lot = amount.lot === null ? null : lots.find(({ name }) => keyOf(name) === keyOf(amount.lot ?? ''));
  if (lot === undefined) {
    const other = studio.lotsByKey.get(keyOf(amount.lot ?? ''));
    if (other !== undefined) {
      return refuse(`Lot ${other.name} is a lot of ${other.material.name}, not of ${material.name}.`);
    }
    return noSuchName(
      `lot of ${material.name}`,
      amount.lot ?? '',
      'the stock tables',
      lots.map(({ name }) => name),
    );
  }
  if (!converts(material, amount.unit, studio, lot)) {
    return refuse(
      `Nothing says how many ${unitFor('2', material.unit)} one ${amount.unit.name} of ${material.name} is: ` +
        `give the amount in ${unitFor('2', material.unit)}, or add to Materials the fact that links them.`,
    );
  }
  return { material, quantity: roundQuantity(amount.quantity), unit: amount.unit, lot };
}

function converts(material: Material, unit: Unit, studio: Studio, named: AsUsed['lot']): boolean {
  const lots = named === null ? (studio.lotsOfMaterial.get(material) ?? []) : [named];
  return lots.length === 0
    ? material.converter.factor(unit, material.unit) !== null
    : lots.some((lot) => lot.converter.factor(unit, lot.record.unit) !== null);
}

function recordOf(
  request: TreatmentToLog,
  { job, item, treatment, asUsed }: Named,
  identifier: string,
  table: string,
): EntryRecord & { readonly entry: string } {
  return {
    entry: identifier,
    date: request.date,
    job,
    item,
    treatment: treatment.name,
    extent: roundQuantity(request.extent),
    minutes: request.minutes,
    notes: notesWithAmounts(request.notes, asUsed.map(written)),
    drawn: null,
    drawnFor: null,
    place: { table, row: -1, sheetRow: 0 },
    unreadable: new Set(),
  };
}

function written({ material, quantity, unit, lot }: AsUsed): AmountUsed {
  return { material: material.name, quantity, unit, lot: lot?.name ?? null };
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
