import { describe, expect, it } from 'vitest';
import { columnBlueprint, fieldsInOrder } from '../../src/samples/column-layout.ts';
import { allTables } from '../../src/samples/starter-blueprint.ts';
import { RECORD_TABLES, SETTINGS_TABLE, STOCK_TABLES } from '../../src/workbook/known-tables.ts';
import { readWorkbook } from '../../src/workbook/read-workbook.ts';
import { checkSample, codesAndSubjects, sampleSnapshot } from './sample-check.ts';

describe('starter.xlsx', () => {
  const snapshot = sampleSnapshot('starter.xlsx');
  const reading = readWorkbook(snapshot);

  it('says nothing but to order what should always be kept, of which there is nothing yet', () => {
    expect(codesAndSubjects(checkSample('starter.xlsx', '2026-11-16'))).toEqual([
      'low infill paper 80 g',
      'low kozo paper 20 g',
      'low kozo tissue 3.5 g',
      'low kozo tissue 5 g',
      'low kozo tissue 9 g',
      'low methylcellulose powder',
      'low wheat starch',
    ]);
  });

  it('has every table with every column, each on a tab of its own name', () => {
    const definitions = [...Object.values(RECORD_TABLES), ...STOCK_TABLES, SETTINGS_TABLE];
    expect(snapshot.tables.map(({ name }) => name).toSorted()).toEqual(
      definitions.map(({ name }) => name).toSorted(),
    );
    for (const table of snapshot.tables) {
      const definition = definitions.find(({ name }) => name === table.name);
      expect(table.tab).toBe(table.name);
      const headers = Object.values(definition?.columns ?? {}).map(({ header }) => header);
      expect(new Set(table.columns.map(({ header }) => header))).toEqual(new Set(headers));
      expect(table.columns).toHaveLength(headers.length);
    }
  });

  it('holds the whole first set, without a price', () => {
    const { materials, treatments, usageRates, recipes, recipeParts, places, lots, offers } = reading.records;
    expect(
      [materials, treatments, usageRates, recipes, recipeParts, places].map(({ length }) => length),
    ).toEqual([36, 14, 33, 7, 17, 3]);
    expect([...lots, ...offers]).toEqual([]);
  });

  it('takes the paste of the day with mending tears alone', () => {
    const fixed = reading.records.usageRates.filter(
      ({ material, fixedQuantity }) => material === 'wheat starch paste' && fixedQuantity !== null,
    );
    expect(
      fixed.map(({ treatment, fixedQuantity, fixedPer }) => [treatment, fixedQuantity?.valueOf(), fixedPer]),
    ).toEqual([['mending tears', 15, 'day']]);
  });

  it('offers only words that their column takes', () => {
    for (const { definition } of allTables([])) {
      for (const field of fieldsInOrder(definition)) {
        const { choices } = columnBlueprint(definition, field, []);
        const words = choices !== undefined && !('table' in choices) ? choices : [];
        for (const word of words) {
          const read = definition.columns[field]?.schema.safeParse(word);
          expect(read?.success, `${definition.name} ${field} ${word}`).toBe(true);
        }
      }
    }
  });
});
