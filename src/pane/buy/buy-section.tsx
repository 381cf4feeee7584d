import '../styles/log.css';
import '../styles/stock.css';
import '../styles/buy.css';
import type { Books } from '../../session/session-state.ts';
import { Heading } from '../parts/layout.tsx';
import { PlanProgress } from '../planning/plan-progress.tsx';
import { usePlan } from '../planning/use-plan.ts';
import { OnTheWay } from './on-the-way.tsx';
import { OverAYear } from './over-a-year.tsx';
import { TextsToSend } from './text-to-send.tsx';
import { ToOrder } from './to-order.tsx';
import { WhatPresses } from './what-presses.tsx';

/** The section Buy: what will run out, what to order now from whom, and what is on its way. */
export function BuySection({ books }: { readonly books: Books }) {
  const plan = usePlan(books);
  return (
    <div class="stack">
      <Heading focusHome>Buy</Heading>
      <TextsToSend />
      <PlanProgress books={books} />
      {plan !== null && (
        <>
          <WhatPresses answer={plan.answer} currency={books.settings.currency} />
          <ToOrder books={books} plan={plan} />
        </>
      )}
      <OnTheWay books={books} />
      {plan !== null && <OverAYear year={plan.answer.year} currency={books.settings.currency} />}
    </div>
  );
}
