import { keyOf } from '../../core/identifier.ts';
import type { QuoteRecord } from '../../core/records.ts';
import type { Studio } from '../../core/studio.ts';

/** The quotes of a job that were written down, the latest version first. */
export function givenQuotes({ quotes }: Studio, job: string): QuoteRecord[] {
  return quotes
    .filter((quote) => quote.quote !== null && keyOf(quote.job) === keyOf(job))
    .toSorted((a, b) => b.version - a.version);
}

/** The quote of a job with the highest version. */
export function latestQuote(studio: Studio, job: string): QuoteRecord | undefined {
  return givenQuotes(studio, job)[0];
}
