import type { IntegerProgramme, ProgrammeConstraint } from '../core/buying/integer-programme.ts';

/** How far a sum may be from its bound, as a part of the largest number in it. */
const TOLERANCE = 1e-9;

/**
 * Whether values keep to everything that a programme says: whole where they must be, within their bounds, every
 * constraint met.
 * @returns what is not kept to, in words; null where all is
 */
export function checkSolution(
  programme: IntegerProgramme,
  values: ReadonlyMap<string, number>,
): string | null {
  for (const { name, whole, least, most } of programme.variables) {
    const value = values.get(name);
    if (value === undefined || !Number.isFinite(value)) return `${name} has no value`;
    if (whole && !Number.isInteger(value)) return `${name} is ${value}, not whole`;
    const slack = TOLERANCE * Math.max(1, Math.abs(value));
    if (value < least - slack || value > most + slack) {
      return `${name} is ${value}, not between ${least} and ${most}`;
    }
  }
  const broken = programme.constraints.findIndex((constraint) => !isKept(constraint, values));
  return broken < 0 ? null : `constraint ${broken + 1} is not kept`;
}

function isKept(
  { terms, relation, bound }: ProgrammeConstraint,
  values: ReadonlyMap<string, number>,
): boolean {
  const parts = terms.map(({ variable, factor }) => factor * (values.get(variable) ?? Number.NaN));
  const sum = parts.reduce((total, part) => total + part, 0);
  const slack = TOLERANCE * Math.max(1, Math.abs(bound), ...parts.map(Math.abs));
  if (relation === '>=') return sum >= bound - slack;
  if (relation === '<=') return sum <= bound + slack;
  return Math.abs(sum - bound) <= slack;
}
