import type { Highs, Model } from 'highs';
import type {
  IntegerProgramme,
  ProgrammeSolution,
  SolveProgramme,
} from '../core/buying/integer-programme.ts';
import { checkSolution } from './check-solution.ts';
import { highsModel } from './highs-model.ts';

/** How long a programme may take, in seconds; those of a studio's basket take well under one. */
const USUAL_TIME_LIMIT = 20;

/** The tightest by which the solver tells numbers apart without trouble. */
const TOLERANCE = 1e-9;

/**
 * A solver of integer programmes by HiGHS in WebAssembly. It is loaded when the first programme comes, and stays.
 * Solving itself keeps the thread busy. A solution is given only after it was checked against the programme.
 * @param load loads the package; a load that failed is tried again for the next programme
 * @param timeLimit in seconds, for one programme
 */
export function highsSolver(load: () => Promise<Highs>, timeLimit = USUAL_TIME_LIMIT): SolveProgramme {
  let loading: Promise<Highs> | null = null;
  return async (programme) => {
    try {
      loading ??= load();
      return solved(await loading, programme, timeLimit);
    } catch (error) {
      loading = null;
      return { kind: 'failed', message: error instanceof Error ? error.message : String(error) };
    }
  };
}

function solved(highs: Highs, programme: IntegerProgramme, timeLimit: number): ProgrammeSolution {
  // The solver says of a model without columns only that it is empty.
  if (programme.variables.length === 0) return checked(programme, []);
  return highs.withModel(highsModel(highs, programme), (model): ProgrammeSolution => {
    model.options.set({
      output_flag: false,
      time_limit: timeLimit,
      mip_rel_gap: 0,
      mip_abs_gap: 0,
      primal_feasibility_tolerance: TOLERANCE,
      mip_feasibility_tolerance: TOLERANCE,
    });
    model.run();
    return outcomeOf(highs, programme, model, timeLimit);
  });
}

function outcomeOf(
  { constants }: Highs,
  programme: IntegerProgramme,
  model: Pick<Model, 'getModelStatus' | 'getSolution'>,
  timeLimit: number,
): ProgrammeSolution {
  const { modelStatus } = constants;
  const status = model.getModelStatus();
  const isBounded = programme.variables.every(({ least, most }) => Number.isFinite(most - least));
  switch (status) {
    case modelStatus.optimal:
      return checked(programme, model.getSolution().colValue);
    case modelStatus.infeasible:
      return { kind: 'infeasible' };
    case modelStatus.unboundedOrInfeasible:
      if (isBounded) return { kind: 'infeasible' };
      return { kind: 'failed', message: 'nothing keeps the cost from falling' };
    case modelStatus.unbounded:
      return { kind: 'failed', message: 'nothing keeps the cost from falling' };
    case modelStatus.timeLimit:
      return { kind: 'failed', message: `nothing was found within ${timeLimit} seconds` };
    default: {
      const name = Object.entries(modelStatus).find(([, code]) => code === status)?.[0] ?? String(status);
      return { kind: 'failed', message: `the solver stopped: ${name}` };
    }
  }
}

/** The solver's values, whole ones rounded to what they stand for, if they keep to the programme. */
function checked(programme: IntegerProgramme, columns: ArrayLike<number>): ProgrammeSolution {
  const values = new Map(
    programme.variables.map(({ name, whole }, column) => {
      const value = columns[column] ?? Number.NaN;
      // Adding 0 makes of a negative zero a plain one.
      return [name, whole ? Math.round(value) + 0 : value];
    }),
  );
  const broken = checkSolution(programme, values);
  if (broken !== null && programme.variables.length === 0) return { kind: 'infeasible' };
  if (broken !== null) return { kind: 'failed', message: `the solver's answer does not hold: ${broken}` };
  const cost = programme.variables.reduce((sum, each) => sum + each.cost * (values.get(each.name) ?? 0), 0);
  return { kind: 'optimal', cost, values };
}
