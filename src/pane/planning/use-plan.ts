import { useEffect } from 'preact/hooks';
import type { Books } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { latestPlan, type Plan, planFor } from './plan-state.ts';

/**
 * Has the plan of some books worked out as long as it is shown.
 * @returns the latest plan; null before there is one
 */
export function usePlan(books: Books): Plan | null {
  const { planner } = usePane();
  useEffect(() => void planFor(planner, books), [planner, books]);
  return latestPlan.value;
}
