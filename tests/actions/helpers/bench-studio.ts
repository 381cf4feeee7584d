import { date, type Literal } from '../../helpers/literal.ts';

/** A bench that makes pastes and baths of each other, presses with sheets that are used again, and opens bottles. */
export const BENCH_STUDIO = {
  Materials: [
    { Material: 'starch', Kind: 'Paste', 'Stock unit': 'g' },
    { Material: 'paste', Kind: 'Paste', 'Stock unit': 'g', 'Life opened days': 4 },
    { Material: 'thin paste', Kind: 'Paste', 'Stock unit': 'g' },
    { Material: 'size', Kind: 'Paste', 'Stock unit': 'ml' },
    { Material: 'lime', Kind: 'Buffer', 'Stock unit': 'g', 'Life sealed days': 30 },
    { Material: 'lime water', Kind: 'Buffer', 'Stock unit': 'ml' },
    { Material: 'alcohol', Kind: 'Buffer', 'Stock unit': 'ml', 'Life opened days': 10 },
    { Material: 'water', Kind: 'Buffer', 'Stock unit': 'ml', Counted: 'no' },
    { Material: 'release paper', Kind: 'Release paper', 'Stock unit': 'sheet', 'Uses per unit': 8 },
    { Material: 'blotter', Kind: 'Release paper', 'Stock unit': 'sheet', 'Uses per unit': 5 },
  ],
  Paste: [
    { Lot: 'P-1', Material: 'starch', Received: date('2026-02-02'), Quantity: 120, Unit: 'g', Cost: 7.77 },
    { Lot: 'P-2', Material: 'starch', Received: date('2026-02-03'), Quantity: 500, Unit: 'g', Cost: 13.31 },
  ],
  Buffers: [
    {
      Lot: 'B-1',
      Material: 'alcohol',
      Received: date('2026-02-02'),
      Quantity: 3000,
      Unit: 'ml',
      Cost: 49.9,
      'Use by': date('2026-03-20'),
    },
    { Lot: 'B-2', Material: 'lime', Received: date('2026-02-10'), Quantity: 100, Unit: 'g', Cost: 11.3 },
  ],
  ReleasePaper: [
    {
      Lot: 'R-1',
      Material: 'release paper',
      Received: date('2026-02-02'),
      Quantity: 3,
      Unit: 'sheet',
      Cost: 10.01,
    },
    { Lot: 'R-2', Material: 'blotter', Received: date('2026-02-02'), Quantity: 4, Unit: 'sheet', Cost: 6.4 },
  ],
  Movements: [],
  TreatmentLog: [],
  Counts: [],
  Treatments: [
    { Treatment: 'mend', 'Extent unit': 'tear' },
    { Treatment: 'bathe', 'Extent unit': 'leaf' },
    { Treatment: 'press', 'Extent unit': 'leaf' },
  ],
  UsageRates: [
    { Treatment: 'mend', Material: 'thin paste', 'Quantity per extent': 1.7, Unit: 'g' },
    { Treatment: 'mend', Material: 'size', 'Quantity per extent': 0.333, Unit: 'ml' },
    { Treatment: 'bathe', Material: 'lime water', 'Quantity per extent': 23, Unit: 'ml' },
    { Treatment: 'bathe', Material: 'alcohol', 'Quantity per extent': 12.5, Unit: 'ml' },
    { Treatment: 'press', Material: 'release paper', 'Quantity per extent': 0.7, Unit: 'use' },
    { Treatment: 'press', Material: 'blotter', 'Quantity per extent': 1, Unit: 'use' },
  ],
  Recipes: [
    { Recipe: 'paste', Makes: 'paste', Yield: 70, Unit: 'g', 'Life days': 3, 'Life cold days': 8 },
    {
      Recipe: 'thin paste',
      Makes: 'thin paste',
      Yield: 90,
      Unit: 'g',
      'Life days': 6,
      'Limited by parts': 'yes',
    },
    { Recipe: 'size', Makes: 'size', Yield: 100, Unit: 'ml', 'Life days': 2, 'Life dark days': 9 },
    { Recipe: 'lime bath', Makes: 'lime water', Yield: 1000, Unit: 'ml' },
  ],
  RecipeParts: [
    { Recipe: 'paste', Material: 'starch', Quantity: 9, Unit: 'g' },
    { Recipe: 'paste', Material: 'water', Quantity: 70, Unit: 'ml' },
    { Recipe: 'thin paste', Material: 'paste', Quantity: 31, Unit: 'g' },
    { Recipe: 'size', Material: 'thin paste', Quantity: 7, Unit: 'g' },
    { Recipe: 'size', Material: 'alcohol', Quantity: 11, Unit: 'ml' },
    { Recipe: 'lime bath', Material: 'lime', Quantity: 2, Unit: 'g' },
    { Recipe: 'lime bath', Material: 'water', Quantity: 1000, Unit: 'ml' },
  ],
  Jobs: [
    { Job: 'J-1', Stage: 'On the bench' },
    { Job: 'J-2', Stage: 'On the bench' },
  ],
  Places: [{ Place: 'Bench' }, { Place: 'Cold box', Cold: 'yes' }, { Place: 'Cupboard', Dark: 'yes' }],
  Settings: [
    { Setting: 'currency', Value: 'EUR' },
    { Setting: 'tables version', Value: 2 },
  ],
} satisfies Literal;
