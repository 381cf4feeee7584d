import { useId } from 'preact/hooks';
import { plannedWords } from '../../core/forecast/planned-words.ts';
import type { MaterialPlan } from '../../core/planning/plan-answer.ts';
import { DayText } from '../parts/figures.tsx';
import { Disclosure } from '../parts/layout.tsx';
import { LongTable } from '../parts/long-table.tsx';
import { type Mark, type MarkRow, type ProjectionChart, projectionChart } from './projection-steps.ts';
import { chartInWords, eventfulDays } from './projection-words.ts';

const PLOT_HEIGHT = 120;
const ROW_HEIGHT = 14;

const LEGEND: Readonly<Record<Mark, string>> = {
  arrives: 'arrives',
  made: 'made here',
  'goes off': 'goes off unused',
  missing: 'missing',
};

/** What will be usable from day to day: a chart, and the same in a table. */
export function ProjectionView({ plan }: { readonly plan: MaterialPlan }) {
  const { unit, projection, level } = plan;
  const chart = projectionChart(projection.days, level.level);
  const [first] = projection.days;
  const last = projection.days.at(-1);
  if (first === undefined || last === undefined) return null;
  return (
    <figure class="outlook">
      <Plot chart={chart} plan={plan} />
      <div class="outlook-days" aria-hidden="true">
        <DayText day={first.day} />
        <DayText day={last.day} />
      </div>
      <figcaption>
        <ul class="outlook-legend" aria-label="What the marks mean">
          <li>
            <Swatch name="usable" />
            usable
          </li>
          {chart.level !== null && (
            <li>
              <Swatch name="level" />
              {`order when down to ${plannedWords(level.level, unit)}`}
            </li>
          )}
          {chart.rows.map(({ mark }) => (
            <li key={mark}>
              <svg width="14" height="14" aria-hidden="true" focusable="false">
                <Shape mark={mark} at="50%" middle={ROW_HEIGHT / 2} />
              </svg>
              {LEGEND[mark]}
            </li>
          ))}
        </ul>
      </figcaption>
      <Disclosure summary="As a table">
        <LongTable
          caption={`Days on which something happens to ${plan.material}`}
          captionHidden
          columns={[
            { header: 'Day' },
            { header: 'What happens', wide: true },
            { header: 'Usable', align: 'end' },
          ]}
          rows={eventfulDays(projection.days, unit).map(({ day, events, usable }) => ({
            key: String(day),
            cells: [
              <DayText key="day" day={day} />,
              events.join(', '),
              <span key="usable" class="figure">
                {usable}
              </span>,
            ],
          }))}
        />
      </Disclosure>
    </figure>
  );
}

/** All places across are in %, so that it fills whatever width there is, and nothing in it is stretched. */
function Plot({ chart, plan }: { readonly chart: ProjectionChart; readonly plan: MaterialPlan }) {
  const title = useId();
  const y = (percent: number): number => (percent / 100) * PLOT_HEIGHT;
  const { steps, scale, level, rows } = chart;
  return (
    <svg
      class="outlook-plot"
      width="100%"
      height={PLOT_HEIGHT + 2 + rows.length * ROW_HEIGHT}
      role="img"
      aria-labelledby={title}
    >
      <title id={title}>{chartInWords(plan)}</title>
      {steps.map(({ from, to, at }) => (
        <rect
          key={from}
          class="outlook-area"
          x={`${from}%`}
          width={`${to - from}%`}
          y={y(at)}
          height={PLOT_HEIGHT - y(at)}
        />
      ))}
      {scale.map(({ at, quantity }) => (
        <line key={quantity} class="outlook-scale" x1="0" x2="100%" y1={y(at)} y2={y(at)} />
      ))}
      {steps.map(({ from, to, at }, place) => (
        <g key={from} class="outlook-line">
          <line x1={`${from}%`} x2={`${to}%`} y1={y(at)} y2={y(at)} />
          {place > 0 && (
            <line x1={`${from}%`} x2={`${from}%`} y1={y(steps[place - 1]?.at ?? at)} y2={y(at)} />
          )}
        </g>
      ))}
      <line class="outlook-ground" x1="0" x2="100%" y1={PLOT_HEIGHT} y2={PLOT_HEIGHT} />
      {level !== null && <line class="outlook-level" x1="0" x2="100%" y1={y(level)} y2={y(level)} />}
      {scale.map(({ at, quantity }) => (
        <text key={quantity} class="outlook-figure" x="2" y={y(at) - 3}>
          {plannedWords(quantity, plan.unit)}
        </text>
      ))}
      {rows.map((row, place) => (
        <Marks key={row.mark} row={row} middle={PLOT_HEIGHT + 2 + (place + 0.5) * ROW_HEIGHT} />
      ))}
    </svg>
  );
}

function Marks({ row: { mark, at }, middle }: { readonly row: MarkRow; readonly middle: number }) {
  return (
    <>
      {at.map((each) => (
        <Shape key={each} mark={mark} at={`${each}%`} middle={middle} />
      ))}
    </>
  );
}

/** Drawn around 0, 0: by its form each kind is told from the others, not by its colour alone. */
const SHAPES: Readonly<Record<Mark, string>> = {
  arrives: 'M-5 -3 L5 -3 L0 5 Z',
  made: 'M0 -5 L5 0 L0 5 L-5 0 Z',
  'goes off': 'M-4 -4 L4 4 M4 -4 L-4 4',
  missing: 'M-4 -4 H4 V4 H-4 Z',
};

interface ShapeProps {
  readonly mark: Mark;
  /** Where its middle lies across, as a length. */
  readonly at: string;
  readonly middle: number;
}

function Shape({ mark, at, middle }: ShapeProps) {
  return (
    <svg class="outlook-mark-box" x={at} y={middle} width="1" height="1" aria-hidden="true">
      <path class={`outlook-mark outlook-${mark.replace(' ', '-')}`} d={SHAPES[mark]} />
    </svg>
  );
}

function Swatch({ name }: { readonly name: 'usable' | 'level' }) {
  return (
    <svg width="14" height="14" aria-hidden="true" focusable="false">
      <line class={name === 'level' ? 'outlook-level' : 'outlook-swatch'} x1="0" x2="14" y1="7" y2="7" />
    </svg>
  );
}
