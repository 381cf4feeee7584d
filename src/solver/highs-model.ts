import type { Highs, ModelData } from 'highs';
import type { IntegerProgramme, ProgrammeConstraint } from '../core/buying/integer-programme.ts';

/** A programme as the solver takes it: columns are variables, rows constraints, the matrix row by row. */
export function highsModel({ constants, infinity }: Highs, programme: IntegerProgramme): ModelData {
  const { variables, constraints } = programme;
  const columns = new Map(variables.map(({ name }, column) => [name, column]));
  const rows = constraints.map((constraint) => rowOf(constraint, columns));
  const starts = [0];
  for (const row of rows) starts.push((starts.at(-1) ?? 0) + row.size);
  return {
    numCols: variables.length,
    numRows: constraints.length,
    colCost: variables.map(({ cost }) => cost),
    colLower: variables.map(({ least }) => least),
    colUpper: variables.map(({ most }) => (most === Infinity ? infinity : most)),
    rowLower: constraints.map(({ relation, bound }) => (relation === '<=' ? -infinity : bound)),
    rowUpper: constraints.map(({ relation, bound }) => (relation === '>=' ? infinity : bound)),
    integrality: variables.map(({ whole }) =>
      whole ? constants.variableType.integer : constants.variableType.continuous,
    ),
    matrix: {
      format: 'csr',
      numRows: constraints.length,
      numCols: variables.length,
      starts,
      indices: rows.flatMap((row) => [...row.keys()]),
      values: rows.flatMap((row) => [...row.values()]),
    },
  };
}

/**
 * The factors of a constraint by column; a variable that is named twice counts once, with both.
 * @throws where it names a variable that the programme doesn't have
 */
function rowOf({ terms }: ProgrammeConstraint, columns: ReadonlyMap<string, number>): Map<number, number> {
  const row = new Map<number, number>();
  for (const { variable, factor } of terms) {
    const column = columns.get(variable);
    if (column === undefined) throw new Error(`the programme has no variable ${variable}`);
    row.set(column, (row.get(column) ?? 0) + factor);
  }
  return row;
}
