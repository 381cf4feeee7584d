const PERCENT = 100;
/** The share of a total that is nothing: the rest of a sum of numbers that aren't exact. */
const NOISE = 1e-9;

/** What is used of a material in a year. */
export interface YearlyUse {
  readonly material: string;
  readonly quantity: number;
  /** What one unit costs; null where that isn't known. */
  readonly unitCost: number | null;
}

/** A takes most of the money, C hardly any. */
export type ValueClass = 'A' | 'B' | 'C';

export interface ValuedMaterial {
  readonly material: string;
  /** What a year's use costs. */
  readonly value: number;
  /** In % of the value of all. */
  readonly percent: number;
  readonly valueClass: ValueClass;
}

/** What a class has of the materials and of the money. */
export interface ClassShare {
  readonly valueClass: ValueClass;
  readonly materials: number;
  readonly value: number;
  readonly percent: number;
}

export interface ValueClasses {
  /** The dearest first. */
  readonly materials: readonly ValuedMaterial[];
  /** A, B and C in turn. */
  readonly classes: readonly ClassShare[];
  readonly value: number;
  /** The materials whose cost isn't known; they are in no class. */
  readonly withoutCost: readonly string[];
}

/** Up to which share of the money, in %, A reaches, and A and B together. */
export interface ClassLimits {
  readonly a: number;
  readonly ab: number;
}

/** Source: Heizer & Render, Operations Management, on ABC analysis: A some 70 to 80 % of the money, C some 5 %. */
export const USUAL_CLASS_LIMITS: ClassLimits = { a: 70, ab: 95 };

/**
 * Which few materials take most of the money: by the value of a year's use, A are the fewest that reach the first limit
 * together, B the fewest more that reach the second, C the rest. What isn't used is C.
 */
export function valueClasses(uses: readonly YearlyUse[], limits: ClassLimits): ValueClasses {
  const valued = uses
    .flatMap(({ material, quantity, unitCost }) =>
      unitCost === null ? [] : [{ material, value: quantity * unitCost }],
    )
    .toSorted((a, b) => b.value - a.value);
  const total = valued.reduce((sum, { value }) => sum + value, 0);
  const percentOf = (value: number): number => (total > 0 ? (value / total) * PERCENT : 0);
  let before = 0;
  const materials = valued.map(({ material, value }): ValuedMaterial => {
    const reached = percentOf(before) + NOISE;
    before += value;
    const valueClass = value <= 0 || reached >= limits.ab ? 'C' : reached >= limits.a ? 'B' : 'A';
    return { material, value, percent: percentOf(value), valueClass };
  });
  return {
    materials,
    classes: (['A', 'B', 'C'] as const).map((valueClass) => {
      const own = materials.filter((each) => each.valueClass === valueClass);
      const value = own.reduce((sum, each) => sum + each.value, 0);
      return { valueClass, materials: own.length, value, percent: percentOf(value) };
    }),
    value: total,
    withoutCost: uses.filter(({ unitCost }) => unitCost === null).map(({ material }) => material),
  };
}
