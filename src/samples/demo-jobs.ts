import { addDays, type Day, isoDay, parseDay } from '../core/day.ts';
import type { itemsTable, jobsTable, planTable, removedTable } from '../workbook/tables-work.ts';
import type { SampleRow } from './sample-table.ts';

/** The jobs of the invented studio; clients by role, objects of no particular title. */

/** Which course of treatments an object goes through. */
export type Programme = 'comic' | 'poster' | 'letter' | 'map' | 'letters';

export interface DemoJob {
  readonly job: string;
  readonly client: string;
  readonly object: string;
  /** Leaves, height and width in cm. */
  readonly size: readonly [leaves: number, height: number, width: number];
  readonly stage: string;
  /** The month's round in which it was treated, counted from 0; null for a job that isn't begun. */
  readonly round: number | null;
  readonly programme: Programme | null;
}

const COMIC = [18, 26, 17] as const;
const POSTER = [1, 40, 30] as const;
const LETTER = [1, 28, 21] as const;
const TWO_LEAVES = [2, 28, 21] as const;
const BUNDLE = [14, 22, 17] as const;
const MAP = [1, 60, 50] as const;

const BEGUN: readonly (readonly [string, string, DemoJob['size'], number, Programme])[] = [
  ['private collector A.', 'comic book, 36 pages, 1950s newsprint, spine split', COMIC, 0, 'comic'],
  ['town archive', 'poster, folded, tears along the folds', POSTER, 0, 'poster'],
  ['private collector B.', 'letter, two leaves, iron gall ink, stained', TWO_LEAVES, 1, 'letter'],
  ['dealer C.', 'comic book, 32 pages, rusty staples', COMIC, 1, 'comic'],
  ['local museum', 'printed map, hand coloured, splits at the folds', MAP, 2, 'map'],
  ['private collector A.', 'comic book, 36 pages, cover detached', COMIC, 3, 'comic'],
  ['family D.', 'marriage certificate, framed, foxed', LETTER, 3, 'letter'],
  ['town archive', 'poster, two colours, lower edge lost', POSTER, 4, 'poster'],
  ['school library', 'broadside, creased and torn', POSTER, 4, 'poster'],
  ['private collector E.', 'comic book, 68 pages, chipped spine', COMIC, 5, 'comic'],
  ['local museum', 'estate plan on wove paper, rolled', MAP, 6, 'map'],
  ['family D.', 'drawing in graphite, adhesive stains', LETTER, 6, 'letter'],
  ['dealer C.', 'comic book, 32 pages, tape removed before', COMIC, 7, 'comic'],
  ['theatre archive', 'playbill, folded in four', POSTER, 7, 'poster'],
  ['private collector F.', 'letter with envelope, water damage', LETTER, 8, 'letter'],
  ['private collector A.', 'comic book, 36 pages, 1940s newsprint, brittle edges', COMIC, 9, 'comic'],
  ['town archive', 'poster, lithograph, torn across', POSTER, 9, 'poster'],
  ['local museum', 'sea chart, worn folds', MAP, 10, 'map'],
  ['family G.', 'birth certificate, torn in two', LETTER, 11, 'letter'],
  ['theatre archive', 'programme, stapled, rust stains', COMIC, 11, 'comic'],
  ['town archive', 'poster, folded, long tears', POSTER, 13, 'poster'],
  ['private collector E.', 'comic book, 52 pages, spine roll', COMIC, 13, 'comic'],
  ['school library', 'wall map of a county, no linen', MAP, 12, 'map'],
  ['family H.', 'ten letters of one hand, 1910s', BUNDLE, 13, 'letters'],
];

const NOT_BEGUN: readonly (readonly [string, string, DemoJob['size'], string])[] = [
  ['parish office', 'thirty single leaves to be housed', [30, 26, 17], 'Booked'],
  ['dealer C.', 'comic book, 36 pages, two tears in the cover', COMIC, 'Booked'],
  ['private collector B.', 'watercolour, foxed', POSTER, 'Booked'],
  ['local museum', "bird's-eye view, split folds", MAP, 'Quoted'],
  ['private collector J.', 'comic book, 32 pages, loose centrefold', COMIC, 'Enquiry'],
  ['dealer K.', 'poster, mounted on board', POSTER, 'Declined'],
];

/** A leaf has two pages. */
function withLeaves(object: string, [usual, height, width]: DemoJob['size']): DemoJob['size'] {
  const pages = /(\d+) pages/.exec(object)?.[1];
  return [pages === undefined ? usual : Number(pages) / 2, height, width];
}

const FIRST_JOB = 2011;
/** Jobs of the last two rounds are still on the bench, those of the one before just finished. */
const ON_THE_BENCH = 12;
const FINISHED = 11;

function nameOf(place: number): string {
  return `J-${FIRST_JOB + place}`;
}

export const DEMO_JOBS: readonly DemoJob[] = [
  ...BEGUN.map(([client, object, size, round, programme], place): DemoJob => {
    const stage = round >= ON_THE_BENCH ? 'On the bench' : round === FINISHED ? 'Finished' : 'Handed back';
    return { job: nameOf(place), client, object, size: withLeaves(object, size), stage, round, programme };
  }),
  ...NOT_BEGUN.map(
    ([client, object, size, stage], place): DemoJob => ({
      job: nameOf(BEGUN.length + place),
      client,
      object,
      size: withLeaves(object, size),
      stage,
      round: null,
      programme: null,
    }),
  ),
];

export function dayOf(text: string): Day {
  const day = parseDay(text);
  if (day === null) throw new Error(`${text} is no day`);
  return day;
}

/** The first day of a round: they begin on the 15th of a month, September 2025 being the first. */
export function startOfRound(round: number): Day {
  const month = 8 + round;
  const year = 2025 + Math.floor(month / 12);
  return dayOf(`${year}-${String((month % 12) + 1).padStart(2, '0')}-15`);
}

const DAYS_IN_HOUSE = 45;
const LAST_RECEIVED = '2026-11-02';

export const JOB_ROWS: readonly SampleRow<typeof jobsTable>[] = DEMO_JOBS.map(
  ({ job, client, object, size: [leaves, height, width], stage, round }) => {
    const start = round === null ? null : startOfRound(round);
    const handedBack =
      stage === 'Handed back' && start !== null ? isoDay(addDays(start, DAYS_IN_HOUSE)) : null;
    return {
      job,
      client,
      object,
      leaves,
      height,
      width,
      stage,
      receivedOn: start === null ? (stage === 'Booked' ? LAST_RECEIVED : null) : isoDay(addDays(start, -9)),
      storedAt: stage === 'On the bench' || stage === 'Booked' || stage === 'Finished' ? 'Plan chest' : null,
      approvedOn: start === null ? (stage === 'Booked' ? LAST_RECEIVED : null) : isoDay(addDays(start, -4)),
      due:
        start === null
          ? stage === 'Booked'
            ? '2026-12-18'
            : null
          : isoDay(addDays(start, DAYS_IN_HOUSE + 15)),
      handedBack,
    };
  },
);

const LETTERS_JOB = 'J-2034';
const LETTERS = 10;

export function letterItem(place: number): string {
  return `letter ${String.fromCharCode(65 + place)}`;
}

export const ITEM_ROWS: readonly SampleRow<typeof itemsTable>[] = Array.from(
  { length: LETTERS },
  (_, place) => ({
    job: LETTERS_JOB,
    item: letterItem(place),
    description: place % 3 === 0 ? 'letter, two leaves, torn at the fold' : 'letter, one leaf, creased',
    leaves: place % 3 === 0 ? 2 : 1,
    height: 22,
    width: 17,
  }),
);

/** What is planned: J-2035 can't be housed on its day, as the film on order comes a week later. In December paste must be made for J-2032 and J-2037. */
export const PLAN_ROWS: readonly SampleRow<typeof planTable>[] = [
  { line: 'N-01', job: 'J-2031', treatment: 'mending tears', extent: 110, plannedFor: '2026-11-16' },
  { line: 'N-02', job: 'J-2031', treatment: 'pressing', extent: 1, plannedFor: '2026-11-19' },
  { line: 'N-03', job: 'J-2031', treatment: 'housing', extent: 1, plannedFor: '2026-11-27' },
  {
    line: 'N-04',
    job: 'J-2032',
    treatment: 're-stapling through the old holes',
    extent: 2,
    plannedFor: '2026-11-24',
  },
  { line: 'N-05', job: 'J-2035', treatment: 'housing', extent: 30, plannedFor: '2026-11-20' },
  { line: 'N-06', job: 'J-2036', treatment: 'mending tears', extent: 12, plannedFor: '2026-11-19' },
  { line: 'N-07', job: 'J-2036', treatment: 'pressing', extent: 1, plannedFor: '2026-11-23' },
  { line: 'N-08', job: 'J-2037', treatment: 'surface cleaning', extent: 24, plannedFor: '2026-12-07' },
  { line: 'N-09', job: 'J-2037', treatment: 'testing', extent: 4, plannedFor: '2026-12-07' },
  { line: 'N-10', job: 'J-2038', treatment: 'surface cleaning', extent: 60 },
  { line: 'N-11', job: 'J-2038', treatment: 'mending tears', extent: 55 },
  { line: 'N-12', job: 'J-2038', treatment: 'guarding a fold', extent: 80 },
  { line: 'N-13', job: 'J-2038', treatment: 'housing', extent: 1 },
  { line: 'N-14', job: 'J-2032', treatment: 'mending tears', extent: 45, plannedFor: '2026-12-03' },
  { line: 'N-15', job: 'J-2037', treatment: 'mending tears', extent: 60, plannedFor: '2026-12-08' },
  { line: 'N-16', job: 'J-2037', treatment: 'guarding a fold', extent: 70, plannedFor: '2026-12-09' },
  { line: 'N-17', job: 'J-2037', treatment: 'pressing', extent: 1, plannedFor: '2026-12-11' },
];

export const REMOVED_ROWS: readonly SampleRow<typeof removedTable>[] = DEMO_JOBS.filter(
  ({ programme }) => programme === 'comic',
).map(({ job, round }, place) => ({
  job,
  what: 'two steel staples, rusty',
  position: 'spine, 6 cm from head and tail, legs inwards',
  removedOn: isoDay(addDays(startOfRound(round ?? 0), 2)),
  keptAt: 'bag with the job',
  outcome: place % 3 === 2 ? 'replaced; handed back in a bag' : 'cleaned, put back',
}));
