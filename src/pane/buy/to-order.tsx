import { useEffect } from 'preact/hooks';
import { withWishes } from '../../core/buying/wishes.ts';
import type { Books } from '../../session/session-state.ts';
import { FOCUS_KEEPER, keepingFocus } from '../focus.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Banner, Heading } from '../parts/layout.tsx';
import { useAfter } from '../parts/use-after.ts';
import type { Plan } from '../planning/plan-state.ts';
import { AddToOrder } from './add-to-order.tsx';
import { basketFor, latestBasket, setByHand, solveAgain, solving, stopSolving } from './basket-state.ts';
import { BasketView } from './basket-view.tsx';

/** After how long it is said that something is worked out. */
const SAID_AFTER = 500;

interface ToOrderProps {
  readonly books: Books;
  readonly plan: Plan;
}

/** What to order now from whom: the cheapest basket that covers what is needed. */
export function ToOrder({ books, plan }: ToOrderProps) {
  const { planner } = usePane();
  const set = setByHand.value;
  useEffect(() => void basketFor(planner, plan, set), [planner, plan, set]);
  const solved = latestBasket.value;
  const state = solving.value;
  const { needs, besides } = plan.answer;
  const isAsked = needs.length > 0 || set.length > 0;
  return (
    <section class="stack" aria-label="To order now">
      <Heading level={3}>To order now</Heading>
      <SolvingProgress plan={plan} />
      {!isAsked ? (
        <div class="empty">
          <p class="empty-title">Nothing has to be ordered now</p>
          <p>
            Nothing that is bought is down to where it should be ordered again, and no job lacks anything
            before an order could be here.
          </p>
        </div>
      ) : (
        solved !== null && (
          <BasketView
            books={books}
            basket={solved.basket}
            needs={withWishes(solved.plan.answer.needs, solved.plan.answer.besides, solved.set)}
            isFresh={state.kind === 'at rest' && solved.plan === plan && plan.books === books}
          />
        )
      )}
      {books.readingOnly === null && (
        <AddToOrder
          besides={besides}
          ordering={solved?.basket.orders.map(({ supplier }) => supplier) ?? []}
        />
      )}
    </section>
  );
}

function SolvingProgress({ plan }: { readonly plan: Plan }) {
  const { planner } = usePane();
  const state = solving.value;
  const said = useAfter(SAID_AFTER, state.kind === 'working');
  const again = (
    <Button onPress={() => keepingFocus(() => void solveAgain(planner, plan, setByHand.value))}>
      Work it out again
    </Button>
  );
  return (
    <div class="plan-progress" tabIndex={-1} {...{ [FOCUS_KEEPER]: '' }}>
      <p role="status" class="visually-hidden">
        {said ? 'Looking for the cheapest order' : ''}
      </p>
      {said && (
        <>
          <label class="plan-progress-label">
            <span>Looking for the cheapest order…</span>
            <progress />
          </label>
          <Button onPress={() => keepingFocus(stopSolving)}>Cancel</Button>
        </>
      )}
      {state.kind === 'stopped' && (
        <Banner tone="note" title="The cheapest order was not looked for to the end" actions={again}>
          You stopped it.
        </Banner>
      )}
      {state.kind === 'failed' && (
        <div role="alert">
          <Banner tone="stop" title="The order could not be worked out" actions={again}>
            {state.message}
          </Banner>
        </div>
      )}
    </div>
  );
}
