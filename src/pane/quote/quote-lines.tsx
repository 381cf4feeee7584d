import type { Currency } from '../../core/money.ts';
import type { QuoteLine } from '../../core/quote-line.ts';
import { Money } from '../parts/figures.tsx';
import { Prose } from '../parts/prose.tsx';
import { Table } from '../parts/table.tsx';
import { basisWords, groupOf, measureWords } from './quote-words.ts';

export interface QuoteLinesProps {
  readonly lines: readonly QuoteLine[];
  readonly currency: Currency;
  /** How each line came about stands below it. */
  readonly withHow: boolean;
}

/** The lines of a quote: what of which material, what one of it costs, on what basis, and what it comes to. */
export function QuoteLines({ lines, currency, withHow }: QuoteLinesProps) {
  if (lines.length === 0) return <p class="muted">The plan takes no material by the usage rates.</p>;
  return (
    <Table
      caption="Consumables"
      columns={[
        { header: 'What', wide: true },
        { header: 'Amount', align: 'end' },
      ]}
      rows={lines.map((line, place) => ({
        key: String(place),
        cells: [
          <>
            {line.material.name}
            <span class="cell-second">{groupOf(line)}</span>
            <span class="cell-second">
              <Prose text={`${measureWords(line, currency)}, ${basisWords(line)}`} />
            </span>
            {withHow && <span class="cell-second quote-how">{`${line.how}.`}</span>}
          </>,
          <Money key="amount" coins={line.amount} currency={currency} />,
        ],
      }))}
    />
  );
}
