import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { CallResult, FunctionBooks } from '../../src/functions/evaluate-call.ts';
import * as evaluation from '../../src/functions/evaluate-call.ts';
import { LiveAnswers } from '../../src/functions/live-answers.ts';
import { date } from '../helpers/literal.ts';
import { studioBooks } from './books.ts';

/** The small studio before and after 2 sheets of tissue were used. */
const BEFORE = studioBooks();
const AFTER = studioBooks({
  Movements: [
    { Movement: 'M-1', Date: date('2026-04-02'), Kind: 'Use', Lot: 'T-2', Quantity: 2, Unit: 'sheet' },
  ],
});

describe('live answers', () => {
  let answers: LiveAnswers;
  let told: [cell: string, result: CallResult][];
  const cell =
    (name: string) =>
    (result: CallResult): void => {
      told.push([name, result]);
    };
  const toldSince = (): [string, CallResult][] => told.splice(0);

  beforeEach(() => {
    answers = new LiveAnswers();
    told = [];
  });
  afterEach(() => vi.restoreAllMocks());

  test('a call before the first reading waits, and is answered by it', () => {
    answers.register('LEFT', ['Repair tissue 5'], cell('A1'));
    expect(toldSince()).toEqual([]);
    answers.publish(BEFORE);
    expect(toldSince()).toEqual([['A1', { value: 12 }]]);
  });

  test('a call after it is answered at once', () => {
    answers.publish(BEFORE);
    answers.register('LEFT', ['Repair tissue 5'], cell('A1'));
    expect(toldSince()).toEqual([['A1', { value: 12 }]]);
  });

  test('when the books change, only cells whose answer changes are told', () => {
    answers.publish(BEFORE);
    answers.register('LEFT', ['Repair tissue 5'], cell('A1'));
    answers.register('LEFT', ['Wheat starch'], cell('A2'));
    answers.register('LEFT', ['Nothing such'], cell('A3'));
    toldSince();
    answers.publish(AFTER);
    expect(toldSince()).toEqual([['A1', { value: 10 }]]);
    answers.publish(AFTER);
    expect(toldSince()).toEqual([]);
  });

  test('cells that ask the same thing are all told, from one evaluation', () => {
    const evaluated = vi.spyOn(evaluation, 'evaluateCall');
    for (const name of ['A1', 'A2', 'A3']) answers.register('LEFT', ['Repair tissue 5'], cell(name));
    answers.publish(BEFORE);
    answers.register('LEFT', ['Repair tissue 5'], cell('A4'));
    expect(toldSince().map(([name]) => name)).toEqual(['A1', 'A2', 'A3', 'A4']);
    expect(evaluated).toHaveBeenCalledTimes(1);
  });

  test('a call that was taken back is told nothing any more, and others of its kind still are', () => {
    const cancel = answers.register('LEFT', ['Repair tissue 5'], cell('A1'));
    answers.register('LEFT', ['Repair tissue 5'], cell('A2'));
    cancel();
    answers.publish(BEFORE);
    expect(toldSince()).toEqual([['A2', { value: 12 }]]);
  });

  test('one that nobody asks any more is not worked out', () => {
    const evaluated = vi.spyOn(evaluation, 'evaluateCall');
    answers.register('LEFT', ['Repair tissue 5'], cell('A1'))();
    answers.publish(BEFORE);
    expect(evaluated).not.toHaveBeenCalled();
  });

  test('taking a call back twice, or late, leaves a new call of the same kind in place', () => {
    const cancel = answers.register('LEFT', ['Repair tissue 5'], cell('A1'));
    cancel();
    answers.register('LEFT', ['Repair tissue 5'], cell('A2'));
    cancel();
    answers.publish(BEFORE);
    expect(toldSince()).toEqual([['A2', { value: 12 }]]);
  });

  test('the same function registered for two cells leaves once for each', () => {
    const both = cell('A1');
    answers.register('LEFT', ['Repair tissue 5'], both)();
    answers.register('LEFT', ['Repair tissue 5'], both);
    answers.register('LEFT', ['Repair tissue 5'], both)();
    answers.publish(BEFORE);
    expect(toldSince()).toHaveLength(1);
  });

  test('arguments keep calls apart', () => {
    answers.publish(BEFORE);
    answers.register('LEFT', ['Wheat starch', 'g'], cell('A1'));
    answers.register('LEFT', ['Wheat starch', 'kg'], cell('A2'));
    expect(toldSince()).toEqual([
      ['A1', { value: 1000 }],
      ['A2', { value: 1 }],
    ]);
  });

  test('a workbook that can’t be read is said in every cell, until it can', () => {
    answers.publish(BEFORE);
    answers.register('LEFT', ['Repair tissue 5'], cell('A1'));
    toldSince();
    answers.cannotRead('The workbook is busy.');
    answers.register('LEFT', ['Wheat starch'], cell('A2'));
    const unread = { error: 'not read', message: 'The workbook is busy.' };
    expect(toldSince()).toEqual([
      ['A1', unread],
      ['A2', unread],
    ]);
    answers.cannotRead('The workbook is busy.');
    expect(toldSince()).toEqual([]);
    answers.publish(BEFORE);
    expect(toldSince()).toEqual([
      ['A1', { value: 12 }],
      ['A2', { value: 1000 }],
    ]);
  });

  test('a problem that changes its sentence is told again', () => {
    const renamed: FunctionBooks = studioBooks({
      Materials: [{ Material: 'Repair paper 5', Kind: 'Tissue', 'Stock unit': 'sheet' }],
    });
    answers.publish(BEFORE);
    answers.register('LEFT', ['Repair tisue 5'], cell('A1'));
    answers.publish(renamed);
    const messages = toldSince().map(([, result]) => 'message' in result && result.message);
    expect(messages).toEqual([
      expect.stringContaining('Did you mean Repair tissue 5?'),
      expect.stringContaining('Did you mean Repair paper 5?'),
    ]);
  });
});
