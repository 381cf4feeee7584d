import type { IntegerProgramme } from '../../../src/core/buying/integer-programme.ts';
import { highsSolver } from '../../../src/solver/highs-solver.ts';
import { loadHighs } from '../../../src/solver/load-highs.ts';

/** Three packs of 4 cover 10 at the lowest price: with packs of 7 it would cost 6 at least. */
const SMALL: IntegerProgramme = {
  variables: [
    { name: 'fours', cost: 1.5, whole: true, least: 0, most: Number.POSITIVE_INFINITY },
    { name: 'sevens', cost: 3, whole: true, least: 0, most: Number.POSITIVE_INFINITY },
  ],
  constraints: [
    {
      terms: [
        { variable: 'fours', factor: 4 },
        { variable: 'sevens', factor: 7 },
      ],
      relation: '>=',
      bound: 10,
    },
  ],
};

void highsSolver(loadHighs)(SMALL).then((solution) => postMessage(solution));
