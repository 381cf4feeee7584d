import type { Quoted } from '../../actions/quote-job.ts';
import type { Currency } from '../../core/money.ts';
import { Money } from '../parts/figures.tsx';
import { Table } from '../parts/table.tsx';
import { usedWords } from './quote-words.ts';
import { type Sum, sumsOf } from './sums.ts';

/** What a quote comes to, and beside it what the job has taken from stock so far. */
export function QuoteSums({ quoted, currency }: { readonly quoted: Quoted; readonly currency: Currency }) {
  const row = ({ name, coins }: Sum) => ({
    key: name,
    cells: [name, <Money key="amount" coins={coins} currency={currency} />],
  });
  const sums = sumsOf(quoted.quote);
  return (
    <div class="stack">
      <Table
        caption="Sums"
        captionHidden
        columns={[
          { header: 'Sum', wide: true },
          { header: 'Amount', align: 'end' },
        ]}
        rows={sums.filter(({ isTotal }) => !isTotal).map(row)}
        foot={sums.filter(({ isTotal }) => isTotal).map(row)}
      />
      <p class="muted no-print">{usedWords(quoted.used, currency)}</p>
    </div>
  );
}
