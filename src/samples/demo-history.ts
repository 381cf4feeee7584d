import { addDays, type Day } from '../core/day.ts';
import { exact } from '../core/exact-number.ts';
import { type IdentifierMaker, keyOf, type Random } from '../core/identifier.ts';
import { openLedger } from '../core/ledger.ts';
import type { Lot, Studio } from '../core/studio.ts';
import { DemoBench } from './demo-bench.ts';
import { clearAway, countNearlyUsed, countSome, overdraw, spill, takeByHand, trim } from './demo-by-hand.ts';
import { dayOf, startOfRound } from './demo-jobs.ts';
import { type DemoEntry, weekdayFrom } from './demo-log.ts';
import type { DemoLot } from './demo-lots.ts';

/** Fourteen months at the bench, gone through day by day. */

/** The day of the demonstration, a Monday; by its evening everything has been counted. */
export const TODAY = dayOf('2026-11-16');
const FIRST_DAY = dayOf('2025-09-15');
const SPILT = dayOf('2026-11-09');
const OVERDRAWN = dayOf('2026-11-11');
/** From here on pots that have gone off were not cleared away any more. */
const NOT_CLEARED_SINCE = dayOf('2026-11-05');
const HOW_MANY_MOVEMENTS = 1000;
const COUNTED_A_ROUND = 20;
const ROUNDS_COUNTED = 13;
/** Every so many entries one was drawn by mistake, taken back and drawn again. */
const ENTRIES_A_MISTAKE = 30;

export interface HistoryInput {
  readonly studio: Studio;
  readonly entries: readonly DemoEntry[];
  readonly lots: readonly DemoLot[];
  readonly newIdentifier: IdentifierMaker;
  readonly random: Random;
}

/** Goes through the history and gives the bench as it then stands. */
export function keepHistory({ studio, entries, lots, newIdentifier, random }: HistoryInput): DemoBench {
  const bench = new DemoBench(openLedger(studio, []), newIdentifier);
  const lotNamed = (name: string): Lot => found(studio.lotsByKey.get(keyOf(name)), name);
  const lotOfRole = (role: DemoLot['role']): Lot =>
    lotNamed(
      found(
        lots.find((lot) => lot.role === role),
        role,
      ).lot,
    );
  const stocktakes = new Set(
    Array.from({ length: ROUNDS_COUNTED }, (_, round) => weekdayFrom(addDays(startOfRound(round + 1), -3))),
  );
  for (let day = FIRST_DAY; day <= TODAY; day = addDays(day, 1)) {
    if (weekdayFrom(day) === day && day < NOT_CLEARED_SINCE) clearAway(bench, day);
    for (const { lot, times, received } of lots) {
      if (times === null || received !== day) continue;
      const missing = bench.make(lotNamed(lot), exact(times), day);
      if (missing.length > 0) throw new Error(`${lot} could not be made: no ${missing.join(', ')}`);
    }
    if (day === SPILT) spill(bench, lotOfRole('spilt eraser'), day);
    drawOn(bench, entries, day, random);
    takeByHand(bench, day);
    if (day === OVERDRAWN) overdraw(bench, lotOfRole('overdrawn jar'), day);
    if (stocktakes.has(day)) countSome(bench, day, random, COUNTED_A_ROUND);
  }
  countNearlyUsed(bench, lotOfRole('nearly used tissue'), TODAY);
  countSome(bench, TODAY, random, HOW_MANY_MOVEMENTS - bench.written.length);
  if (bench.written.length !== HOW_MANY_MOVEMENTS) throw new Error(`${bench.written.length} movements`);
  return bench;
}

/** Draws the entries of a day, as the pane would have on that day. */
function drawOn(bench: DemoBench, entries: readonly DemoEntry[], day: Day, random: Random): void {
  const { studio } = bench.ledger;
  for (const [place, demo] of entries.entries()) {
    if (demo.day !== day || demo.role === 'not drawn') continue;
    const entry = found(
      studio.entries.find(({ name }) => name === demo.entry),
      demo.entry,
    );
    const movements = bench.draw(entry, day);
    const isPart = bench.drawn.get(demo.entry)?.drawn === 'part';
    if (isPart !== (demo.role === 'drawn in part')) {
      throw new Error(
        `${demo.entry} (${demo.treatment}) ${isPart ? 'could be drawn in part only' : 'found enough'}`,
      );
    }
    trim(bench, movements, day, random);
    if (place % ENTRIES_A_MISTAKE === 0 && movements.length > 0) {
      bench.takeBack(movements, day);
      bench.draw(entry, day);
    }
  }
}

function found<T>(value: T | undefined, name: unknown): T {
  if (value === undefined) throw new Error(`there is no ${String(name)}`);
  return value;
}
