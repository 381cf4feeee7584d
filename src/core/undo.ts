import type { Day } from './day.ts';
import { type IdentifierMaker, keyOf } from './identifier.ts';
import { type Ledger, markPart, post, standingFor } from './ledger.ts';
import { type Movement, movementOf } from './movement.ts';
import type { Entry } from './studio.ts';

/** What taking back a posting comes to. */
export interface Undoing {
  readonly ledger: Ledger;
  /** The reversing movements, still to be written. */
  readonly movements: readonly Movement[];
  /** The log entries that lost movements, and how far each is drawn now; null for not at all. */
  readonly entries: readonly { readonly entry: Entry; readonly drawn: 'part' | null }[];
}

/** The movements of a posting. */
export function movementsOfPosting(ledger: Ledger, posting: string): Movement[] {
  return [...ledger.accounts.values()]
    .flatMap(({ postings }) => postings.map(({ movement }) => movement))
    .filter(
      ({ record }) => record !== null && record.posting !== null && keyOf(record.posting) === keyOf(posting),
    )
    .sort((a, b) => (a.record?.place.row ?? 0) - (b.record?.place.row ?? 0));
}

/**
 * Takes movements back: each gets a row that repeats it with the quantity negated, on its own date, so that every
 * day's figures are as if it had never been. Its entries can be drawn again.
 * @param movements none of them reversed yet, nor a reversal
 */
export function reverse(
  ledger: Ledger,
  movements: readonly Movement[],
  today: Day,
  newIdentifier: IdentifierMaker,
): Undoing {
  const reversals = movements.map((movement) => {
    const { lot, kind, date, unit, quantity, job, item, entry, lotIs, into } = movement;
    const links = { name: newIdentifier('M'), note: null, reverses: movement, record: null };
    const reversal = movementOf({
      lot,
      kind,
      date,
      unit,
      quantity: quantity.neg(),
      job,
      item,
      entry,
      lotIs,
      into,
      ...links,
    });
    if (reversal === null) throw new Error(`${unit.name} led to the unit of lot ${lot.name} before`);
    return reversal;
  });
  let after = post(ledger, reversals);
  const touched = new Set(movements.flatMap(({ entry }) => (entry === null ? [] : [keyOf(entry)])));
  const entries = ledger.studio.entries.flatMap((entry) => {
    if (entry.key === null || !touched.has(entry.key)) return [];
    const drawn = standingFor(after, entry.key, today).length > 0 ? ('part' as const) : null;
    after = markPart(after, entry.key, drawn === 'part');
    return [{ entry, drawn }];
  });
  return { ledger: after, movements: reversals, entries };
}
