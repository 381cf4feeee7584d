import { EMPTY_DRAFT, type LogDraft } from '../../src/pane/log/draft.ts';
import { type LogWork, workOut } from '../../src/pane/log/log-work.ts';
import { starterBlueprint } from '../../src/samples/starter-blueprint.ts';
import { Session } from '../../src/session/session.ts';
import type { Books } from '../../src/session/session-state.ts';
import { randomFrom } from '../helpers/bench.ts';
import { date, dayOf, type Literal } from '../helpers/literal.ts';
import { MemoryWorkbook, NO_COPY } from '../helpers/memory-workbook.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

export const today = dayOf(TODAY);

/**
 * The small studio with a second jar of paste, one that has gone off, one that is empty, a choice between two
 * adhesives, and a log.
 */
export const BENCH: Literal = {
  ...STUDIO,
  Materials: [
    ...STUDIO.Materials,
    { Material: 'Methylcellulose', Kind: 'Paste', 'Stock unit': 'g', Hazards: 'H000' },
    { Material: 'Thread', Kind: 'Sundry', 'Stock unit': 'm' },
  ],
  Paste: [
    ...STUDIO.Paste,
    {
      Lot: 'P-2',
      Material: 'Wheat starch paste',
      Received: date('2026-04-02'),
      Quantity: 100,
      Unit: 'g',
      Cost: 3,
      Recipe: 'Paste, thick',
    },
    {
      Lot: 'P-0',
      Material: 'Wheat starch paste',
      Received: date('2026-03-01'),
      Quantity: 50,
      Unit: 'g',
      Recipe: 'Paste, thick',
    },
    {
      Lot: 'M-1',
      Material: 'Methylcellulose',
      Received: date('2026-01-05'),
      Quantity: 30,
      Unit: 'g',
      Cost: 6,
    },
  ],
  Sundries: [
    { Lot: 'S-1', Material: 'Thread', Received: date('2026-01-05'), Quantity: 20, Unit: 'm', Cost: 8 },
  ],
  Treatments: [...STUDIO.Treatments, { Treatment: 'Size', 'Extent unit': 'dm2' }],
  UsageRates: [
    ...STUDIO.UsageRates,
    { Treatment: 'Size', Material: 'Wheat starch paste', 'Quantity per extent': 2, Unit: 'g', Choice: 'A' },
    { Treatment: 'Size', Material: 'Methylcellulose', 'Quantity per extent': 1, Unit: 'g', Choice: 'A' },
  ],
  Jobs: [
    ...STUDIO.Jobs,
    { Job: '26-016', Object: 'Poster', Stage: 'On the bench' },
    { Job: '26-017', Object: 'Atlas', Stage: 'Finished' },
  ],
  TreatmentLog: [
    { Entry: 'E-1', Date: date('2026-04-01'), Job: '26-016', Treatment: 'Examine', Extent: 1 },
    { Entry: 'E-2', Date: date('2026-04-02'), Job: '26-014', Treatment: 'Examine', Extent: 2 },
    { Entry: 'E-3', Date: date('2026-04-03'), Job: '26-017', Treatment: 'Examine', Extent: 3 },
  ],
};

export async function openSession(literal: Literal = BENCH) {
  const workbook = new MemoryWorkbook(snapshotOf(literal));
  const session = new Session({
    workbook,
    today: () => today,
    random: randomFrom(7),
    copy: NO_COPY,
    wait: () => Promise.resolve(),
    starter: () => Promise.resolve(starterBlueprint().tabs),
  });
  await session.start();
  return { session, workbook };
}

export function booksOf(session: Session): Books {
  const { state } = session.view;
  if (state.kind !== 'open') throw new Error(`the session is ${state.kind}`);
  return state.books;
}

/** The form as the pane would work it out. */
export function workIn(session: Session, draft: Partial<LogDraft>): LogWork {
  const { ledger } = booksOf(session);
  const whole = { ...EMPTY_DRAFT, job: '26-014', ...draft };
  return workOut(whole, ledger.studio, today, (request) => session.planTreatment(request));
}

/** A treatment that is filled in: six tears take 3 sheets, 30 g of paste and 6 uses of release paper. */
export const MEND: LogDraft = { ...EMPTY_DRAFT, job: '26-014', treatment: 'Mend tear', extent: '6' };
export const PASTE = 'Wheat starch paste';

export function problemsIn(work: LogWork): (readonly [string, string])[] {
  return work.problems.map(({ field, message }) => [field, message] as const);
}
