import type { TreatmentPlan } from '../../src/actions/plan-treatment.ts';
import type { Day } from '../../src/core/day.ts';
import { decimal, quantityNumber } from '../../src/core/exact-number.ts';
import { accountIn } from '../../src/core/ledger.ts';
import { leftOn } from '../../src/core/lot-account.ts';
import { starterBlueprint } from '../../src/samples/starter-blueprint.ts';
import { Session } from '../../src/session/session.ts';
import type { Books } from '../../src/session/session-state.ts';
import { randomFrom } from './bench.ts';
import { dayOf, type Literal } from './literal.ts';
import { MemoryWorkbook, NO_COPY } from './memory-workbook.ts';
import { snapshotOf } from './snapshot.ts';
import { STUDIO, TODAY } from './studio.ts';

/** A session over a workbook in memory, and what a test asks of it. */

export const today = dayOf(TODAY);

export const MEND = {
  job: '26-014',
  item: null,
  treatment: 'Mend tear',
  extent: decimal('6'),
  date: today,
  minutes: null,
  by: null,
  notes: null,
  asUsed: [],
};

export async function opened(literal: Literal = STUDIO, day: () => Day = () => today) {
  const workbook = new MemoryWorkbook(snapshotOf(literal));
  const session = new Session({
    workbook,
    today: day,
    random: randomFrom(7),
    copy: NO_COPY,
    // Long enough for everything that is said at once, and no clock.
    wait: async () => {
      for (let turn = 0; turn < 5; turn += 1) await Promise.resolve();
    },
    starter: () => Promise.resolve(starterBlueprint().tabs),
  });
  await session.start();
  return { workbook, session };
}

export function booksIn(session: Session): Books {
  const { state } = session.view;
  if (state.kind !== 'open') throw new Error(`the session is ${state.kind}`);
  return state.books;
}

export function planIn(session: Session, request = MEND): TreatmentPlan {
  const plan = session.planTreatment(request);
  if (!plan.ok) throw new Error(plan.message);
  return plan;
}

export async function logged(session: Session, request = MEND) {
  const done = await session.log(request, planIn(session, request));
  if (done.kind !== 'done') throw new Error(done.message);
  return done;
}

export function leftOf(session: Session, lot: string): number {
  const { ledger } = booksIn(session);
  const found = ledger.studio.lotsByKey.get(lot.toLowerCase());
  if (found === undefined) throw new Error(`there is no lot ${lot}`);
  return quantityNumber(leftOn(accountIn(ledger, found), today));
}

/** Lets everything that is under way come to rest. */
export async function settled(session: Session): Promise<void> {
  for (let turn = 0; turn < 20; turn += 1) await Promise.resolve();
  await session.readAgain();
}
