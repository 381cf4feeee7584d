import { beforeAll, describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import type { TreatmentPlan } from '../../src/actions/plan-treatment.ts';
import type { TreatmentToLog } from '../../src/actions/treatment-to-log.ts';
import { decimal, quantityNumber } from '../../src/core/exact-number.ts';
import { openOfficeWorkbook } from '../../src/office/office-workbook.ts';
import {
  type Bridge,
  createMemoryWorkbook,
  createOfficeHost,
  type HostClient,
  type OfficeHost,
} from '../../src/office-host/office-host.ts';
import { Session } from '../../src/session/session.ts';
import type { Done } from '../../src/session/session-state.ts';
import type { LiveWorkbook } from '../../src/workbook/live-workbook.ts';
import type { CellValue, WorkbookSnapshot } from '../../src/workbook/port.ts';
import { randomFrom } from '../helpers/bench.ts';
import { date, dayOf, type Literal, type LiteralRow } from '../helpers/literal.ts';
import { NO_COPY } from '../helpers/memory-workbook.ts';
import { loadExcel } from '../helpers/office-client.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';
import { describeSnapshot, OLDEST, readSnapshot } from '../office/office-bench.ts';

/** Two people at two machines, each with the pane open on one workbook, log a mend that takes from the same lot. */

const today = dayOf(TODAY);
const NAMES = ['a', 'b'] as const;
type Name = (typeof NAMES)[number];

/** How many deliveries are let go in a chosen order; what is left after them flows as it was sent. */
const STEPS = 6;
/** How often everybody is given the chance to answer what the others wrote, before they are believed to be at rest. */
const TURNS_AT_REST = 3;

/** As much of a studio as a mend needs: every reading of it is a message to the program and an answer. */
const BENCH: Literal = {
  Materials: {
    headers: ['Material', 'Kind', 'Stock unit'],
    rows: [STUDIO.Materials[0], STUDIO.Materials[1]],
  },
  Tissue: {
    headers: ['Lot', 'Material', 'Received', 'Quantity', 'Unit', 'Cost', 'Left', 'Left as written', 'Worth'],
    rows: STUDIO.Tissue.map((lot): LiteralRow => ({ ...lot, 'Use by': null })),
  },
  Paste: {
    headers: ['Lot', 'Material', 'Received', 'Quantity', 'Unit', 'Cost', 'Left', 'Left as written', 'Worth'],
    rows: [
      {
        Lot: 'P-1',
        Material: 'Wheat starch paste',
        Received: date('2026-04-01'),
        Quantity: 200,
        Unit: 'g',
        Cost: 2.5,
      },
    ],
  },
  Movements: {
    headers: 'Movement,Date,Kind,Lot,Quantity,Unit,Job,Entry,Cost,Reverses,Posting'.split(','),
    rows: [],
  },
  TreatmentLog: {
    headers: ['Entry', 'Date', 'Job', 'Treatment', 'Extent', 'Drawn', 'Drawn for'],
    rows: [],
  },
  Treatments: {
    headers: ['Treatment', 'Extent unit'],
    rows: [{ Treatment: 'Mend tear', 'Extent unit': 'tear' }],
  },
  UsageRates: {
    headers: ['Treatment', 'Material', 'Quantity per extent', 'Unit'],
    rows: [
      { Treatment: 'Mend tear', Material: 'Repair tissue 5', 'Quantity per extent': 0.5, Unit: 'sheet' },
      { Treatment: 'Mend tear', Material: 'Wheat starch paste', 'Quantity per extent': 5, Unit: 'g' },
    ],
  },
  Jobs: { headers: ['Job', 'Stage'], rows: [{ Job: '26-014', Stage: 'On the bench' }] },
};

/** Both take 1.5 sheets, by the rates from T-1, which has 2. */
const MEND: TreatmentToLog = {
  job: '26-014',
  item: null,
  treatment: 'Mend tear',
  extent: decimal('3'),
  date: today,
  minutes: null,
  by: null,
  notes: null,
  asUsed: [],
};

interface Person {
  readonly name: Name;
  readonly client: HostClient;
  readonly live: LiveWorkbook;
  readonly session: Session;
}

interface Course {
  readonly host: OfficeHost;
  readonly people: readonly Person[];
  /** For each step how many deliveries could have been let go. */
  readonly choices: readonly number[];
  readonly outcomes: ReadonlyMap<Name, Done>;
}

const macrotask = (): Promise<void> =>
  new Promise((resolve) => {
    setImmediate(resolve);
  });

/** Lets whatever was delivered be worked on until nothing new comes of it. */
async function quiet(host: OfficeHost): Promise<void> {
  let known = -1;
  let still = 0;
  while (still < 3) {
    await macrotask();
    await new Promise((resolve) => {
      setTimeout(resolve, 0);
    });
    const now = host.deliveries.pending.length;
    still = now === known ? still + 1 : 0;
    known = now;
  }
}

function planOf({ session }: Person): TreatmentPlan {
  const plan = session.planTreatment(MEND);
  if (!plan.ok) throw new Error(plan.message);
  return plan;
}

/** A client library that is loaded once and then talks to one host after another. */
interface Machine {
  readonly name: Name;
  readonly excel: typeof Excel;
  plugInto(bridge: Bridge): void;
}

function machine(name: Name): Machine {
  let plugged: Bridge | null = null;
  const socket: Bridge = {
    onMessageFromHost: null,
    sendMessageToHost: (text) => plugged?.sendMessageToHost(text),
  };
  const { Excel: excel } = loadExcel(socket, { sets: OLDEST });
  return {
    name,
    excel,
    plugInto: (bridge) => {
      plugged = bridge;
      bridge.onMessageFromHost = socket.onMessageFromHost;
    },
  };
}

const MACHINES = NAMES.map(machine);

async function meet(): Promise<{ readonly host: OfficeHost; readonly people: readonly Person[] }> {
  const host = createOfficeHost(createMemoryWorkbook(describeSnapshot(snapshotOf(BENCH))), {
    requirementSets: OLDEST,
  });
  const people = MACHINES.map((each, place): Person => {
    const { name, excel } = each;
    const client = host.connect(name);
    each.plugInto(client.bridge);
    const live = openOfficeWorkbook(excel);
    return {
      name,
      client,
      live,
      session: new Session({
        workbook: live,
        today: () => today,
        random: randomFrom(place + 1),
        copy: NO_COPY,
        wait: macrotask,
        starter: () => Promise.resolve([]),
      }),
    };
  });
  for (const { session } of people) await session.start();
  return { host, people };
}

/** When people hear of each other's changes: in the order in which things happened, or only after everything. */
type Hearing = 'in order' | 'late';

/** Both log at once; what passes between them and the program is let go in the order that the choices say. */
async function course(hearing: Hearing, order: readonly number[]): Promise<Course> {
  const { host, people } = await meet();
  const outcomes = new Map<Name, Done>();
  host.deliveries.hold(['request', 'event']);
  const logging = people.map(async (person) => {
    outcomes.set(person.name, await person.session.log(MEND, planOf(person)));
  });
  const choices: number[] = [];
  for (let step = 0; step < STEPS; step += 1) {
    await quiet(host);
    // The oldest of each client: what passes between one client and the program keeps its order.
    const heads = new Map(
      host.deliveries.pending
        .filter(({ kind }) => hearing === 'in order' || kind !== 'event')
        .toReversed()
        .map(({ client, id }) => [client, id]),
    );
    if (heads.size === 0) break;
    choices.push(heads.size);
    const ids = [...heads.values()].toSorted((a, b) => a - b);
    host.deliveries.release(ids[order[step] ?? 0]);
  }
  host.deliveries.flow();
  await Promise.all(logging);
  await settle(host, people);
  return { host, people, choices, outcomes };
}

async function settle(host: OfficeHost, people: readonly Person[]): Promise<void> {
  await quiet(host);
  for (const { session } of people) await session.readAgain();
  await quiet(host);
}

/** The order that follows in the tree of all; null after the last. */
function nextOrder(order: readonly number[], choices: readonly number[]): number[] | null {
  const next = choices.map((_, step) => order[step] ?? 0);
  for (let step = choices.length - 1; step >= 0; step -= 1) {
    const choice = (next[step] ?? 0) + 1;
    if (choice < (choices[step] ?? 0)) return [...next.slice(0, step), choice];
  }
  return null;
}

function column(snapshot: WorkbookSnapshot, table: string, header: string): CellValue[] {
  const values = snapshot.tables
    .find(({ name }) => name === table)
    ?.columns.find((each) => each.header === header)?.values;
  return (values ?? []).filter((value) => value !== null);
}

function leftIn(snapshot: WorkbookSnapshot): Record<string, number> {
  return Object.fromEntries(
    checkWorkbook(snapshot, today).stock.lots.map(({ lot, left }) => [lot.name, quantityNumber(left)]),
  );
}

/** Logs again where the program said to look again, as a person would. */
async function logAgain({ host, people, outcomes }: Course): Promise<number> {
  let times = 0;
  for (const person of people) {
    const outcome = outcomes.get(person.name);
    if (outcome?.kind === 'done') continue;
    expect(outcome?.kind).toBe('look again');
    const again = await person.session.log(MEND, planOf(person));
    expect(again.kind).toBe('done');
    times += 1;
    await settle(host, people);
  }
  return times;
}

describe.each([{ hearing: 'in order' }, { hearing: 'late' }] as const)(
  'two people log at once, hearing of each other $hearing',
  ({ hearing }) => {
    /** What was seen over all orders of the first six steps, so that nothing passes by never coming to the point. */
    const seen = { orders: 0, lookedAgain: 0 };

    beforeAll(async () => {
      let order: readonly number[] | null = [];
      while (order !== null) {
        const run: Course = await course(hearing, order);
        seen.orders += 1;
        seen.lookedAgain += await logAgain(run);
        await expectAllIsThere(run);
        await expectNobodyGoesOnWriting(run);
        order = nextOrder(order, run.choices);
      }
    }, 300_000);

    async function expectAllIsThere({ people }: Course): Promise<void> {
      const [first, second] = people;
      if (first === undefined || second === undefined) throw new Error('there are two people');
      const snapshot = await readSnapshot(first.live);
      const movements = column(snapshot, 'Movements', 'Movement');
      const entries = column(snapshot, 'TreatmentLog', 'Entry');
      // Two materials for each of two entries, and one more row: the second took the rest of T-1 and went on.
      expect(entries).toHaveLength(2);
      expect(movements).toHaveLength(5);
      expect(new Set([...movements, ...entries]).size).toBe(movements.length + entries.length);
      expect(new Set(column(snapshot, 'Movements', 'Posting')).size).toBe(2);
      expect(column(snapshot, 'TreatmentLog', 'Drawn')).toEqual(['yes', 'yes']);
      expect(leftIn(snapshot)).toEqual({ 'T-1': 0, 'T-2': 9, 'P-1': 200 - 30 });
      for (const { session } of people) {
        const { state } = session.view;
        expect(state.kind === 'open' && leftIn(state.books.snapshot)).toEqual(leftIn(snapshot));
      }
    }

    async function expectNobodyGoesOnWriting({ host, people }: Course): Promise<void> {
      const requests = () => people.map(({ client }) => client.statistics.requests);
      const before = requests();
      for (let turn = 0; turn < TURNS_AT_REST; turn += 1) await quiet(host);
      expect(requests()).toEqual(before);
      for (const { session } of people) await session.stop();
    }

    test('no row is lost, none stands twice, identifiers differ, and everybody comes to rest', () => {
      // Six steps of two people, less the ends of the tree where only one of them has anything left to do.
      expect(seen.orders).toBeGreaterThan(20);
    });

    test('the second is always told to look again, and shown another lot', () => {
      expect(seen.lookedAgain).toBe(seen.orders);
    });
  },
);
