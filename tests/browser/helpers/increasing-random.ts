/**
 * Numbers from which identifiers are made that sort in the order in which they were made. The uses of a lot on one day
 * are costed in the order of their identifiers, so an odd cent falls on the same use wherever these are used.
 * It stands by itself, to be carried into a page as text.
 */
export function increasingRandom(): () => number {
  const characters = 28;
  const places = 8;
  let calls = 0;
  return () => {
    const place = calls % places;
    const count = Math.floor(calls / places);
    calls += 1;
    // A letter at both ends: what could be read as a date or a number is made anew, and the count would jump.
    const fixed = place === 0 ? 16 : place === places - 1 ? characters - 1 : null;
    const digit = fixed ?? Math.floor(count / characters ** (places - 2 - place)) % characters;
    return (digit + 0.5) / characters;
  };
}
