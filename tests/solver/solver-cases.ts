import type {
  IntegerProgramme,
  ProgrammeConstraint,
  ProgrammeVariable,
} from '../../src/core/buying/integer-programme.ts';

export function whole(name: string, cost: number, most = Infinity, least = 0): ProgrammeVariable {
  return { name, cost, whole: true, least, most };
}

export function constraint(
  factors: Readonly<Record<string, number>>,
  relation: ProgrammeConstraint['relation'],
  bound: number,
): ProgrammeConstraint {
  const terms = Object.entries(factors).map(([variable, factor]) => ({ variable, factor }));
  return { terms, relation, bound };
}

export function programme(
  variables: readonly ProgrammeVariable[],
  constraints: readonly ProgrammeConstraint[],
): IntegerProgramme {
  return { variables, constraints };
}
