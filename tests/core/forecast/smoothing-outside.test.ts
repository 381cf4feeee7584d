import { describe, expect, test } from 'vitest';
import { croston } from '../../../src/core/forecast/croston.ts';
import { demandPattern } from '../../../src/core/forecast/demand-class.ts';
import { syntetosBoylan } from '../../../src/core/forecast/syntetos-boylan.ts';
import { startingUse, teunterSyntetosBabai } from '../../../src/core/forecast/teunter-syntetos-babai.ts';
import { PRODUCT_C } from './product-c.ts';

const [JANUARY, NOVEMBER] = [0, 10];
const MONTHS_PER_YEAR = 12;

describe('outside checks on productC', () => {
  test.each([
    // Computed with croston() of the R package forecast 8.20, and the same by code written apart.
    [0.1, 0.984_596_521_4],
    [0.2, 0.848_411_662_2],
  ])('Croston with weight %d forecasts %d', (weight, forecast) => {
    expect(croston(PRODUCT_C, weight).forecast).toBeCloseTo(forecast, 9);
  });

  test.each([
    // Fitted values of a worked example of croston() with weight 0.1 on the same page: read.
    ['February of the first year', 1, 0],
    ['March', 2, 1],
    ['May', 4, 0.95],
    ['July', 6, 1.405],
    ['December', 11, 1.186_521_74],
    ['January of the second year', MONTHS_PER_YEAR + JANUARY, 1.186_521_74],
    ['March of the second year', MONTHS_PER_YEAR + 2, 1.423_467_1],
    ['November of the third year', 2 * MONTHS_PER_YEAR + NOVEMBER, 0.984_596_52],
  ])('Croston one month ahead: %s', (_month, place, fitted) => {
    expect(croston(PRODUCT_C, 0.1).fitted[place]).toBeCloseTo(fitted, 8);
  });

  test.each([
    // The factor 1 − weight ÷ 2: recomputed by code written apart.
    [0.1, 0.935_366_695_3],
    [0.2, 0.763_570_496],
  ])('Syntetos and Boylan with weight %d forecast %d', (weight, forecast) => {
    expect(syntetosBoylan(PRODUCT_C, weight).forecast).toBeCloseTo(forecast, 9);
  });

  test('Teunter, Syntetos and Babai forecast 0.83504 from the first use', () => {
    // Formula from memory; 0.8350445109 recomputed by code written apart with the size 2 and the chance 0.5.
    expect(startingUse(PRODUCT_C)).toEqual({ size: 2, chance: 0.5 });
    const { forecast } = teunterSyntetosBabai(PRODUCT_C, 0.1, startingUse(PRODUCT_C));
    expect(forecast).toBeCloseTo(0.835_044_510_9, 9);
  });

  test('Teunter, Syntetos and Babai forecast 0.95959 from the mean size and the share of months with use', () => {
    // Recomputed by code written apart.
    const start = { size: 38 / 11, chance: 11 / 36 };
    expect(teunterSyntetosBabai(PRODUCT_C, 0.1, start).forecast).toBeCloseTo(0.959_587_418_9, 9);
  });

  test('it is lumpy: v 0.79778, p 34 ÷ 11', () => {
    // The mean of the read intervals is 3.0909; the population variation 0.79778 is recomputed. It is lumpy by the
    // other definitions too: p 36 ÷ 11, and v 0.87756 of a sample.
    const { demandClass, meanInterval, sizeVariation } = demandPattern(PRODUCT_C);
    expect(demandClass).toBe('lumpy');
    expect(meanInterval).toBeCloseTo(3.0909, 4);
    expect(sizeVariation).toBeCloseTo(0.797_78, 5);
  });
});
