import { describe, expect, test } from 'vitest';
import { recentPostings } from '../../src/actions/recent-postings.ts';
import { EMPTY_DRAFT, withLine } from '../../src/pane/log/draft.ts';
import {
  itemOptions,
  jobOptions,
  lotOptions,
  offeredJob,
  treatmentOptions,
} from '../../src/pane/log/log-options.ts';
import { entryWords, postingWords } from '../../src/pane/log/posting-words.ts';
import { date } from '../helpers/literal.ts';
import { BENCH, booksOf, openSession, workIn } from './helpers.ts';

const studioOf = async (literal = BENCH) => booksOf((await openSession(literal)).session).ledger.studio;
const MEND = { ...EMPTY_DRAFT, job: '26-014', treatment: 'Mend tear', extent: '6' };

describe('jobs', () => {
  test('those on the bench first, and the one that is nobody’s last', async () => {
    expect(jobOptions(await studioOf())).toEqual([
      { value: '26-014', detail: 'Map, On the bench' },
      { value: '26-016', detail: 'Poster, On the bench' },
      { value: '26-015', detail: 'Ledger, Quoted' },
      { value: '26-017', detail: 'Atlas, Finished' },
      { value: 'STUDIO', label: 'STUDIO: nobody’s (samples, calibration)' },
    ]);
  });

  test('STUDIO is offered once where it has a row of its own', async () => {
    const Jobs = [{ Job: 'Studio', Object: 'Samples', Stage: 'On the bench' }];
    expect(jobOptions(await studioOf({ ...BENCH, Jobs })).map(({ value }) => value)).toEqual(['STUDIO']);
  });

  test('the last one logged is offered, as long as it is on the bench', async () => {
    expect(offeredJob(await studioOf())).toBe('26-014');
    const Jobs = [{ Job: '26-014', Stage: 'Finished' }];
    expect(offeredJob(await studioOf({ ...BENCH, Jobs }))).toBeNull();
  });

  test('the later day counts, wherever its row stands', async () => {
    const TreatmentLog = [
      { Entry: 'E-9', Date: date('2026-04-03'), Job: '26-016', Treatment: 'Examine', Extent: 1 },
      { Entry: 'E-1', Date: date('2026-03-30'), Job: '26-014', Treatment: 'Examine', Extent: 1 },
    ];
    expect(offeredJob(await studioOf({ ...BENCH, TreatmentLog }))).toBe('26-016');
  });

  test('of two on one day, the lower row is the later one', async () => {
    const TreatmentLog = ['26-016', '26-014'].map((Job, place) => ({
      Entry: `E-${place}`,
      Date: date('2026-04-02'),
      Job,
      Treatment: 'Examine',
      Extent: 1,
    }));
    expect(offeredJob(await studioOf({ ...BENCH, TreatmentLog }))).toBe('26-014');
    expect(offeredJob(await studioOf({ ...BENCH, TreatmentLog: TreatmentLog.toReversed() }))).toBe('26-016');
  });

  test('items are those of the job', async () => {
    const studio = await studioOf();
    expect(itemOptions(studio, ' 26-015')).toEqual([{ value: 'A' }]);
    expect(itemOptions(studio, '26-014')).toEqual([]);
  });
});

test('treatments say their unit, and those planned for the job stand first', async () => {
  const studio = await studioOf({
    ...BENCH,
    Plan: [
      { Job: '26-014', Treatment: 'Size', Extent: 3 },
      { Job: '26-014', Treatment: 'Size', Extent: 4.5 },
      { Job: '26-014', Treatment: 'Examine', Extent: 9, Done: 'yes' },
    ],
  });
  expect(treatmentOptions(studio, '26-014')).toEqual([
    { value: 'Size', detail: 'per dm2; planned for this job: 7.5' },
    { value: 'Mend tear', detail: 'per tear' },
    { value: 'Examine', detail: 'per leaf' },
  ]);
});

test('lots: the draw order, then its lots, then those it would not pick with the reason, empty ones last', async () => {
  const { session } = await openSession({
    ...BENCH,
    Tissue: [
      { Lot: 'T-0', Material: 'Repair tissue 5', Received: date('2026-01-01'), Quantity: 1, Unit: 'sheet' },
      ...(BENCH['Tissue'] as []),
      {
        Lot: 'T-3',
        Material: 'Repair tissue 5',
        Received: date('2026-03-01'),
        Quantity: 4,
        Unit: 'sheet',
        State: 'Set aside',
      },
      {
        Lot: 'T-4',
        Material: 'Repair tissue 5',
        Received: date('2026-04-10'),
        Quantity: 5,
        Unit: 'sheet',
        'Use by': date('2027-01-01'),
      },
    ],
    Movements: [
      { Movement: 'M-1', Date: date('2026-02-01'), Kind: 'Use', Lot: 'T-0', Quantity: 1, Unit: 'sheet' },
    ],
  });
  const use = workIn(session, MEND).asked?.plan.uses[0] ?? expect.unreachable();
  expect(lotOptions(use.lots, use.unit)).toEqual([
    { value: '', label: 'in draw order' },
    { value: 'T-1', detail: '2 sheets left, good until 31 Dec 2026' },
    { value: 'T-2', detail: '10 sheets left, keeps' },
    { value: 'T-3', detail: '4 sheets left, keeps', doubt: 'set aside' },
    { value: 'T-0', detail: '0 sheets left, keeps', doubt: 'empty' },
    {
      value: 'T-4',
      detail: '0 sheets left, good until 1 Jan 2027',
      doubt: 'not here yet on that day: received 10 Apr 2026',
    },
  ]);
});

test('postings: one entry by its own words, a reversal told apart, what is for no entry by its materials', async () => {
  const { session } = await openSession();
  const { asked } = workIn(
    session,
    withLine({ ...MEND, notes: 'by hand' }, 'Wheat starch paste', { amount: '2' }),
  );
  if (asked === null) throw new Error('nothing is asked');
  const done = await session.log(asked.request, asked.plan);
  if (done.kind !== 'done' || done.posting === null) throw new Error('nothing was posted');
  const [posted] = recentPostings(booksOf(session).ledger, 3);
  expect(posted?.posting).toBe(done.posting);
  expect(posted === undefined ? '' : postingWords(posted)).toBe('Mend tear, 6 tear: 26-014');
  await session.undo(done.posting);
  const [reversal, undone] = recentPostings(booksOf(session).ledger, 3);
  expect([reversal?.isReversal, undone?.reversed]).toEqual([true, true]);
  expect(reversal === undefined ? '' : postingWords(reversal)).toBe('Mend tear, 6 tear: 26-014');
  const base = undone ?? expect.unreachable();
  expect(
    postingWords({ ...base, entries: [], kinds: ['Count'], materials: ['Thread', 'Web', 'Tissue'] }),
  ).toBe('Count: Thread, Web and 1 more');
  const [entry] = base.entries;
  expect(postingWords({ ...base, entries: [...base.entries, ...base.entries], movements: 5 })).toBe(
    '2 log entries, 5 movements',
  );
  expect(
    entry === undefined ? '' : entryWords({ ...entry, record: { ...entry.record, item: 'leaf 3' } }),
  ).toBe('Mend tear, 6 tear: 26-014, leaf 3');
});
