/**
 * A linear programme of which some variables are whole numbers, to be minimised. It is plain data: what solves it is
 * passed in, so that the core needs no solver.
 */
export interface IntegerProgramme {
  readonly variables: readonly ProgrammeVariable[];
  readonly constraints: readonly ProgrammeConstraint[];
}

export interface ProgrammeVariable {
  /** A letter, then letters, digits and underscores. */
  readonly name: string;
  readonly cost: number;
  readonly whole: boolean;
  readonly least: number;
  /** Infinity where there is no limit. */
  readonly most: number;
}

export interface ProgrammeConstraint {
  readonly terms: readonly { readonly variable: string; readonly factor: number }[];
  readonly relation: '>=' | '<=' | '=';
  readonly bound: number;
}

export type ProgrammeSolution =
  | { readonly kind: 'optimal'; readonly cost: number; readonly values: ReadonlyMap<string, number> }
  | { readonly kind: 'infeasible' }
  /** The message says why nothing was found: a time limit, a solver that could not be loaded. */
  | { readonly kind: 'failed'; readonly message: string };

export type SolveProgramme = (programme: IntegerProgramme) => Promise<ProgrammeSolution>;
