import { notesWithAmounts } from '../core/as-used.ts';
import { addDays, type Day, isoDay } from '../core/day.ts';
import { exact } from '../core/exact-number.ts';
import type { Random } from '../core/identifier.ts';
import { STUDIO_JOB } from '../core/studio.ts';
import { unitNamed } from '../core/unit.ts';
import type { treatmentLogTable } from '../workbook/tables-work.ts';
import { DEMO_JOBS, type DemoJob, dayOf, letterItem, type Programme, startOfRound } from './demo-jobs.ts';
import type { SampleRow } from './sample-table.ts';

/** The treatment log of the invented studio, made from the course that each kind of object takes. */

/** How an entry stands on the day of the demonstration, where it isn't simply drawn. */
export type EntryRole = 'not drawn' | 'drawn in part' | 'changed after drawing';

export interface DemoEntry {
  readonly entry: string;
  readonly day: Day;
  readonly job: string;
  readonly item: string | null;
  readonly treatment: string;
  readonly extent: number;
  readonly minutes: number;
  /** Amounts that were given by hand: material, quantity, unit. */
  readonly asUsed: readonly (readonly [material: string, quantity: number, unit: string])[];
  readonly role: EntryRole | null;
}

type Unnamed = Omit<DemoEntry, 'entry'>;
type Session = readonly [treatment: string, extent: number, ...daysInRound: number[]];

const HOW_MANY = 300;
const ROUNDS = 14;

const SESSIONS: Readonly<Record<Programme, readonly Session[]>> = {
  comic: [
    ['testing', 3, 1],
    ['removing staples', 2, 2],
    ['surface cleaning', 20, 3, 4],
    ['mending tears', 10, 15, 16, 17],
    ['guarding a fold', 26, 18],
    ['infilling losses', 2, 18],
    ['pressing', 1, 22],
    ['re-stapling through the old holes', 2, 29],
    ['housing', 1, 29],
  ],
  poster: [
    ['testing', 3, 1],
    ['surface cleaning', 24, 4],
    ['washing, three baths', 12, 8],
    ['deacidifying in a bath', 12, 8],
    ['drying, five changes', 12, 9],
    ['mending tears', 26, 15, 16, 19],
    ['infilling losses', 5, 17],
    ['pressing', 1, 23],
    ['housing', 1, 29],
  ],
  letter: [
    ['testing', 2, 1],
    ['surface cleaning', 12, 3],
    ['washing, three baths', 6, 8],
    ['deacidifying in a bath', 6, 8],
    ['drying, five changes', 6, 9],
    ['humidifying and refolding', 1, 11],
    ['mending tears', 8, 16, 17],
    ['pressing', 1, 22],
    ['housing', 1, 29],
  ],
  map: [
    ['testing', 2, 1],
    ['surface cleaning', 30, 3, 5],
    ['humidifying and refolding', 1, 10],
    ['mending tears', 26, 15, 16, 18, 19],
    ['infilling losses', 4, 17],
    ['guarding a fold', 40, 20],
    ['evening surface sheen', 3, 24],
    ['pressing', 1, 24],
    ['housing', 1, 30],
  ],
  letters: [
    ['testing', 5, 1],
    ['washing, three baths', 8, 27],
    ['deacidifying in a bath', 8, 27],
    ['drying, five changes', 8, 28],
  ],
};

/** The last round is cut short by the day of the demonstration. */
const LAST_DAY = dayOf('2026-11-16');
/** What comes later in the last round than the demonstration shows. */
const LATER = new Set(['pressing', 'housing', 're-stapling through the old holes']);
const COUNTED_IN_ONES = new Set([
  'testing',
  'removing staples',
  'humidifying and refolding',
  'pressing',
  'housing',
  're-stapling through the old holes',
]);
const SIX_DAYS = 6;
/** In the last round testing began later, so that the buffer opened then is near its end. */
const LATE_BY = 5;

/** The next weekday from a day on. */
export function weekdayFrom(day: Day): Day {
  const ofWeek = (((day + 4) % 7) + 7) % 7;
  return ofWeek === 6 ? addDays(day, 2) : ofWeek === 0 ? addDays(day, 1) : day;
}

function entryOf(
  job: string,
  day: Day,
  treatment: string,
  extent: number,
  more: Partial<Pick<Unnamed, 'item' | 'asUsed' | 'role'>> = {},
): Unnamed {
  const minutes = 10 + Math.round(extent * (treatment === 'mending tears' ? 3 : 1.5));
  return { job, day, treatment, extent, minutes, item: null, asUsed: [], role: null, ...more };
}

function entriesOf({ job, round, programme }: DemoJob, random: Random): Unnamed[] {
  if (round === null || programme === null) return [];
  const isLast = round === ROUNDS - 1;
  return SESSIONS[programme].flatMap(([treatment, extent, ...days]) =>
    days.flatMap((inRound): Unnamed[] => {
      if (isLast && LATER.has(treatment)) return [];
      const varied = COUNTED_IN_ONES.has(treatment)
        ? extent
        : Math.max(1, Math.round(extent * (0.75 + random() / 2)));
      const late = isLast && treatment === 'testing' ? LATE_BY : 0;
      return [
        entryOf(
          job,
          weekdayFrom(addDays(startOfRound(round), inRound + late)),
          treatment,
          varied,
          alternative(treatment, varied, round),
        ),
      ];
    }),
  );
}

/** Now and then another adhesive, another solution or a new staple was chosen. */
function alternative(treatment: string, extent: number, round: number): Pick<Unnamed, 'asUsed'> {
  if (treatment === 'mending tears' && round % 4 === 1 && extent < 11)
    return { asUsed: [['methylcellulose 5 %', 5, 'g']] };
  if (treatment === 'mending tears' && round % 4 === 3)
    return { asUsed: [['kozo tissue 3.5 g', extent * 2, 'cm2']] };
  if (treatment === 'deacidifying in a bath' && round === 9)
    return { asUsed: [['limewater', extent * 0.4, 'l']] };
  if (treatment.startsWith('re-stapling') && round % 3 === 2)
    return { asUsed: [['stainless staple', 2, 'each']] };
  return { asUsed: [] };
}

/** What was done in the last weeks, with the entries that still want something. */
function lastWeeks(): Unnamed[] {
  const letters = Array.from({ length: 10 }, (_, place) =>
    entryOf('J-2034', dayOf('2026-10-20'), 'surface cleaning', 3 + (place % 3), { item: letterItem(place) }),
  );
  return [
    ...letters,
    entryOf('J-2034', dayOf('2026-11-12'), 'mending tears', 7, { item: letterItem(0) }),
    entryOf('J-2034', dayOf('2026-11-12'), 'mending tears', 5, { item: letterItem(3) }),
    entryOf('J-2034', dayOf('2026-11-13'), 'mending tears', 6, { item: letterItem(6) }),
    entryOf('J-2032', dayOf('2026-11-05'), 'surface cleaning', 18, { role: 'changed after drawing' }),
    entryOf('J-2033', dayOf('2026-11-10'), 'surface cleaning', 24, { role: 'drawn in part' }),
    entryOf('J-2032', dayOf('2026-11-13'), 'pressing', 1, { role: 'not drawn' }),
    entryOf('J-2033', dayOf('2026-11-13'), 'humidifying and refolding', 1, { role: 'not drawn' }),
    entryOf('J-2034', LAST_DAY, 'surface cleaning', 4, { item: letterItem(9), role: 'not drawn' }),
    entryOf('J-2033', LAST_DAY, 'evening surface sheen', 3),
    entryOf(STUDIO_JOB, LAST_DAY, 'testing', 1, { role: 'not drawn' }),
  ];
}

/** Calibrations of the meter, as many as make the log full. */
function calibrations(howMany: number): Unnamed[] {
  return Array.from({ length: howMany }, (_, place) => {
    const round = place % ROUNDS;
    const late = round === ROUNDS - 1 ? LATE_BY : 0;
    const day = addDays(startOfRound(round), 1 + late + SIX_DAYS * Math.floor(place / ROUNDS));
    return entryOf(STUDIO_JOB, weekdayFrom(day), 'testing', 1);
  });
}

/** All entries by day, named in that order. */
export function demoEntries(random: Random): DemoEntry[] {
  const work = [...DEMO_JOBS.flatMap((job) => entriesOf(job, random)), ...lastWeeks()];
  return [...work, ...calibrations(HOW_MANY - work.length)]
    .toSorted((a, b) => a.day - b.day)
    .map((entry, place) => ({ ...entry, entry: `E-${String(place + 1).padStart(4, '0')}` }));
}

/** pH before and after, as the studio writes it down. */
function readingsOf({ treatment, job, extent }: DemoEntry): Readonly<Record<string, string>> {
  const tenth = extent % 6;
  if (treatment === 'testing' && job !== STUDIO_JOB) return { readingBefore: `pH 4.${3 + tenth}` };
  if (treatment === 'deacidifying in a bath') return { readingAfter: `pH 8.${1 + tenth}` };
  return {};
}

/** The row of an entry before anything is drawn for it. */
export function entryRow(demo: DemoEntry): SampleRow<typeof treatmentLogTable> {
  const { entry, day, job, item, treatment, extent, minutes, role, asUsed } = demo;
  return {
    ...readingsOf(demo),
    entry,
    date: isoDay(day),
    job,
    item,
    treatment,
    minutes,
    by: 'L.',
    extent,
    notes: notesWithAmounts(
      role === 'drawn in part' ? 'eraser ran out' : null,
      asUsed.map(([material, quantity, unit]) => ({
        material,
        quantity: exact(quantity),
        unit: unitNamed(unit),
        lot: null,
      })),
    ),
  };
}
