import '../styles/buy.css';
import { plannedWords } from '../../core/forecast/planned-words.ts';
import { keyOf } from '../../core/identifier.ts';
import type { MaterialPlan } from '../../core/planning/plan-answer.ts';
import type { KnownDemand } from '../../core/planning/plan-problem.ts';
import type { Material } from '../../core/studio.ts';
import type { Books } from '../../session/session-state.ts';
import { DayText } from '../parts/figures.tsx';
import { Heading } from '../parts/layout.tsx';
import { LongTable } from '../parts/long-table.tsx';
import { PlanProgress } from '../planning/plan-progress.tsx';
import type { Plan } from '../planning/plan-state.ts';
import { isSome } from '../planning/planned-words.ts';
import { usePlan } from '../planning/use-plan.ts';
import { ChartInWorkbook } from './chart-in-workbook.tsx';
import { Facts } from './facts.tsx';
import { ProjectionView } from './projection-view.tsx';

export interface MaterialOutlookProps {
  readonly books: Books;
  readonly material: Material;
}

/** What will become of a material's stock: from day to day, when to order again, and for which job it is wanted. */
export function MaterialOutlook({ books, material }: MaterialOutlookProps) {
  const plan = usePlan(books);
  const own = plan?.answer.materials.find((each) => keyOf(each.material) === keyOf(material.name));
  return (
    <section class="stack" aria-label="The next weeks">
      <Heading level={3}>The next weeks</Heading>
      <PlanProgress books={books} />
      {plan !== null && own !== undefined && (
        <>
          <ProjectionView plan={own} />
          <ChartInWorkbook books={books} plan={own} />
          <OrderLevels plan={own} />
          <WantedFor plan={plan} of={own} />
        </>
      )}
    </section>
  );
}

function OrderLevels({ plan }: { readonly plan: MaterialPlan }) {
  const { level, forecast, unit } = plan;
  const words = (quantity: number) => (
    <span class="figure">{isSome(quantity) ? plannedWords(quantity, unit) : 'none'}</span>
  );
  return (
    <>
      <p>{forecast.sentence}</p>
      <p>{level.sentence}</p>
      <Facts
        facts={[
          ['Order when down to, by this plan', words(level.level)],
          ['By the plain formula', words(level.plain)],
        ]}
      />
    </>
  );
}

/** What is known to be wanted of it, by day. */
function WantedFor({ plan, of }: { readonly plan: Plan; readonly of: MaterialPlan }) {
  const { demands = [] } = plan.problem.materials.find(({ material }) => material === of.material) ?? {};
  if (demands.length === 0) return <p class="muted">Nothing of it is planned for a job.</p>;
  return (
    <LongTable
      caption="Planned for jobs"
      columns={[{ header: 'Job', wide: true }, { header: 'Day' }, { header: 'How much', align: 'end' }]}
      rows={demands.map((demand, place) => ({
        key: String(place),
        cells: [
          <>
            {demand.job}
            <span class="cell-second">{whatFor(demand)}</span>
          </>,
          <DayText key="day" day={demand.day} />,
          <span key="quantity" class="figure">
            {plannedWords(demand.quantity, of.unit)}
          </span>,
        ],
      }))}
    />
  );
}

function whatFor({ kind, what }: KnownDemand): string {
  return kind === 'planned' ? what : `${what}, logged and not taken from stock yet`;
}
