import type { Currency } from '../../core/money.ts';
import type { YearAhead } from '../../core/planning/year-ahead.ts';
import {
  bestAtATimeWords,
  dearestOf,
  togetherWords,
  yearlyUseWords,
} from '../../core/planning/year-words.ts';
import { Money } from '../parts/figures.tsx';
import { Disclosure } from '../parts/layout.tsx';
import { Prose } from '../parts/prose.tsx';
import { Table } from '../parts/table.tsx';
import { coinsOf } from '../planning/planned-words.ts';
import { MaterialLink } from './material-link.tsx';

interface OverAYearProps {
  readonly year: YearAhead;
  readonly currency: Currency;
}

/** What takes most of the money in a year at this pace, and how to order it cheapest. */
export function OverAYear({ year, currency }: OverAYearProps) {
  const dearest = dearestOf(year);
  if (dearest.length === 0) return null;
  return (
    <Disclosure summary="Over a year at this pace">
      <Table
        caption="Most of the money goes into"
        columns={[
          { header: 'Material', wide: true },
          { header: 'A year', align: 'end' },
          { header: currency.code === '' ? 'Costs' : `Costs ${currency.code}`, align: 'end' },
        ]}
        rows={dearest.map((each) => ({
          key: each.material,
          cells: [
            <>
              <MaterialLink material={each.material} />
              {each.atATime !== null && (
                <span class="cell-second">{`best ${bestAtATimeWords(each)} at a time, from ${each.atATime.supplier}`}</span>
              )}
            </>,
            <span key="quantity" class="figure">
              {yearlyUseWords(each)}
            </span>,
            <>
              <Money coins={coinsOf(each.value)} currency={currency} />
              <span class="cell-second">{`${Math.round(each.percent)} %`}</span>
            </>,
          ],
        }))}
      />
      {year.suppliers.map((each) => (
        <p key={each.supplier}>
          <Prose text={togetherWords(each, currency)} />
        </p>
      ))}
    </Disclosure>
  );
}
