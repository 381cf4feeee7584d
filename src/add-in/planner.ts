import type { Basket } from '../core/buying/basket.ts';
import type { PlanAnswer } from '../core/planning/plan-answer.ts';
import type { Planner } from '../pane/planner.ts';
import type { PlannerReply, PlannerRequest } from './planner-messages.ts';

/** What of a web worker is needed here. */
type PlanningWorker = Pick<Worker, 'postMessage' | 'addEventListener' | 'terminate'>;

/** A request that was sent and has not been answered. */
interface Waiting {
  readonly request: PlannerRequest;
  readonly progress: (done: number, all: number) => void;
  readonly answered: (answer: PlanAnswer | Basket) => void;
  readonly failed: (reason: unknown) => void;
}

type Asked<Request = PlannerRequest> = Request extends PlannerRequest ? Omit<Request, 'id'> : never;

/**
 * A planner that works in a web worker. It is started with the first request and takes one after the other; what is
 * to stop is stopped with the whole worker, and what waited behind it goes to a new one.
 */
export function workerPlanner(start: () => PlanningWorker): Planner {
  let worker: PlanningWorker | null = null;
  let count = 0;
  const waiting = new Map<number, Waiting>();

  const begin = (): PlanningWorker => {
    const begun = start();
    begun.addEventListener('message', ({ data }: MessageEvent<PlannerReply>) => take(data));
    const onFault = (event: Event): void => {
      if (worker === begun) giveUp(faultOf(event));
    };
    begun.addEventListener('error', onFault);
    begun.addEventListener('messageerror', onFault);
    return begun;
  };

  const take = (reply: PlannerReply): void => {
    const one = waiting.get(reply.id);
    if (one === undefined) return;
    if (reply.kind === 'progress') {
      one.progress(reply.done, reply.all);
      return;
    }
    waiting.delete(reply.id);
    if (reply.kind === 'answer') one.answered(reply.answer);
    else one.failed(new Error(reply.message));
  };

  const end = (): void => {
    worker?.terminate();
    worker = null;
  };

  /** Everything that waits is lost with the worker. */
  const giveUp = (fault: Error): void => {
    end();
    const lost = [...waiting.values()];
    waiting.clear();
    for (const { failed } of lost) failed(fault);
  };

  const send = (request: PlannerRequest): void => {
    try {
      worker ??= begin();
      worker.postMessage(request, { transfer: [] });
    } catch (fault) {
      giveUp(new Error(`Planning could not be started: ${wordsOf(fault)}`));
    }
  };

  /** The first one is being worked on, and only the end of the worker ends that. */
  const stop = (id: number): void => {
    const isUnderWay = [...waiting.keys()][0] === id;
    waiting.delete(id);
    if (!isUnderWay) return;
    end();
    for (const { request } of waiting.values()) send(request);
  };

  const ask = (
    asked: Asked,
    signal: AbortSignal,
    progress: Waiting['progress'] = () => undefined,
  ): Promise<PlanAnswer | Basket> =>
    new Promise((answered, failed) => {
      if (signal.aborted) {
        failed(signal.reason as unknown);
        return;
      }
      count += 1;
      const id = count;
      const request: PlannerRequest = { ...asked, id };
      waiting.set(id, { request, progress, answered, failed });
      signal.addEventListener(
        'abort',
        () => {
          if (!waiting.has(id)) return;
          stop(id);
          failed(signal.reason as unknown);
        },
        { once: true },
      );
      send(request);
    });

  return {
    plan: (problem, { progress, signal }) =>
      ask({ kind: 'plan', problem }, signal, progress) as Promise<PlanAnswer>,
    basket: (problem, currency, signal) =>
      ask({ kind: 'basket', problem, currency }, signal) as Promise<Basket>,
  };
}

/** The planner of the add-in: its worker is a script of its own, which loads what it needs when it is asked. */
export function addInPlanner(): Planner {
  return workerPlanner(() => new Worker(new URL('./planner-worker.ts', import.meta.url), { type: 'module' }));
}

/** A script that can't be loaded says nothing; one that stops says why. */
function faultOf(event: Event): Error {
  const message = 'message' in event && typeof event.message === 'string' ? event.message : '';
  return new Error(
    message === ''
      ? 'Planning could not be started: its script was not loaded. Close the pane and open it again.'
      : `Planning stopped: ${message}`,
  );
}

function wordsOf(fault: unknown): string {
  return fault instanceof Error ? fault.message : String(fault);
}
