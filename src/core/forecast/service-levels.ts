/** What two equal numbers may differ by, as a share of the larger. */
const NOISE = 1e-9;

/**
 * The smallest of some equally likely needs that is enough with at least a given chance.
 * @param needs rising, at least one
 * @param chance above 0 and at most 1
 */
export function levelForChance(needs: Float64Array, chance: number): number {
  const covered = Math.ceil(chance * needs.length - NOISE);
  return needs[Math.min(Math.max(covered, 1), needs.length) - 1] ?? 0;
}

/**
 * The share of some equally likely needs for which a level is enough.
 * @param needs rising, none below 0, at least one
 */
export function chanceAt(needs: Float64Array, level: number): number {
  const tolerance = NOISE * (needs.at(-1) ?? 0);
  return needs.filter((need) => need <= level + tolerance).length / needs.length;
}

/**
 * The smallest level R, not below 0, at which the share served 1 − E[(need − R)+] ÷ Q is as large as asked for.
 * @param needs equally likely, rising, none below 0, at least one
 * @param share above 0 and at most 1
 * @param orderQuantity Q, the quantity that is ordered each time; where it is 0 no need may be left unserved
 */
export function levelForShareServed(needs: Float64Array, share: number, orderQuantity: number): number {
  const allowed = (1 - share) * orderQuantity * needs.length;
  let level = needs.at(-1) ?? 0;
  let short = 0;
  // From the largest need downwards: between two needs, what is short rises by what the level falls for each need above.
  for (let above = 1; above <= needs.length; above += 1) {
    const next = needs[needs.length - 1 - above] ?? 0;
    const more = (level - next) * above;
    if (short + more > allowed) return level - (allowed - short) / above;
    short += more;
    level = next;
  }
  return level;
}
