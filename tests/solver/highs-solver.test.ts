import loadPackage, { type Highs } from 'highs';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/core/seeded-random.ts';
import { checkSolution } from '../../src/solver/check-solution.ts';
import { highsSolver } from '../../src/solver/highs-solver.ts';
import { loadHighs } from '../../src/solver/load-highs.ts';
import { constraint, programme, whole } from './solver-cases.ts';

const solve = highsSolver(loadHighs);

describe('the solver', () => {
  test('finds whole numbers, not rounded fractions', async () => {
    // Without whole numbers 10 ÷ 7 packs of 7 would be cheapest, and rounded up they cost 6.
    const answer = await solve(
      programme([whole('fours', 1.75), whole('sevens', 3)], [constraint({ fours: 4, sevens: 7 }, '>=', 10)]),
    );
    expect(answer).toEqual({
      kind: 'optimal',
      cost: 4.75,
      values: new Map([
        ['fours', 1],
        ['sevens', 1],
      ]),
    });
  });

  test('leaves what need not be whole as it is', async () => {
    const part = { name: 'part', cost: 1, whole: false, least: 0.25, most: 2 };
    const answer = await solve(
      programme([part, whole('all', 5)], [constraint({ part: 1, all: 1 }, '=', 2.5)]),
    );
    expect(answer).toEqual({
      kind: 'optimal',
      cost: 6.5,
      values: new Map([
        ['part', 1.5],
        ['all', 1],
      ]),
    });
  });

  test('adds up a variable that a constraint names twice', async () => {
    const twice = constraint({ a: 1 }, '>=', 6);
    const answer = await solve(
      programme([whole('a', 1)], [{ ...twice, terms: [...twice.terms, ...twice.terms] }]),
    );
    expect(answer).toMatchObject({ kind: 'optimal', cost: 3 });
  });

  test('says that nothing meets all constraints', async () => {
    const between = [constraint({ a: 2 }, '>=', 3), constraint({ a: 2 }, '<=', 3.5)];
    expect(await solve(programme([whole('a', 1)], between))).toEqual({ kind: 'infeasible' });
    expect(await solve(programme([whole('a', 1, 2)], [constraint({ a: 1 }, '>=', 3)]))).toEqual({
      kind: 'infeasible',
    });
  });

  test('knows an empty programme, and one that asks nothing of nothing', async () => {
    expect(await solve(programme([], []))).toEqual({ kind: 'optimal', cost: 0, values: new Map() });
    expect(await solve(programme([], [constraint({}, '>=', 1)]))).toEqual({ kind: 'infeasible' });
  });

  test('fails in words on a programme that has no least, or is wrong', async () => {
    expect(await solve(programme([whole('a', -1)], []))).toEqual({
      kind: 'failed',
      message: 'nothing keeps the cost from falling',
    });
    expect(await solve(programme([whole('a', 1)], [constraint({ b: 1 }, '>=', 1)]))).toEqual({
      kind: 'failed',
      message: 'the programme has no variable b',
    });
  });

  test('says so where the time is up', async () => {
    const hurried = highsSolver(loadHighs, 0);
    const one = programme([whole('a', 2), whole('b', 3)], [constraint({ a: 3, b: 5 }, '>=', 11)]);
    expect(await hurried(one)).toEqual({ kind: 'failed', message: 'nothing was found within 0 seconds' });
  });

  test('tells apart sums that differ by a millionth', async () => {
    const packs = [whole('tenths', 1), whole('ones', 100)];
    const just = constraint({ tenths: 0.1, ones: 1 }, '>=', 0.3);
    const above = constraint({ tenths: 0.1, ones: 1 }, '>=', 0.300001);
    expect(await solve(programme(packs, [just]))).toMatchObject({ kind: 'optimal', cost: 3 });
    expect(await solve(programme(packs, [above]))).toMatchObject({ kind: 'optimal', cost: 4 });
  });

  test('agrees with every combination, on programmes of any kind', async () => {
    const random = seededRandom(3);
    const number = (most: number) => Math.floor(random() * most);
    let infeasible = 0;
    for (let tried = 0; tried < 400; tried += 1) {
      const variables = ['a', 'b', 'c'].map((name) => whole(name, number(9) - 2, 1 + number(5)));
      const constraints = Array.from({ length: 3 }, () =>
        constraint(
          { a: number(7) - 2, b: number(7) - 2, c: number(7) - 2 },
          (['>=', '<=', '='] as const)[number(3)] ?? '=',
          number(12),
        ),
      );
      const each = programme(variables, constraints);
      let least: number | null = null;
      const [a = 0, b = 0, c = 0] = variables.map(({ most }) => most);
      for (let index = 0; index < (a + 1) * (b + 1) * (c + 1); index += 1) {
        const counts = [
          index % (a + 1),
          Math.floor(index / (a + 1)) % (b + 1),
          Math.floor(index / ((a + 1) * (b + 1))),
        ];
        const value = (name: string) => counts[['a', 'b', 'c'].indexOf(name)] ?? 0;
        const isKept = constraints.every(({ terms, relation, bound }) => {
          const sum = terms.reduce((total, { variable, factor }) => total + factor * value(variable), 0);
          return relation === '>=' ? sum >= bound : relation === '<=' ? sum <= bound : sum === bound;
        });
        const cost = variables.reduce((total, variable) => total + variable.cost * value(variable.name), 0);
        if (isKept && (least === null || cost < least)) least = cost;
      }
      if (least === null) infeasible += 1;
      const answer = await solve(each);
      expect(answer.kind === 'optimal' ? answer.cost : answer).toEqual(least ?? { kind: 'infeasible' });
      if (answer.kind === 'optimal') expect(checkSolution(each, answer.values)).toBeNull();
    }
    expect(infeasible).toBeGreaterThan(20);
    expect(infeasible).toBeLessThan(380);
  });
});

describe('loading', () => {
  test('happens when the first programme comes, and once', async () => {
    let loads = 0;
    const counting = highsSolver(() => {
      loads += 1;
      return loadHighs();
    });
    expect(loads).toBe(0);
    const one = programme([whole('a', 1)], [constraint({ a: 1 }, '>=', 1)]);
    await Promise.all([counting(one), counting(one)]);
    expect(await counting(one)).toMatchObject({ kind: 'optimal', cost: 1 });
    expect(loads).toBe(1);
  });

  test('that fails is said, and tried again', async () => {
    let loads = 0;
    const shaky = highsSolver(() => {
      loads += 1;
      return loads === 1 ? Promise.reject(new Error('highs.wasm is not there')) : loadHighs();
    });
    const one = programme([whole('a', 1)], [constraint({ a: 1 }, '>=', 1)]);
    expect(await shaky(one)).toEqual({ kind: 'failed', message: 'highs.wasm is not there' });
    expect(await shaky(one)).toMatchObject({ kind: 'optimal', cost: 1 });
  });
});

describe('an answer that does not hold is no answer', () => {
  /** The real package, whose solutions are spoilt. */
  async function spoilt(values: number[]): Promise<Highs> {
    const highs = await loadPackage();
    const withModel = (source: unknown, work: (model: unknown) => unknown): unknown =>
      highs.withModel(source as Parameters<typeof highs.createModel>[0] & object, (model) =>
        work({
          options: model.options,
          run: () => model.run(),
          getModelStatus: () => model.getModelStatus(),
          getSolution: () => ({ colValue: values }),
        }),
      );
    return { ...highs, constants: highs.constants, infinity: highs.infinity, withModel } as unknown as Highs;
  }

  test.each([
    [[1, 0], 'constraint 1 is not kept'],
    [[9, 0], 'a is 9, not between 0 and 5'],
    [[Number.NaN, 0], 'a has no value'],
    [[], 'a has no value'],
  ])('%o: %s', async (values, why) => {
    const answer = await highsSolver(() => spoilt(values))(
      programme([whole('a', 1, 5), whole('b', 1, 5)], [constraint({ a: 1, b: 1 }, '>=', 2)]),
    );
    expect(answer).toEqual({ kind: 'failed', message: `the solver's answer does not hold: ${why}` });
  });

  test('a hair beside a whole number is that number', async () => {
    const answer = await highsSolver(() => spoilt([1.9999999997, -1e-12]))(
      programme([whole('a', 1, 5), whole('b', 1, 5)], [constraint({ a: 1, b: 1 }, '>=', 2)]),
    );
    expect(answer).toEqual({
      kind: 'optimal',
      cost: 2,
      values: new Map([
        ['a', 2],
        ['b', 0],
      ]),
    });
  });
});
