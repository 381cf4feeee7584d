import { date, type Literal, percent } from './literal.ts';

/** A small studio whose figures can be worked out in the head; its today is 3 April 2026. */
export const TODAY = '2026-04-03';

export const STUDIO = {
  Materials: [
    {
      Material: 'Repair tissue 5',
      Kind: 'Tissue',
      'Stock unit': 'sheet',
      'Sheet width cm': 60,
      'Sheet height cm': 90,
      Supplier: 'Paper mill',
    },
    { Material: 'Wheat starch paste', Kind: 'Paste', 'Stock unit': 'g' },
    { Material: 'Wheat starch', Kind: 'Paste', 'Stock unit': 'g', Supplier: 'Paper mill' },
    { Material: 'Deionised water', Kind: 'Buffer', 'Stock unit': 'ml', Counted: 'no' },
    { Material: 'Silicone release paper', Kind: 'Release paper', 'Stock unit': 'sheet', 'Uses per unit': 10 },
  ],
  Tissue: [
    {
      Lot: 'T-1',
      Material: 'Repair tissue 5',
      Received: date('2026-01-10'),
      Quantity: 2,
      Unit: 'sheet',
      Cost: 9,
      'Use by': date('2026-12-31'),
    },
    {
      Lot: 'T-2',
      Material: 'Repair tissue 5',
      Received: date('2026-02-10'),
      Quantity: 10,
      Unit: 'sheet',
      Cost: 40,
    },
  ],
  Paste: [
    {
      Lot: 'P-1',
      Material: 'Wheat starch paste',
      Received: date('2026-04-01'),
      Quantity: 200,
      Unit: 'g',
      Cost: 2.5,
      Recipe: 'Paste, thick',
    },
    { Lot: 'W-1', Material: 'Wheat starch', Received: date('2026-01-05'), Quantity: 1, Unit: 'kg', Cost: 12 },
  ],
  ReleasePaper: [
    {
      Lot: 'R-1',
      Material: 'Silicone release paper',
      Received: date('2026-01-05'),
      Quantity: 5,
      Unit: 'sheet',
      Cost: 20,
    },
  ],
  Movements: [],
  TreatmentLog: [],
  Treatments: [
    { Treatment: 'Mend tear', 'Extent unit': 'tear', 'Minutes per extent': 10, 'Setup minutes': 15 },
    { Treatment: 'Examine', 'Extent unit': 'leaf', 'Minutes per extent': 2 },
  ],
  UsageRates: [
    { Treatment: 'Mend tear', Material: 'Repair tissue 5', 'Quantity per extent': 0.5, Unit: 'sheet' },
    {
      Treatment: 'Mend tear',
      Material: 'Wheat starch paste',
      'Quantity per extent': 4,
      Unit: 'g',
      'Waste %': percent(25),
    },
    { Treatment: 'Mend tear', Material: 'Silicone release paper', 'Quantity per extent': 1, Unit: 'use' },
    { Treatment: 'Mend tear', Material: 'Deionised water', 'Quantity per extent': 20, Unit: 'ml' },
  ],
  Recipes: [
    {
      Recipe: 'Paste, thick',
      Makes: 'Wheat starch paste',
      Yield: 200,
      Unit: 'g',
      'Life days': 5,
      'Life cold days': 7,
    },
  ],
  RecipeParts: [{ Recipe: 'Paste, thick', Material: 'Wheat starch', Quantity: 40, Unit: 'g' }],
  Jobs: [
    { Job: '26-014', Client: 'County archive', Object: 'Map', Stage: 'On the bench' },
    { Job: '26-015', Client: 'Private', Object: 'Ledger', Stage: 'Quoted' },
  ],
  Items: [{ Job: '26-015', Item: 'A', Description: 'Volume 1' }],
  Plan: [{ Job: '26-015', Item: 'A', Treatment: 'Mend tear', Extent: 8 }],
  Suppliers: [{ Supplier: 'Paper mill', 'Lead time days': 10 }],
  Offers: [
    {
      Supplier: 'Paper mill',
      Material: 'Repair tissue 5',
      'Pack quantity': 10,
      Unit: 'sheet',
      'Pack price': 45,
      'Checked on': date('2026-03-01'),
    },
    {
      Supplier: 'Paper mill',
      Material: 'Wheat starch',
      'Pack quantity': 1,
      Unit: 'kg',
      'Pack price': 14,
      'Checked on': date('2026-03-01'),
    },
  ],
  Quotes: [],
  QuoteLines: [],
  Places: [{ Place: 'Fridge', Cold: 'yes' }],
  Settings: [
    { Setting: 'tables version', Value: 1 },
    { Setting: 'currency', Value: 'EUR' },
    { Setting: 'tax %', Value: 20 },
    { Setting: 'markup %', Value: 10 },
    { Setting: 'bench rate per hour', Value: 60 },
    { Setting: 'quote valid days', Value: 60 },
  ],
} as const satisfies Literal;
