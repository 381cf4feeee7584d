import type { Books } from '../../session/session-state.ts';
import { FOCUS_KEEPER, keepingFocus } from '../focus.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Banner } from '../parts/layout.tsx';
import { useAfter } from '../parts/use-after.ts';
import { latestPlan, planAgain, planning, stopPlanning } from './plan-state.ts';

/** After how long it is said that something is worked out. */
const SAID_AFTER = 500;

/** How far the plan is, with a way to stop it; that it was stopped, or why nothing came of it. */
export function PlanProgress({ books }: { readonly books: Books }) {
  const state = planning.value;
  const said = useAfter(SAID_AFTER, state.kind === 'working');
  return (
    <div class="plan-progress" tabIndex={-1} {...{ [FOCUS_KEEPER]: '' }}>
      <p role="status" class="visually-hidden">
        {said ? 'Working out the plan' : ''}
      </p>
      {said && state.kind === 'working' && <Working done={state.done} all={state.all} />}
      {state.kind === 'stopped' && (
        <Banner tone="note" title="The plan was not worked out to its end" actions={<Again books={books} />}>
          {latestPlan.value === null
            ? 'You stopped it.'
            : 'You stopped it. What stands below is the plan before that.'}
        </Banner>
      )}
      {state.kind === 'failed' && (
        <div role="alert">
          <Banner tone="stop" title="The plan could not be worked out" actions={<Again books={books} />}>
            {state.message}
          </Banner>
        </div>
      )}
    </div>
  );
}

function Working({ done, all }: { readonly done: number; readonly all: number }) {
  const text = all === 0 ? 'Working out the plan…' : `Working out the plan: material ${done} of ${all}`;
  return (
    <>
      <label class="plan-progress-label">
        <span>{text}</span>
        <progress {...(all === 0 ? {} : { value: done, max: all })} />
      </label>
      <Button onPress={() => keepingFocus(stopPlanning)}>Cancel</Button>
    </>
  );
}

function Again({ books }: { readonly books: Books }) {
  const { planner } = usePane();
  return (
    <Button onPress={() => keepingFocus(() => void planAgain(planner, books))}>Work it out again</Button>
  );
}
