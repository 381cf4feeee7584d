import { bench, describe } from 'vitest';
import { logTreatment } from '../../src/actions/log-treatment.ts';
import { planTreatment } from '../../src/actions/plan-treatment.ts';
import { check, keepBooks } from '../../src/core/check.ts';
import { addDays } from '../../src/core/day.ts';
import { exact } from '../../src/core/exact-number.ts';
import { post } from '../../src/core/ledger.ts';
import { movementOf } from '../../src/core/movement.ts';
import { planProblemOf } from '../../src/core/planning/build-problem.ts';
import { solvePlan } from '../../src/core/planning/solve-plan.ts';
import { unitNamed } from '../../src/core/unit.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import { stateOf } from '../../src/session/open-books.ts';
import { readWorkbook } from '../../src/workbook/read-workbook.ts';
import { largeStudio, TODAY } from './large-studio.ts';

/** 300 materials, 5,000 lots, 25,000 log entries, 100,000 movements: each step on its own, and a whole log call. */
describe('100,000 movements', () => {
  const bytes = largeStudio({ materials: 300, lots: 5000, movements: 100_000 });
  const snapshot = openXlsx(bytes).snapshot();
  const reading = readWorkbook(snapshot);
  const { ledger } = keepBooks(reading.records, reading.settings, reading.unreadable);
  const [lot] = ledger.studio.lots;
  if (lot === undefined) throw new Error('the large studio has no lot');
  const movement = movementOf({
    name: 'M-NEW',
    date: TODAY,
    kind: 'Use',
    lot,
    quantity: exact(1.5),
    unit: unitNamed('g'),
    job: null,
    item: null,
    entry: null,
    lotIs: 'assumed',
    into: null,
    note: null,
    reverses: null,
    record: null,
  });
  if (movement === null) throw new Error('the movement does not convert');
  const request = {
    job: 'J-1',
    item: null,
    treatment: 'treatment 3',
    extent: exact(10),
    date: TODAY,
    minutes: null,
    by: null,
    notes: null,
    asUsed: [],
  };
  let seed = 1;
  const random = (): number => {
    seed = (seed * 48_271) % 2_147_483_647;
    return seed / 2_147_483_647;
  };
  const slow = { iterations: 3, time: 0, warmupIterations: 1, warmupTime: 0 };

  bench('open the file and read its cells', () => void openXlsx(bytes).snapshot(), slow);
  bench('rows to checked records', () => void readWorkbook(snapshot), slow);
  bench(
    'records to ledger',
    () => void keepBooks(reading.records, reading.settings, reading.unreadable),
    slow,
  );
  bench('stock and notices', () => void check(ledger, TODAY, []), slow);
  const { stock } = check(ledger, TODAY, []);
  const problem = planProblemOf(ledger, stock, addDays(TODAY, 90));
  bench('gather what planning needs', () => void planProblemOf(ledger, stock, addDays(TODAY, 90)), slow);
  bench('a full plan of 300 materials', () => void solvePlan(problem), slow);
  // A snapshot is answered from once, so each round needs one of its own.
  bench('all that the pane shows', () => void stateOf({ ...snapshot }, TODAY), slow);
  bench('plan a treatment in the open pane', () => {
    const plan = planTreatment(snapshot, request, TODAY);
    if (!plan.ok) throw new Error(plan.message);
  });
  bench('post one movement', () => void post(ledger, [movement]));
  bench(
    'log a treatment: open, draw, save',
    () => {
      const workbook = openXlsx(bytes);
      const written = logTreatment(workbook.snapshot(), request, TODAY, random);
      if (!written.ok) throw new Error(written.message);
      workbook.apply(written.changes);
      workbook.save();
    },
    slow,
  );
});
