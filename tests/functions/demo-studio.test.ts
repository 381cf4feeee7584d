import { describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { quantityNumber } from '../../src/core/exact-number.ts';
import { moneyText } from '../../src/core/money.ts';
import { quoteJob } from '../../src/core/quote.ts';
import { evaluateCall, type FunctionName } from '../../src/functions/evaluate-call.ts';
import { dayOf } from '../helpers/literal.ts';
import { sampleSnapshot } from '../samples/sample-check.ts';
import { booksOfSnapshot } from './books.ts';

const TODAY = '2026-11-16';
/** 1 January 1970 in the 1900 date system. */
const SERIAL_OF_DAY_0 = 25_569;

describe('the demo studio: a cell says what the check says', () => {
  const snapshot = sampleSnapshot('demo-studio.xlsx');
  const books = booksOfSnapshot(snapshot, TODAY);
  const { stock } = checkWorkbook(snapshot, dayOf(TODAY));
  const call = (name: FunctionName, ...args: unknown[]): unknown => {
    const result = evaluateCall(name, args, books);
    return 'value' in result ? result.value : result.error;
  };

  test('left, usable and the reorder point of every material', () => {
    expect(stock.materials.length).toBeGreaterThan(30);
    expect(stock.materials.some(({ left }) => left === null)).toBe(true);
    for (const { material, left, usable, reorder } of stock.materials) {
      const { name } = material;
      expect([name, call('LEFT', name), call('USABLE', name), call('ORDERAT', name)]).toEqual([
        name,
        left === null ? 'not counted' : quantityNumber(left),
        usable === null ? 'not counted' : quantityNumber(usable),
        left === null ? 'not counted' : quantityNumber(reorder.reorderPoint),
      ]);
    }
  });

  test('until when every lot is good', () => {
    const dated = stock.lots.filter(({ goodUntil }) => goodUntil !== null);
    expect(dated.length).toBeGreaterThan(10);
    expect(dated.length).toBeLessThan(stock.lots.length);
    for (const { lot, goodUntil } of stock.lots) {
      expect([lot.name, call('GOODUNTIL', lot.name)]).toEqual([
        lot.name,
        goodUntil === null ? 'keeps' : goodUntil + SERIAL_OF_DAY_0,
      ]);
    }
  });

  test('the first line of each job’s quote costs what the cell says', () => {
    const { currency } = books.ledger.studio.settings;
    const first = books.ledger.studio.jobs.flatMap(({ job }) => {
      const lines = job === null ? [] : quoteJob(books.ledger, job, dayOf(TODAY)).lines;
      const line = lines[0];
      // A line that is all of its first rate's quantity, drawn from the stock as it stands.
      return line?.amount == null || lines[1]?.material === line.material ? [] : [line];
    });
    expect(first.length).toBeGreaterThan(3);
    for (const { material, quantity, unit, amount } of first) {
      const cost = call('COST', material.name, quantityNumber(quantity), unit.name);
      expect([material.name, Number(cost).toFixed(currency.decimals)]).toEqual([
        material.name,
        moneyText(amount ?? 0n, currency),
      ]);
    }
  });
});
