/**
 * The least cost of making, found by trying everything, unit by unit: on every day every amount that will still be
 * needed, in any number of batches, and every way of giving out what is there, fresh or old first. It knows nothing of
 * intervals or of where batches may be split.
 */
export interface PlainProblem {
  /** What is needed on day 0, 1, 2 …; whole units. */
  readonly needs: readonly number[];
  /** What a batch costs on day 0, 1, 2 …; whole, as all costs are. */
  readonly setUps: readonly number[];
  readonly waste: number;
  readonly holding: number;
  readonly ready: number;
  /** null: it keeps. */
  readonly life: number | null;
  readonly smallest: number;
  readonly largest: number | null;
}

export interface PlainFigures {
  readonly cost: number;
  readonly batches: number;
  readonly waste: number;
  readonly age: number;
}

const NOTHING: PlainFigures = { cost: 0, batches: 0, waste: 0, age: 0 };

/** Cost, then batches, then waste, then age of the best plan; null where there is none. */
export function plainSearch(problem: PlainProblem): PlainFigures | null {
  const { needs, setUps, ready, smallest } = problem;
  const life = problem.life ?? needs.length;
  const largest = problem.largest ?? Number.POSITIVE_INFINITY;
  const found = new Map<string, PlainFigures | null>();

  /** `stock[made]` is what is left, to be used, of what was made on a day. */
  function from(day: number, stock: readonly number[]): PlainFigures | null {
    if (day === needs.length) return stock.every((left) => left === 0) ? NOTHING : null;
    const key = `${day}:${stock.join()}`;
    const known = found.get(key);
    if (known !== undefined) return known;
    const stillNeeded = Math.min(sum(needs.slice(day)) - sum(stock), sum(needs.slice(day, day + life + 1)));
    let best: PlainFigures | null = null;
    for (let made = 0; made <= stillNeeded; made += 1) {
      for (const makes of waysToMake(made, day)) {
        for (const { left, age } of waysToServe(day, [...stock, made], needs[day] ?? 0, 0)) {
          if ((left[day - life] ?? 0) > 0) continue;
          const later = from(day + 1, left);
          if (later === null) continue;
          const served = needs[day] ?? 0;
          best = better(best, {
            cost: later.cost + makes.cost + problem.holding * (age - ready * served),
            batches: later.batches + makes.batches,
            waste: later.waste + makes.waste,
            age: later.age + age,
          });
        }
      }
    }
    found.set(key, best);
    return best;
  }

  /** Any number of batches of which so much is used; what is wasted is what they fall short of the smallest. */
  function waysToMake(made: number, day: number): Omit<PlainFigures, 'age'>[] {
    if (made === 0) return [NOTHING];
    const ways = [];
    for (let batches = Math.ceil(made / largest) || 1; batches <= made; batches += 1) {
      const waste = Math.max(0, batches * smallest - made);
      ways.push({ cost: batches * (setUps[day] ?? 0) + waste * problem.waste, batches, waste });
    }
    return ways;
  }

  function waysToServe(
    day: number,
    stock: readonly number[],
    need: number,
    made: number,
  ): { left: readonly number[]; age: number }[] {
    if (need === 0) return [{ left: stock, age: 0 }];
    if (made > day - ready) return [];
    const ways = [];
    const there = day > made + life ? 0 : (stock[made] ?? 0);
    for (let taken = 0; taken <= Math.min(need, there); taken += 1) {
      const after = stock.with(made, (stock[made] ?? 0) - taken);
      for (const { left, age } of waysToServe(day, after, need - taken, made + 1)) {
        ways.push({ left, age: age + taken * (day - made) });
      }
    }
    return ways;
  }

  return from(0, []);
}

function better(one: PlainFigures | null, other: PlainFigures): PlainFigures {
  if (one === null) return other;
  const difference =
    other.cost - one.cost || other.batches - one.batches || other.waste - one.waste || other.age - one.age;
  return difference < 0 ? other : one;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
