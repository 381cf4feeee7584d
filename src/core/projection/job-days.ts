import { addDays, type Day, spokenDay } from '../day.ts';
import { keyOf } from '../identifier.ts';
import { readyDaysOf } from '../make-plan/ready-days.ts';
import type { JobProblem, JobRow } from '../planning/plan-problem.ts';
import { counted } from '../wording.ts';

/**
 * The day on which the last of a job's treatments has dried or been pressed; what is overdue or has no day counts as
 * done today.
 * @returns null where no treatment has a day
 */
export function readyOnOf(today: Day, { rows }: JobProblem): Day | null {
  if (rows.every(({ plannedFor }) => plannedFor === null)) return null;
  return rows.reduce<Day>((latest, row) => {
    const free = freeFrom(row, dayOf(row, today));
    return free > latest ? free : latest;
  }, today);
}

/**
 * What of a job's days doesn't fit, in sentences for a person: a treatment while the item still stands from another,
 * and a due day that comes before it is ready. Treatments of one day may be done in whichever order fits, so only a
 * second one that must stand is in the way there; one without a day never is.
 */
export function dayObstacles(today: Day, problem: JobProblem): string[] {
  const { job, due, rows } = problem;
  const clashes = rows.flatMap((earlier, place) =>
    rows.flatMap((later, other) => clash(today, { row: earlier, place }, { row: later, place: other }) ?? []),
  );
  const readyOn = readyOnOf(today, problem);
  const isLate = due !== null && rows.length > 0 && (readyOn ?? today) > due;
  if (!isLate) return [...new Set(clashes)];
  const isDue = `${job} ${due < today ? 'was' : 'is'} due on ${spokenDay(due)}`;
  const late =
    readyOn === null
      ? `${isDue}; still to be done: ${counted(rows.length, 'treatment')}.`
      : `${isDue}, but as planned it is ready on ${spokenDay(readyOn)}.`;
  return [...new Set(clashes), late];
}

interface PlacedRow {
  readonly row: JobRow;
  readonly place: number;
}

/** Why one treatment can't be done on its day because of one planned before it or for the same day; null where it can. */
function clash(today: Day, earlier: PlacedRow, later: PlacedRow): string | null {
  const [first, second] = [earlier.row, later.row];
  if (first.plannedFor === null || second.plannedFor === null || !areOfOneItem(first, second)) return null;
  const isSameDay = first.plannedFor === second.plannedFor;
  if (first.plannedFor > second.plannedFor || (isSameDay && earlier.place >= later.place)) return null;
  if (isSameDay && (isOneWork(first, second) || readyDaysOf(second.standingHours) === 0)) return null;
  const free = freeFrom(first, dayOf(first, today));
  if (dayOf(second, today) >= free) return null;
  const item = second.item ?? first.item;
  const of = item === null ? '' : ` of ${item}`;
  return (
    `${second.treatment}${of} is planned for ${spokenDay(second.plannedFor)}, but ${first.treatment}, ` +
    `${plannedWords(first.plannedFor, today)}, stands for ${counted(first.standingHours, 'hour')}: ` +
    `it fits from ${spokenDay(free)} on.`
  );
}

function plannedWords(plannedFor: Day, today: Day): string {
  const planned = `planned for ${spokenDay(plannedFor)}`;
  return plannedFor < today ? `${planned} and still to be done` : planned;
}

/** Whether two treatments touch the same object; one that names no item is done to all of the job. */
function areOfOneItem(a: JobRow, b: JobRow): boolean {
  return a.item === null || b.item === null || keyOf(a.item) === keyOf(b.item);
}

/** Two rows of one treatment on one day are done together. */
function isOneWork(a: JobRow, b: JobRow): boolean {
  return keyOf(a.treatment) === keyOf(b.treatment);
}

/** The day on which a treatment is done at the earliest. */
function dayOf({ plannedFor }: JobRow, today: Day): Day {
  return plannedFor === null || plannedFor < today ? today : plannedFor;
}

/** The first day on which something else can be done to what was treated on a day. */
function freeFrom({ standingHours }: JobRow, day: Day): Day {
  return addDays(day, readyDaysOf(standingHours));
}
