import { date, type Literal } from './literal.ts';

/** A small studio in its third year: two jobs are over, one is on the bench; figures can be worked out in the head. */
export const YEARS = {
  Materials: [
    {
      Material: 'Repair tissue',
      Kind: 'Tissue',
      'Stock unit': 'sheet',
      'Sheet width cm': 50,
      'Sheet height cm': 40,
      'Life opened days': 3000,
    },
    { Material: 'Wheat starch', Kind: 'Paste', 'Stock unit': 'g' },
    { Material: 'Starch paste', Kind: 'Paste', 'Stock unit': 'g', Disposal: 'general waste' },
    {
      Material: 'Ethanol',
      Kind: 'Buffer',
      'Stock unit': 'ml',
      Disposal: 'licensed carrier',
      Hazards: 'H225',
    },
  ],
  Tissue: [
    {
      Lot: 'T-1',
      Material: 'Repair tissue',
      Received: date('2024-01-10'),
      Quantity: 10,
      Unit: 'sheet',
      Cost: 40,
      Left: 9,
      Notes: 'top drawer',
    },
  ],
  Paste: [
    {
      Lot: 'W-1',
      Material: 'Wheat starch',
      Received: date('2024-01-10'),
      Quantity: 500,
      Unit: 'g',
      Cost: 10,
    },
    {
      Lot: 'P-1',
      Material: 'Starch paste',
      Received: date('2024-02-01'),
      Quantity: 200,
      Unit: 'g',
      Cost: 1,
      Recipe: 'Paste',
    },
    {
      Lot: 'P-2',
      Material: 'Starch paste',
      Received: date('2024-08-01'),
      Quantity: 200,
      Unit: 'g',
      Cost: 1,
      Recipe: 'Paste',
    },
  ],
  Buffers: [
    { Lot: 'B-1', Material: 'Ethanol', Received: date('2024-01-10'), Quantity: 1, Unit: 'l' },
    {
      Lot: 'B-2',
      Material: 'Ethanol',
      Received: date('2025-12-01'),
      Quantity: 500,
      Unit: 'ml',
      Cost: 8,
      'Use by': date('2025-12-31'),
    },
  ],
  Movements: [
    ['M-01', '2024-02-01', 'Make', 'W-1', 40, 'g', { Into: 'P-1' }],
    ['M-02', '2024-02-03', 'Use', 'T-1', 0.25, 'sheet', { Job: '24-001', Entry: 'E-1' }],
    ['M-03', '2024-02-03', 'Use', 'P-1', 60, 'g', { Job: '24-001', Entry: 'E-1' }],
    ['M-04', '2024-02-07', 'Waste', 'P-1', 140, 'g', { Note: 'gone off' }],
    ['M-05', '2024-03-03', 'Use', 'T-1', 500, 'cm2', { Job: '24-002' }],
    ['M-06', '2024-03-04', 'Use', 'T-1', -500, 'cm2', { Job: '24-002', Reverses: 'M-05' }],
    ['M-07', '2024-03-05', 'Use', 'T-1', 250, 'cm2', { Job: 'studio' }],
    ['M-08', '2024-08-01', 'Make', 'W-1', 40, 'g', { Into: 'P-2' }],
    ['M-09', '2024-08-02', 'Use', 'P-2', 50, 'g', { Job: '24-003', Entry: 'E-3' }],
    ['M-10', '2024-08-02', 'Use', 'T-1', 0.5, 'sheet', { Job: '24-003', Entry: 'E-3' }],
    ['M-11', '2024-09-01', 'Waste', 'B-1', 100, 'ml', { Job: '24-001' }],
    ['M-12', '2025-11-01', 'Use', 'T-1', 1, 'sheet', { Job: '24-001', Entry: 'E-4' }],
  ].map(movementRow),
  Treatments: [
    { Treatment: 'Mend', 'Extent unit': 'tear' },
    { Treatment: 'Examine', 'Extent unit': 'leaf' },
  ],
  UsageRates: [
    { Treatment: 'Mend', Material: 'Repair tissue', 'Quantity per extent': 0.25, Unit: 'sheet' },
    { Treatment: 'Mend', Material: 'Starch paste', 'Quantity per extent': 30, Unit: 'g' },
  ],
  TreatmentLog: [
    { Entry: 'E-1', Date: date('2024-02-03'), Job: '24-001', Treatment: 'Mend', Extent: 1, Drawn: 'yes' },
    { Entry: 'E-2', Date: date('2024-02-03'), Job: '24-001', Treatment: 'Examine', Extent: 4 },
    { Entry: 'E-3', Date: date('2024-08-02'), Job: '24-003', Treatment: 'Mend', Extent: 2, Drawn: 'yes' },
    { Entry: 'E-4', Date: date('2025-11-01'), Job: '24-001', Treatment: 'Mend', Extent: 4, Drawn: 'yes' },
  ],
  Recipes: [{ Recipe: 'Paste', Makes: 'Starch paste', Yield: 200, Unit: 'g', 'Life days': 5 }],
  RecipeParts: [{ Recipe: 'Paste', Material: 'Wheat starch', Quantity: 40, Unit: 'g' }],
  Jobs: [
    { Job: '24-001', Stage: 'Handed back' },
    { Job: '24-002', Stage: 'Declined' },
    { Job: '24-003', Stage: 'On the bench' },
  ],
  Plan: [{ Line: 'L-1', Job: '24-003', Treatment: 'Mend', Extent: 5 }],
  Quotes: [],
  QuoteLines: [],
  Settings: [{ Setting: 'currency', Value: 'EUR' }],
} as const satisfies Literal;

function movementRow(cells: readonly unknown[]) {
  const [name, day, kind, lot, quantity, unit, more] = cells as [
    string,
    string,
    string,
    string,
    number,
    string,
    Readonly<Record<string, string>>,
  ];
  return { Movement: name, Date: date(day), Kind: kind, Lot: lot, Quantity: quantity, Unit: unit, ...more };
}
