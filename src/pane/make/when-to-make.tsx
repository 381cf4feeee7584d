import '../styles/buy.css';
import { spokenDay } from '../../core/day.ts';
import { exact } from '../../core/exact-number.ts';
import { exactWords } from '../../core/forecast/planned-words.ts';
import type { MakePlan, PlannedBatch } from '../../core/make-plan/make-plan.ts';
import type { Currency } from '../../core/money.ts';
import { unitNamed } from '../../core/unit.ts';
import type { Books } from '../../session/session-state.ts';
import { Button } from '../parts/button.tsx';
import { Money } from '../parts/figures.tsx';
import { Disclosure, Heading } from '../parts/layout.tsx';
import { Prose } from '../parts/prose.tsx';
import { Table } from '../parts/table.tsx';
import { PlanProgress } from '../planning/plan-progress.tsx';
import { coinsOf } from '../planning/planned-words.ts';
import { usePlan } from '../planning/use-plan.ts';
import { openMake } from '../route.ts';
import {
  batchInWords,
  lateInWords,
  servingsInWords,
  unservedInWords,
  type WayInWords,
  waysInWords,
} from './make-plan-words.ts';

/** When to make how much of what is made here, so that every job has fresh material; and what other ways would cost. */
export function WhenToMake({ books }: { readonly books: Books }) {
  const plan = usePlan(books);
  const made = plan?.answer.materials.flatMap(({ make, unit }) => (make === null ? [] : [{ make, unit }]));
  return (
    <section class="stack" aria-label="When to make">
      <Heading level={3}>When to make</Heading>
      <PlanProgress books={books} />
      {made?.length === 0 && (
        <p class="muted">The jobs booked and on the bench need nothing that is made here and isn’t there.</p>
      )}
      {made?.map(({ make, unit }) => (
        <MaterialToMake key={make.material} plan={make} unit={unit} currency={books.settings.currency} />
      ))}
    </section>
  );
}

interface MaterialToMakeProps {
  readonly plan: MakePlan;
  readonly unit: string;
  readonly currency: Currency;
}

function MaterialToMake({ plan, unit, currency }: MaterialToMakeProps) {
  return (
    <div class="plan-block">
      <p class="plan-name">{plan.material}</p>
      {plan.late.map((late) => (
        <p key={`${late.job} ${late.what} ${late.day}`} class="log-missing">
          <Prose text={lateInWords(late, unit)} />
        </p>
      ))}
      {plan.unserved.length > 0 && <p class="log-missing">{unservedInWords(plan)}</p>}
      <ul class="plan-list">
        {plan.batches.map((batch) => (
          <Batch key={batch.makeOn} batch={batch} recipe={plan.recipe} unit={unit} />
        ))}
      </ul>
      <Disclosure summary="Beside other ways">
        <Ways ways={waysInWords(plan, unit)} material={plan.material} currency={currency} />
      </Disclosure>
    </div>
  );
}

interface BatchProps {
  readonly batch: PlannedBatch;
  readonly recipe: string;
  readonly unit: string;
}

function Batch({ batch, recipe, unit }: BatchProps) {
  const { quantity, makeOn } = batch;
  const amount = exactWords(quantity, unit);
  return (
    <li class="plan-item">
      <div class="plan-item-head">
        <span>{`${spokenDay(makeOn)}: ${amount}`}</span>
        <Button
          look="quiet"
          label={`Make it: ${amount} by ${recipe}, planned for ${spokenDay(makeOn)}`}
          onPress={() => openMake({ recipe, amount: exact(quantity), unit: unitNamed(unit) })}
        >
          Make it
        </Button>
      </div>
      {servingsInWords(batch, unit).map((serving) => (
        <p key={serving}>
          <Prose text={serving} />
        </p>
      ))}
      <p class="muted">
        <Prose text={batchInWords(batch, unit)} />
      </p>
    </li>
  );
}

interface WaysProps {
  readonly ways: readonly WayInWords[];
  readonly material: string;
  readonly currency: Currency;
}

function Ways({ ways, material, currency }: WaysProps) {
  return (
    <Table
      caption={`Ways of making ${material}`}
      captionHidden
      columns={[
        { header: 'Way', wide: true },
        { header: 'Bench time', align: 'end' },
        { header: 'Thrown away', align: 'end' },
      ]}
      rows={ways.map(({ name, batches, minutes, effort, waste, wasteCost, against }) => ({
        key: name,
        cells: [
          <>
            {name}
            <span class="cell-second">{batches}</span>
            {against !== null && <span class="low-mark">{against}</span>}
          </>,
          <>
            <span class="figure">{minutes}</span>
            {effort !== null && <Cost coins={effort} currency={currency} />}
          </>,
          <>
            <span class="figure">{waste}</span>
            {wasteCost !== null && <Cost coins={wasteCost} currency={currency} />}
          </>,
        ],
      }))}
    />
  );
}

function Cost({ coins, currency }: { readonly coins: number; readonly currency: Currency }) {
  return (
    <span class="cell-second">
      <Money coins={coinsOf(coins)} currency={currency} withCode />
    </span>
  );
}
