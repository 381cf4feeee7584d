import { beforeEach, expect, test, vi } from 'vitest';
import { booksIn, opened } from '../helpers/opened-session.ts';
import { heldPlanner, NO_ANSWER, plannerHere, SHOP, withoutPage } from './helpers.ts';

beforeEach(() => {
  withoutPage();
  vi.resetModules();
});

const state = () => import('../../src/pane/planning/plan-state.ts');

test('the plan of the books is worked out once, looks 90 days ahead, and says what runs out', async () => {
  const { latestPlan, planFor, planning } = await state();
  const books = booksIn((await opened(SHOP)).session);
  const planner = plannerHere();
  const plan = vi.spyOn(planner, 'plan');
  await planFor(planner, books);
  await planFor(planner, books);
  expect(plan).toHaveBeenCalledTimes(1);
  expect(planning.value).toEqual({ kind: 'at rest' });
  const { answer, problem } = latestPlan.value ?? expect.unreachable();
  expect(problem.until - problem.today).toBe(90);
  const tissue = answer.materials.find(({ material }) => material === 'Repair tissue 5');
  // 40 tears take half a sheet each; there are 12 sheets.
  expect(tissue?.projection.firstShort).toMatchObject({ job: '26-014', missing: 8 });
});

test('newer books give the older request up; its answer no longer counts', async () => {
  const { latestPlan, planFor, planning } = await state();
  const books = booksIn((await opened(SHOP)).session);
  const { planner, asked, answers } = heldPlanner();
  const first = planFor(planner, books);
  asked[0]?.progress(2, 5);
  expect(planning.value).toEqual({ kind: 'working', done: 2, all: 5 });
  const newer = { ...books };
  const second = planFor(planner, newer);
  expect(asked.map(({ signal }) => signal.aborted)).toEqual([true, false]);
  asked[0]?.progress(4, 5);
  answers[0]?.give({ ...NO_ANSWER, until: NO_ANSWER.today });
  await first;
  expect(latestPlan.value).toBeNull();
  expect(planning.value).toEqual({ kind: 'working', done: 0, all: 0 });
  answers[1]?.give(NO_ANSWER);
  await second;
  expect(latestPlan.value?.books).toBe(newer);
});

test('what she stops stays stopped until she asks again, or the workbook changes', async () => {
  const { planAgain, planFor, planning, stopPlanning } = await state();
  const books = booksIn((await opened(SHOP)).session);
  const { planner, asked, answers } = heldPlanner();
  const first = planFor(planner, books);
  stopPlanning();
  answers[0]?.fail(new Error('aborted'));
  await first;
  expect(asked[0]?.signal.aborted).toBe(true);
  expect(planning.value).toEqual({ kind: 'stopped' });
  await planFor(planner, books);
  expect(asked).toHaveLength(1);
  const again = planAgain(planner, books);
  answers[1]?.give(NO_ANSWER);
  await again;
  expect(planning.value).toEqual({ kind: 'at rest' });
});

test('a failure is told, and is not tried again by itself', async () => {
  const { planAgain, planFor, planning } = await state();
  const books = booksIn((await opened(SHOP)).session);
  const { planner, asked, answers } = heldPlanner();
  const first = planFor(planner, books);
  answers[0]?.fail(new Error('out of memory'));
  await first;
  expect(planning.value).toEqual({ kind: 'failed', message: 'out of memory' });
  await planFor(planner, books);
  expect(asked).toHaveLength(1);
  void planAgain(planner, books);
  expect(planning.value.kind).toBe('working');
});
