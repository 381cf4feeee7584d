import { currencyOf, moneyText, toCoins } from '../../core/money.ts';
import type { QuoteRecord } from '../../core/records.ts';
import type { Books } from '../../session/session-state.ts';
import { cellOf } from '../../workbook/located-table.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { DayText } from '../parts/figures.tsx';
import { Heading } from '../parts/layout.tsx';
import { givenQuotes } from './given.ts';

/** The quotes of a job that were written down before: they stay as they were given. */
export function GivenQuotes({ books, job }: { readonly books: Books; readonly job: string }) {
  const { goTo } = usePane();
  const quotes = givenQuotes(books.ledger.studio, job);
  if (quotes.length === 0) return null;
  const table = books.reading.tables.get('quotes');
  return (
    <div class="stack no-print">
      <Heading level={3}>Written down before</Heading>
      <ul class="quote-given">
        {quotes.map((quote) => {
          return (
            <li key={`${quote.quote} ${quote.version}`}>
              <span>
                {`Version ${quote.version}, `}
                <DayText day={quote.madeOn} />
                {quote.state !== null && `, ${quote.state}`}
              </span>
              <span class="figure">{totalText(quote, books)}</span>
              {table !== undefined && (
                <Button
                  look="link"
                  label={`Quote ${quote.quote}, version ${quote.version}: show its row`}
                  onPress={() => goTo(cellOf(table, quote.place.row, 'Quote'))}
                >
                  {quote.quote}
                </Button>
              )}
            </li>
          );
        })}
      </ul>
    </div>
  );
}

function totalText({ total, currency }: QuoteRecord, { settings }: Books): string {
  if (total === null) return 'no total';
  const own = currency === null ? settings.currency : currencyOf(currency, null);
  return `${moneyText(toCoins(total, own), own)} ${own.code}`.trim();
}
