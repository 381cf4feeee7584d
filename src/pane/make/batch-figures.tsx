import { makeFirstRemark } from '../../actions/batch-remarks.ts';
import type { BatchPlan } from '../../actions/make-batch.ts';
import type { Currency } from '../../core/money.ts';
import { spokenQuantity } from '../../core/wording.ts';
import { Money } from '../parts/figures.tsx';
import { keepsWords, readyWords, unitCostWords } from './make-words.ts';

/** What comes of a batch: what it costs, until when it is good and why, when it is ready, and what else is to be said. */
export function BatchFigures({ plan, currency }: { readonly plan: BatchPlan; readonly currency: Currency }) {
  const { cost, yielded, unit, parts } = plan;
  // What is made first has a button in its line.
  const elsewhere = parts.map(makeFirstRemark);
  const remarks = plan.remarks.filter((remark) => !elsewhere.includes(remark));
  const ready = readyWords(plan);
  return (
    <>
      <p class="log-total">
        <span>{`In all, for ${spokenQuantity(yielded, unit)}`}</span>
        <Money coins={cost} currency={currency} withCode />
      </p>
      {cost !== null && yielded.compare(0) > 0 && (
        <p class="make-each">{unitCostWords(cost, yielded, unit, currency)}</p>
      )}
      <p>
        {keepsWords(plan)}
        {ready !== null && ` ${ready}`}
      </p>
      {remarks.map((remark) => (
        <p key={remark} class="log-missing">
          {remark}
        </p>
      ))}
    </>
  );
}
