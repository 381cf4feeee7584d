import type { placesTable } from '../workbook/tables-stock.ts';
import type { recipePartsTable, recipesTable } from '../workbook/tables-work.ts';
import type { SampleRow } from './sample-table.ts';

type RecipeRow = SampleRow<typeof recipesTable>;
type PartRow = SampleRow<typeof recipePartsTable>;

const HOT = "Hot plate and steam: heat-proof gloves, eye protection, don't leave it alone.";
const MOULD = 'Look and smell for mould before use, and discard the whole pot if in doubt.';
const ALKALI =
  "Alkali: eye protection and gloves, raise no dust. Follow the supplier's safety data sheet and local codes.";

/** The preparations of the first set. */
export const STARTER_RECIPES: readonly RecipeRow[] = [
  {
    recipe: 'wheat starch paste',
    makes: 'wheat starch paste',
    yield: 410,
    unit: 'g',
    lifeDays: 3,
    lifeColdDays: 7,
    minutes: 60,
    method:
      'Soak the starch 30 min or longer, cook at least 15 min stirring, let it cool, strain. Weigh what it gave.',
    cautions: `${HOT} ${MOULD}`,
  },
  {
    recipe: 'methylcellulose 5 %',
    makes: 'methylcellulose 5 %',
    yield: 100,
    unit: 'g',
    lifeDays: 30,
    readyAfterHours: 24,
    method: 'Stir the powder into 75 ml of hot water, add 25 ml of cold, leave until clear.',
    cautions: `${HOT} ${MOULD}`,
  },
  {
    recipe: 'remoistenable tissue',
    makes: 'remoistenable tissue',
    yield: 1,
    unit: 'sheet',
    lifeDays: 365,
    method: 'Brush paste and methylcellulose out on casting film, lay the tissue on, dry, peel off.',
    cautions: MOULD,
  },
  {
    recipe: 'limewater',
    makes: 'limewater',
    yield: 0.95,
    unit: 'l',
    lifeDays: 30,
    method:
      'Shake 2 g in 1 l of cold water (1.5 g dissolves), let it settle, decant the clear part. Keep full and airtight.',
    cautions: `${ALKALI} Can damage eyes for good. Can darken groundwood paper: spot-test first.`,
  },
  {
    recipe: 'magnesium bicarbonate',
    makes: 'magnesium bicarbonate',
    yield: 0.98,
    unit: 'l',
    lifeDays: 7,
    method:
      'Suspend, pass carbon dioxide through until clear (it takes 3.5 g, more is lost), let it settle, decant. Keep closed.',
    cautions: `${ALKALI} Ventilate: carbon dioxide. Never gas into a closed vessel, leave headspace: pressure can build. Spot-test first.`,
  },
  {
    recipe: 'pre-wetting alcohol 30 %',
    makes: 'pre-wetting alcohol 30 %',
    yield: 100,
    unit: 'g',
    lifeDays: 30,
    method:
      "By mass: volumes don't add up. Reused and topped up; discard it once it is coloured, it carries dyes to the next object.",
    cautions:
      'Solvent, highly flammable: ventilate, no ignition or hot plate near, gloves and eye protection.',
  },
  {
    recipe: 'gelatine 1 %',
    makes: 'gelatine 1 %',
    yield: 98,
    unit: 'ml',
    lifeDays: 1,
    method: 'Swell in cold water, warm gently until clear. For the day.',
    cautions: `${HOT} ${MOULD}`,
  },
];

const PARTS: Readonly<
  Record<string, readonly (readonly [material: string, quantity: number, unit: string])[]>
> = {
  'wheat starch paste': [
    ['wheat starch', 57, 'g'],
    ['deionised water', 400, 'ml'],
  ],
  'methylcellulose 5 %': [
    ['methylcellulose powder', 5, 'g'],
    ['deionised water', 100, 'ml'],
  ],
  'remoistenable tissue': [
    ['kozo tissue 5 g', 1200, 'cm2'],
    ['wheat starch paste', 12, 'g'],
    ['methylcellulose 5 %', 12, 'g'],
    ['casting film', 1, 'use'],
  ],
  limewater: [
    ['calcium hydroxide', 2, 'g'],
    ['deionised water', 1, 'l'],
  ],
  'magnesium bicarbonate': [
    ['magnesium hydroxide', 2.33, 'g'],
    ['deionised water', 1, 'l'],
    ['carbon dioxide', 3.5, 'g'],
  ],
  'pre-wetting alcohol 30 %': [
    ['ethanol', 30, 'g'],
    ['deionised water', 70, 'g'],
  ],
  'gelatine 1 %': [
    ['gelatine', 1, 'g'],
    ['deionised water', 100, 'ml'],
  ],
};

/** What goes into one batch of each preparation. */
export const STARTER_PARTS: readonly PartRow[] = Object.entries(PARTS).flatMap(([recipe, parts]) =>
  parts.map(([material, quantity, unit]) => ({ recipe, material, quantity, unit })),
);

/** Where things stand in a small studio. */
export const STARTER_PLACES: readonly SampleRow<typeof placesTable>[] = [
  { storage: 'Room', cold: 'no', walkingOrder: 1 },
  { storage: 'Refrigerator', cold: 'yes', walkingOrder: 2 },
  { storage: 'Dark cupboard', cold: 'no', walkingOrder: 3 },
];
