import { expect, test } from 'vitest';
import { workerPlanner } from '../../src/add-in/planner.ts';
import type { PlannerReply, PlannerRequest } from '../../src/add-in/planner-messages.ts';
import type { BasketProblem } from '../../src/core/buying/basket-problem.ts';
import type { PlanProblem } from '../../src/core/planning/plan-problem.ts';
import { NO_ANSWER } from './helpers.ts';

/** A worker that answers when the test says so. */
class HeldWorker {
  readonly requests: PlannerRequest[] = [];
  isTerminated = false;
  readonly #listeners = new Map<string, (event: Event) => void>();

  postMessage(request: PlannerRequest): void {
    this.requests.push(structuredClone(request));
  }

  addEventListener(kind: string, listener: (event: Event) => void): void {
    this.#listeners.set(kind, listener);
  }

  terminate(): void {
    this.isTerminated = true;
  }

  reply(reply: PlannerReply): void {
    this.#listeners.get('message')?.(new MessageEvent('message', { data: reply }));
  }

  break(event: Event): void {
    this.#listeners.get('error')?.(event);
  }
}

function bench() {
  const workers: HeldWorker[] = [];
  const planner = workerPlanner(() => {
    const worker = new HeldWorker();
    workers.push(worker);
    return worker;
  });
  return { planner, workers };
}

const PROBLEM = { today: 0, materials: [] } as unknown as PlanProblem;
const BASKET = { needs: [] } as unknown as BasketProblem;
const EURO = { code: 'EUR', decimals: 2 };
const noProgress = (): void => undefined;

test('a worker is started with the first request, answers by number, and stays', async () => {
  const { planner, workers } = bench();
  expect(workers).toHaveLength(0);
  const told: (readonly [number, number])[] = [];
  const { signal } = new AbortController();
  const plan = planner.plan(PROBLEM, { signal, progress: (done, all) => told.push([done, all]) });
  const basket = planner.basket(BASKET, EURO, signal);
  const [worker] = workers;
  expect(workers).toHaveLength(1);
  expect(worker?.requests).toEqual([
    { id: 1, kind: 'plan', problem: PROBLEM },
    { id: 2, kind: 'basket', problem: BASKET, currency: EURO },
  ]);
  worker?.reply({ id: 1, kind: 'progress', done: 3, all: 7 });
  worker?.reply({ id: 2, kind: 'failed', message: 'no solver' });
  worker?.reply({ id: 1, kind: 'answer', answer: NO_ANSWER });
  expect(await plan).toEqual(NO_ANSWER);
  await expect(basket).rejects.toThrow('no solver');
  expect(told).toEqual([[3, 7]]);
  void planner.plan(PROBLEM, { signal, progress: noProgress });
  expect(workers).toHaveLength(1);
  expect(worker?.isTerminated).toBe(false);
});

test('what is stopped while it is worked on ends the worker; what waited behind it goes to another', async () => {
  const { planner, workers } = bench();
  const stop = new AbortController();
  const { signal } = new AbortController();
  const stopped = planner.plan(PROBLEM, { signal: stop.signal, progress: noProgress });
  const next = planner.plan(PROBLEM, { signal, progress: noProgress });
  stop.abort();
  await expect(stopped).rejects.toThrow('abort');
  expect(workers.map(({ isTerminated }) => isTerminated)).toEqual([true, false]);
  expect(workers[1]?.requests.map(({ id }) => id)).toEqual([2]);
  workers[1]?.reply({ id: 2, kind: 'answer', answer: NO_ANSWER });
  expect(await next).toEqual(NO_ANSWER);
});

test('what is stopped while it waits leaves the worker alone, and its answer goes nowhere', async () => {
  const { planner, workers } = bench();
  const stop = new AbortController();
  const { signal } = new AbortController();
  const first = planner.plan(PROBLEM, { signal, progress: noProgress });
  const second = planner.plan(PROBLEM, { signal: stop.signal, progress: noProgress });
  stop.abort();
  await expect(second).rejects.toThrow('abort');
  expect(workers[0]?.isTerminated).toBe(false);
  workers[0]?.reply({ id: 2, kind: 'answer', answer: NO_ANSWER });
  workers[0]?.reply({ id: 1, kind: 'answer', answer: NO_ANSWER });
  expect(await first).toEqual(NO_ANSWER);
  await expect(planner.plan(PROBLEM, { signal: stop.signal, progress: noProgress })).rejects.toThrow('abort');
  expect(workers).toHaveLength(1);
});

test('a worker that breaks, or whose script is not loaded, tells all that waits; the next one begins anew', async () => {
  const { planner, workers } = bench();
  const { signal } = new AbortController();
  const ask = () => planner.plan(PROBLEM, { signal, progress: noProgress });
  const [first, second] = [ask(), ask()];
  workers[0]?.break(Object.assign(new Event('error'), { message: 'out of memory' }));
  await expect(first).rejects.toThrow('Planning stopped: out of memory');
  await expect(second).rejects.toThrow('Planning stopped: out of memory');
  const third = ask();
  workers[1]?.break(new Event('error'));
  await expect(third).rejects.toThrow('its script was not loaded');
  expect(workers.map(({ isTerminated }) => isTerminated)).toEqual([true, true]);
});

test('where no worker may be started, that is told', async () => {
  const planner = workerPlanner(() => {
    throw new Error('forbidden here');
  });
  const { signal } = new AbortController();
  await expect(planner.plan(PROBLEM, { signal, progress: noProgress })).rejects.toThrow(
    'Planning could not be started: forbidden here',
  );
});
