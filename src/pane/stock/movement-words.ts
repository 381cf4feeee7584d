import type { Exact } from '../../core/exact-number.ts';
import type { Posting } from '../../core/lot-account.ts';
import { spokenNumber } from '../../core/wording.ts';

/** For what a movement was: its job, item and entry, as far as it names them. */
export function purposeOf({ movement }: Posting): string {
  const { job, item, entry } = movement;
  return [job, item, entry].filter((each) => each !== null).join(' · ');
}

/** What a movement was, in words: its kind, and whether it takes back another or was taken back. */
export function whatOf(posting: Posting): string {
  const { kind, reverses, lotIs } = posting.movement;
  if (reverses !== null) return `${kind}, taken back`;
  const certainty = lotIs === null ? '' : `, lot ${lotIs}`;
  return posting.reversedOn === null ? `${kind}${certainty}` : `${kind}${certainty}, taken back later`;
}

/** A number with its sign, a true minus before what is below 0; + stands before what is above, unless asked otherwise. */
export function signedNumber(quantity: Exact, plus: '+' | '' = '+'): string {
  const size = spokenNumber(quantity.abs());
  const direction = quantity.compare(0);
  return `${direction < 0 ? '−' : direction > 0 ? plus : ''}${size}`;
}
