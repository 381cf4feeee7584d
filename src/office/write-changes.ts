import { columnLetters } from '../workbook/address.ts';
import type { WriteOutcome } from '../workbook/live-workbook.ts';
import type { Change, RowChange, WorkbookSnapshot } from '../workbook/port.ts';
import { withChanges } from '../workbook/with-changes.ts';
import { addColumns, type ColumnChange } from './add-columns.ts';
import { bodyRowOf, hasGrown, mend, needsMending } from './mend.ts';
import { isRefusedWhole, plainMessage } from './messages.ts';
import { planWrites } from './plan-writes.ts';
import { type ReadingMemory, readTables } from './read-tables.ts';
import { refreshFormulas } from './refresh-formulas.ts';
import { roomFor } from './room-below.ts';
import { bytesPerRow } from './round-trips.ts';
import { cellsAmiss, metSomethingElse, runTrip, type StepDone, type StepToRun } from './run-trip.ts';
import { takeBack } from './take-back.ts';
import { type VerifiedTable, verifyBasis } from './verify-basis.ts';
import type { Standing } from './what-stands.ts';
import type { WithWorkbook } from './with-workbook.ts';
import { writeSteps, writeTrips } from './write-steps.ts';
import { writtenSnapshot } from './written-snapshot.ts';

const WRITING = 'Writing to the workbook';
const READING = 'Reading the workbook';

/**
 * Carries out changes. New columns come first, and go again where the rest can't be written.
 */
export async function writeChanges(
  withWorkbook: WithWorkbook,
  memory: ReadingMemory,
  changes: readonly Change[],
  basis: WorkbookSnapshot,
): Promise<WriteOutcome> {
  const columns = changes.filter((change): change is ColumnChange => change.kind === 'add column');
  const rest = changes.filter((change): change is RowChange => change.kind !== 'add column');
  if (columns.length === 0) return writeRows(withWorkbook, memory, rest, basis);
  const added = await addColumns(withWorkbook, columns, basis);
  if (added.kind === 'failed') return added;
  if (added.kind !== 'added') return readAfter(withWorkbook, memory, basis, added);
  const widened = withChanges(basis, columns);
  const outcome = await writeRows(withWorkbook, memory, rest, widened);
  // What stands in the new columns is read, not reckoned: the program may have dressed them in its own way.
  if (outcome.kind === 'written') return readAfter(withWorkbook, memory, widened, outcome);
  if (outcome.kind === 'half') return outcome;
  const standing = await added.takeBack();
  if (standing !== null) {
    const message = outcome.kind === 'failed' ? `${outcome.message} ${standing}` : standing;
    return readAfter(withWorkbook, memory, widened, { kind: 'half', message });
  }
  return outcome.kind === 'failed' ? outcome : readAfter(withWorkbook, memory, basis, outcome);
}

/** An outcome with what stands in the workbook now; where that can't be read, with what was known of it. */
async function readAfter(
  withWorkbook: WithWorkbook,
  memory: ReadingMemory,
  known: WorkbookSnapshot,
  outcome: { readonly kind: 'written' | 'stale' } | { readonly kind: 'half'; readonly message: string },
): Promise<WriteOutcome> {
  try {
    return { ...outcome, snapshot: await readTables(withWorkbook, memory) };
  } catch (error) {
    const why = `The workbook could not be read again: ${plainMessage(error, READING)}`;
    const message = outcome.kind === 'half' ? `${outcome.message} ${why}` : why;
    return { kind: 'half', snapshot: known, message };
  }
}

/**
 * Carries out changes of rows: one round trip to see that the workbook is as the basis says, one for each 4 MB to write and
 * read back, and one more where tables hold formulas. What went wrong is taken back.
 */
async function writeRows(
  withWorkbook: WithWorkbook,
  memory: ReadingMemory,
  changes: readonly RowChange[],
  basis: WorkbookSnapshot,
): Promise<WriteOutcome> {
  const plan = planWrites(changes, basis);
  if (!plan.ok) return { kind: 'failed', message: plan.message };
  if (plan.tables.length === 0) return { kind: 'written', snapshot: basis };
  try {
    const verified = await verifyBasis(withWorkbook, plan.tables);
    if (verified.kind === 'refused') return { kind: 'failed', message: verified.message };
    if (verified.kind === 'stale') {
      return { kind: 'stale', snapshot: await readTables(withWorkbook, memory) };
    }
    return await new Writing(withWorkbook, memory, basis).run(verified.tables);
  } catch (error) {
    return { kind: 'failed', message: plainMessage(error, WRITING) };
  }
}

/** Why writing was broken off. */
type Broken = { readonly kind: 'stale' } | { readonly kind: 'failed'; readonly message: string };

/** One writing of changes to a workbook. */
class Writing {
  readonly #withWorkbook: WithWorkbook;
  readonly #memory: ReadingMemory;
  readonly #basis: WorkbookSnapshot;
  /** Steps that were sent off, whether or not they were carried out. */
  readonly #sent: StepToRun[] = [];
  readonly #done = new Map<StepToRun['step'], StepDone>();

  constructor(withWorkbook: WithWorkbook, memory: ReadingMemory, basis: WorkbookSnapshot) {
    this.#withWorkbook = withWorkbook;
    this.#memory = memory;
    this.#basis = basis;
  }

  async run(tables: readonly VerifiedTable[]): Promise<WriteOutcome> {
    const byPlan = new Map(tables.map((table) => [table.plan, table]));
    const { dateSystem } = this.#basis;
    const trips = writeTrips(writeSteps(tables.map(({ plan }) => plan))).map((trip) =>
      trip.flatMap((step): StepToRun[] => {
        const table = byPlan.get(step.plan);
        return table === undefined ? [] : [{ step, table, room: roomFor(table, this.#basis), dateSystem }];
      }),
    );
    const broken = await this.#writeAll(trips);
    return broken === null ? this.#written() : this.#takenBack(broken);
  }

  async #writeAll([trip, ...rest]: readonly (readonly StepToRun[])[]): Promise<Broken | null> {
    if (trip === undefined) return null;
    return (await this.#write(trip)) ?? this.#writeAll(rest);
  }

  /** Writes the steps of one round trip, and mends what came out otherwise; gives what is wrong for good. */
  async #write(trip: readonly StepToRun[]): Promise<Broken | null> {
    try {
      const isFirst = this.#sent.length === 0;
      this.#sent.push(...trip);
      let done: StepDone[];
      try {
        done = await runTrip(this.#withWorkbook, trip);
      } catch (error) {
        if (isFirst && isRefusedWhole(error)) this.#sent.length = 0;
        throw error;
      }
      this.#keep(done);
      if (done.some(metSomethingElse)) return { kind: 'stale' };
      if (!done.some(needsMending)) return null;
      const mended = await mend(this.#withWorkbook, done);
      this.#keep(mended);
      const amiss = mended.find(needsMending);
      return amiss === undefined ? null : { kind: 'failed', message: whatIsAmiss(amiss) };
    } catch (error) {
      return { kind: 'failed', message: plainMessage(error, WRITING) };
    }
  }

  #keep(steps: readonly StepDone[]): void {
    for (const each of steps) {
      this.#done.set(each.step, each);
      const { sizes } = this.#memory;
      const perRow = 2 * bytesPerRow(each.values) + bytesPerRow(each.numberFormats);
      const before = sizes.get(each.table.id)?.bytesPerRow ?? 0;
      sizes.set(each.table.id, { rows: each.body.rows, bytesPerRow: Math.max(before, perRow) });
    }
  }

  async #written(): Promise<WriteOutcome> {
    const written = writtenSnapshot(
      this.#basis,
      this.#sent.flatMap(({ step }) => this.#done.get(step) ?? []),
    );
    try {
      const fresh = written === null ? null : await refreshFormulas(this.#withWorkbook, written);
      return { kind: 'written', snapshot: fresh ?? (await readTables(this.#withWorkbook, this.#memory)) };
    } catch (error) {
      const message = `All of it was written, but the workbook could not be read again: ${plainMessage(error, READING)}`;
      return { kind: 'half', snapshot: written ?? this.#basis, message };
    }
  }

  async #takenBack(broken: Broken): Promise<WriteOutcome> {
    const why = broken.kind === 'failed' ? broken.message : 'Somebody else wrote to the same rows.';
    let left: string;
    try {
      const standing =
        this.#sent.length === 0 ? [] : await takeBack(this.#withWorkbook, this.#sent, this.#done);
      if (standing.length === 0) {
        if (broken.kind === 'failed') return broken;
        return { kind: 'stale', snapshot: await readTables(this.#withWorkbook, this.#memory) };
      }
      left = `Of what was written, this stands still: ${standing.map(whereItStands).join('; ')}.`;
    } catch (error) {
      left = `What was written could not be taken back: ${plainMessage(error, WRITING)}`;
    }
    const message = `${why} ${left}`;
    try {
      return { kind: 'half', snapshot: await readTables(this.#withWorkbook, this.#memory), message };
    } catch {
      // The workbook can't be read either; what is known of it is the basis, and the message says what is in doubt.
      return { kind: 'half', snapshot: this.#basis, message };
    }
  }
}

function whereItStands({ step, at }: Standing): string {
  const { table } = step.step.plan;
  const row = table.firstRow + at;
  const rows = step.step.cells.length;
  return `${table.name}, on the tab ${table.tab}, ${rows === 1 ? `row ${row}` : `rows ${row} to ${row + rows - 1}`}`;
}

function whatIsAmiss(done: StepDone): string {
  const { table } = done.step.plan;
  if (!hasGrown(done)) {
    return `The table ${table.name} did not take in the rows below it, so nothing was written. Enlarge it by a row, and try again.`;
  }
  const [cell] = cellsAmiss(done);
  if (cell === undefined)
    return `New rows of ${table.name} did not get the table's formulas, so nothing was written.`;
  const left = done.step.place === 'below' ? 0 : done.step.column;
  const column = columnLetters(table.firstColumn + left + cell.column);
  const shown = String(done.values[cell.row]?.[cell.column]);
  return (
    `${column}${table.firstRow + bodyRowOf(done) + cell.row} of the tab ${table.tab} holds “${shown}” instead of what ` +
    'was to stand there, so nothing was written. See whether something corrects what is typed there.'
  );
}
