import { expect, test } from 'vitest';
import { withoutRows } from '../../src/workbook/without-rows.ts';
import { formula } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';

const BEFORE = snapshotOf({
  Jobs: [{ Job: 'A' }, { Job: formula('B') }, { Job: 'C' }, { Job: 'D' }],
  Places: [{ Place: 'Shelf' }],
});

test('rows go, the others keep their values and looks, other tables stay as they are', () => {
  const after = withoutRows(BEFORE, [{ table: 'Jobs', rows: [0, 2] }]);
  const [jobs, places] = after.tables;
  const column = jobs?.columns.find(({ header }) => header === 'Job');
  expect([jobs?.rowCount, column?.values]).toEqual([2, ['B', 'D']]);
  expect([column?.hasFormula(0), column?.hasFormula(1)]).toEqual([true, false]);
  expect(places).toBe(BEFORE.tables[1]);
  expect(BEFORE.tables[0]?.rowCount).toBe(4);
});

test('a table that loses all its rows keeps a blank one', () => {
  const [, places] = withoutRows(BEFORE, [{ table: 'Places', rows: [0] }]).tables;
  expect([places?.rowCount, places?.columns[0]?.values]).toEqual([1, [null]]);
});

test('a table or row that is not there is a mistake of the caller', () => {
  expect(() => withoutRows(BEFORE, [{ table: 'Nowhere', rows: [0] }])).toThrow('no table Nowhere');
  expect(() => withoutRows(BEFORE, [{ table: 'Jobs', rows: [4] }])).toThrow('no row 4');
});
