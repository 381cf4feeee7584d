import { describe, expect, test } from 'vitest';
import { checkWorkbook, type WorkbookCheck } from '../../src/actions/check-workbook.ts';
import { date, dayOf, type Literal, type LiteralRow, problem } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

/** The studio with more rows in some tables, behind those that it has. */
function studioWith(more: Readonly<Record<string, readonly LiteralRow[]>>): Literal {
  const studio: Record<string, readonly LiteralRow[]> = { ...STUDIO };
  for (const [name, rows] of Object.entries(more)) studio[name] = [...(studio[name] ?? []), ...rows];
  return studio;
}

function check(literal: Literal): WorkbookCheck {
  return checkWorkbook(snapshotOf(literal), dayOf(TODAY));
}

const left = (answer: WorkbookCheck, name: string): string | undefined =>
  answer.stock.materials.find(({ material }) => material.name === name)?.left?.toString();

const NEW_LOT = {
  Lot: 'T-9',
  Material: 'Repair tissue 5',
  Received: '2026-03-01',
  Quantity: 3,
  Unit: 'sheet',
};
const USE = { Movement: 'M-9', Date: '2026-04-02', Kind: 'Use', Lot: 'T-2', Quantity: 1, Unit: 'sheet' };
const ENTRY = { Entry: 'E-9', Date: '2026-04-02', Job: '26-014', Treatment: 'Examine', Extent: 3 };

test('the studio of the tests itself has no fault', () => {
  expect(check(STUDIO).notices.filter(({ severity }) => severity === 'stop')).toEqual([]);
});

describe('a name that no row bears is noticed at its cell', () => {
  const cases: [table: string, row: LiteralRow, column: string, subject: string, where: string][] = [
    [
      'Materials',
      { Material: 'X', Kind: 'Tissue', 'Stock unit': 'g', Supplier: 'nobody' },
      'Supplier',
      'X',
      'Suppliers',
    ],
    ['Tissue', { ...NEW_LOT, Material: 'nothing' }, 'Material', 'T-9', 'Materials'],
    ['Tissue', { ...NEW_LOT, Supplier: 'nobody' }, 'Supplier', 'T-9', 'Suppliers'],
    ['Tissue', { ...NEW_LOT, Place: 'nowhere' }, 'Place', 'T-9', 'Places'],
    ['Tissue', { ...NEW_LOT, Recipe: 'none' }, 'Recipe', 'T-9', 'Recipes'],
    ['Tissue', { ...NEW_LOT, Order: 'D-1' }, 'Order', 'T-9', 'Orders'],
    ['Movements', { ...USE, Lot: 'T-0' }, 'Lot', 'M-9', 'the stock tables'],
    ['Movements', { ...USE, Job: '26-000' }, 'Job', 'M-9', 'Jobs'],
    ['Movements', { ...USE, Job: '26-015', Item: 'Z' }, 'Item', 'M-9', 'Items (for that job)'],
    ['Movements', { ...USE, Entry: 'E-0' }, 'Entry', 'M-9', 'TreatmentLog'],
    ['Movements', { ...USE, Kind: 'Make', Into: 'P-0' }, 'Into', 'M-9', 'the stock tables'],
    ['Movements', { ...USE, Offcut: 'C-0' }, 'Offcut', 'M-9', 'Offcuts'],
    ['Movements', { ...USE, Quantity: -1, Reverses: 'M-0' }, 'Reverses', 'M-9', 'Movements'],
    ['TreatmentLog', { ...ENTRY, Job: '26-000' }, 'Job', 'E-9', 'Jobs'],
    ['TreatmentLog', { ...ENTRY, Job: '26-015', Item: 'Z' }, 'Item', 'E-9', 'Items (for that job)'],
    ['TreatmentLog', { ...ENTRY, Treatment: 'Magic' }, 'Treatment', 'E-9', 'Treatments'],
    [
      'UsageRates',
      { Treatment: 'Magic', Material: 'Wheat starch', 'Quantity per extent': 1, Unit: 'g' },
      'Treatment',
      '6',
      'Treatments',
    ],
    [
      'UsageRates',
      { Treatment: 'Examine', Material: 'nothing', 'Quantity per extent': 1, Unit: 'g' },
      'Material',
      '6',
      'Materials',
    ],
    ['Recipes', { Recipe: 'R-9', Makes: 'nothing', Yield: 1, Unit: 'g' }, 'Makes', 'R-9', 'Materials'],
    [
      'RecipeParts',
      { Recipe: 'R-0', Material: 'Wheat starch', Quantity: 1, Unit: 'g' },
      'Recipe',
      '3',
      'Recipes',
    ],
    [
      'RecipeParts',
      { Recipe: 'Paste, thick', Material: 'nothing', Quantity: 1, Unit: 'g' },
      'Material',
      '3',
      'Materials',
    ],
    ['Jobs', { Job: '26-016', Place: 'nowhere' }, 'Place', '26-016', 'Places'],
    ['Items', { Job: '26-000', Item: 'A' }, 'Job', 'A', 'Jobs'],
    ['Plan', { Line: 'N-9', Job: '26-000', Treatment: 'Examine', Extent: 1 }, 'Job', 'N-9', 'Jobs'],
    [
      'Plan',
      { Job: '26-015', Item: 'Z', Treatment: 'Examine', Extent: 1 },
      'Item',
      '3',
      'Items (for that job)',
    ],
    ['Plan', { Line: 'N-9', Job: '26-015', Treatment: 'Magic', Extent: 1 }, 'Treatment', 'N-9', 'Treatments'],
    ['Removed', { Job: '26-000', What: 'patch', 'Removed on': '2026-04-01' }, 'Job', '2', 'Jobs'],
    [
      'Removed',
      { Job: '26-015', Item: 'Z', What: 'patch', 'Removed on': '2026-04-01' },
      'Item',
      '2',
      'Items (for that job)',
    ],
    [
      'Offers',
      { Supplier: 'nobody', Material: 'Wheat starch', 'Pack quantity': 1, Unit: 'kg', 'Pack price': 20 },
      'Supplier',
      '4',
      'Suppliers',
    ],
    [
      'Offers',
      { Supplier: 'Paper mill', Material: 'nothing', 'Pack quantity': 1, Unit: 'kg', 'Pack price': 20 },
      'Material',
      '4',
      'Materials',
    ],
    [
      'Orders',
      { Order: 'D-9', Supplier: 'nobody', 'Ordered on': '2026-04-01' },
      'Supplier',
      'D-9',
      'Suppliers',
    ],
    [
      'OrderLines',
      { Order: 'D-0', Line: '1', Material: 'Wheat starch', Packs: 1, 'Pack quantity': 1, Unit: 'kg' },
      'Order',
      '1',
      'Orders',
    ],
    ['Quotes', { Quote: 'Q-9', Version: 1, Job: '26-000', 'Made on': '2026-04-01' }, 'Job', 'Q-9', 'Jobs'],
    ['QuoteLines', { Quote: 'Q-0', Version: 1, Line: '1', What: 'tissue' }, 'Quote', '1', 'Quotes'],
    [
      'Offcuts',
      { Offcut: 'C-9', Lot: 'T-0', 'Width cm': 1, 'Height cm': 1 },
      'Lot',
      'C-9',
      'the stock tables',
    ],
  ];

  test.each(cases)('%s %j: %s', (table, row, column, subject, where) => {
    const literal = studioWith({ [table]: [row] });
    const found = check(literal).notices.filter(({ code }) => code === 'unknown-reference');
    const named = String(row[column]);
    expect(found.map((each) => ({ ...each, at: each.at.column, cell: each.cell?.tab }))).toEqual([
      {
        code: 'unknown-reference',
        severity: 'stop',
        subject,
        message: `There is no ${named} in ${where}: add it there, or correct ${column} here.`,
        at: column,
        address: expect.stringMatching(
          new RegExp(`^${table}![A-Z]+${(literal[table] as readonly unknown[]).length + 1}$`),
        ),
        cell: table,
        mend: null,
      },
    ]);
  });
});

describe('what an unknown name leaves out, and what counts all the same', () => {
  test('a lot without its material is in no figures', () => {
    const answer = check(studioWith({ Tissue: [{ ...NEW_LOT, Material: 'nothing' }] }));
    expect(answer.stock.lots.map(({ lot }) => lot.name)).not.toContain('T-9');
    expect(left(answer, 'Repair tissue 5')).toBe('12');
  });

  test.each(['Supplier', 'Place', 'Order'])('a lot with an unknown %s counts', (column) => {
    expect(
      left(check(studioWith({ Tissue: [{ ...NEW_LOT, [column]: 'unknown' }] })), 'Repair tissue 5'),
    ).toBe('15');
  });

  test('a lot with an unknown recipe counts, and is not usable', () => {
    const answer = check(studioWith({ Tissue: [{ ...NEW_LOT, Recipe: 'unknown' }] }));
    expect(answer.stock.lots.find(({ lot }) => lot.name === 'T-9')).toMatchObject({
      usable: false,
      goodUntil: null,
    });
    expect(left(answer, 'Repair tissue 5')).toBe('15');
  });

  test.each<[string, LiteralRow]>([
    ['Job', { Job: 'unknown' }],
    ['Entry', { Entry: 'unknown' }],
    ['Offcut', { Offcut: 'unknown' }],
    ['Item', { Job: '26-015', Item: 'unknown' }],
  ])('a movement with an unknown %s counts', (_, cells) => {
    expect(left(check(studioWith({ Movements: [{ ...USE, ...cells }] })), 'Repair tissue 5')).toBe('11');
  });

  test('a movement on a lot that has a row which can’t be read is left out without a second notice', () => {
    const answer = check(
      studioWith({
        Tissue: [{ ...NEW_LOT, Quantity: problem('#N/A') }],
        Movements: [{ ...USE, Lot: 't-9 ' }],
      }),
    );
    expect(
      answer.notices.filter(({ severity }) => severity === 'stop').map(({ address }) => address),
    ).toEqual(['Tissue!D4']);
    expect(left(answer, 'Repair tissue 5')).toBe('12');
  });

  test('references compare without case and outer spaces', () => {
    const answer = check(studioWith({ Movements: [{ ...USE, Lot: ' t-2 ', Job: ' studio', Entry: null }] }));
    expect(answer.notices.filter(({ severity }) => severity === 'stop')).toEqual([]);
    expect(left(answer, 'Repair tissue 5')).toBe('11');
  });

  test('a lot typed as a number is found by text and the other way round', () => {
    const lots = [
      { ...NEW_LOT, Lot: 17 },
      { ...NEW_LOT, Lot: '18' },
    ];
    const answer = check(
      studioWith({
        Tissue: lots,
        Movements: [
          { ...USE, Lot: '17' },
          { ...USE, Movement: 'M-8', Lot: 18 },
        ],
      }),
    );
    expect(answer.notices.filter(({ severity }) => severity === 'stop')).toEqual([]);
    expect(left(answer, 'Repair tissue 5')).toBe('16');
  });

  test('an identifier that stands in two rows is noticed at the second; both count, the first serves references', () => {
    const answer = check(studioWith({ Tissue: [{ ...NEW_LOT, Lot: 't-2' }], Movements: [USE] }));
    const stops = answer.notices.filter(({ severity }) => severity === 'stop');
    expect(stops).toMatchObject([{ code: 'duplicate-id', subject: 't-2', address: 'Tissue!A4' }]);
    expect(
      answer.stock.lots.filter(({ lot }) => /t-2/i.test(lot.name)).map((each) => each.left.toString()),
    ).toEqual(['9', '3']);
    expect(left(answer, 'Repair tissue 5')).toBe('14');
  });

  test('an optional cell that can’t be read is noticed; the row counts', () => {
    const answer = check(
      studioWith({ Tissue: [{ ...NEW_LOT, Cost: 'dear', 'Use by': date('2026-12-01') }] }),
    );
    expect(
      answer.notices.filter(({ severity }) => severity === 'stop').map(({ address }) => address),
    ).toEqual(['Tissue!F4']);
    expect(left(answer, 'Repair tissue 5')).toBe('15');
  });
});
