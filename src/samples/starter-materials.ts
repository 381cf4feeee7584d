import type { MaterialKind } from '../core/records.ts';
import type { materialsTable } from '../workbook/tables-stock.ts';
import type { SampleRow } from './sample-table.ts';

/** A material of a sample workbook, with what every material has. */
export type MaterialRow = Omit<SampleRow<typeof materialsTable>, 'material' | 'kind' | 'stockUnit'> & {
  readonly material: string;
  readonly kind: MaterialKind;
  readonly stockUnit: string;
};

const BY_SHEET = "Follow the supplier's safety data sheet and local codes.";
const YEAR = 365;

const kozo = {
  kind: 'Tissue',
  stockUnit: 'sheet',
  sheetWidth: 60,
  sheetHeight: 90,
  composition: 'kozo fibre',
} as const;

const TISSUE: readonly MaterialRow[] = [
  {
    ...kozo,
    material: 'kozo tissue 3.5 g',
    description: 'the finest repair tissue',
    grammage: 3.5,
    keepAtLeast: 3,
  },
  {
    ...kozo,
    material: 'kozo tissue 5 g',
    description: 'repair tissue for tears',
    grammage: 5,
    keepAtLeast: 3,
  },
  {
    ...kozo,
    material: 'kozo tissue 9 g',
    description: 'repair tissue for folds and spines',
    grammage: 9,
    keepAtLeast: 3,
  },
  { ...kozo, material: 'kozo paper 20 g', description: 'repair paper', grammage: 20, keepAtLeast: 2 },
  {
    material: 'infill paper 80 g',
    description: 'paper for filling losses',
    kind: 'Tissue',
    stockUnit: 'sheet',
    sheetWidth: 50,
    sheetHeight: 70,
    grammage: 80,
    keepAtLeast: 2,
    notes: 'Choose an infill lighter and weaker than the object.',
  },
  {
    material: 'remoistenable tissue',
    description: 'kozo tissue coated with paste and methylcellulose',
    kind: 'Tissue',
    stockUnit: 'sheet',
    sheetWidth: 30,
    sheetHeight: 40,
    notes: 'Made here. Keep flat and dry.',
  },
];

const PASTE: readonly MaterialRow[] = [
  {
    material: 'wheat starch',
    description: 'starch powder for paste',
    kind: 'Paste',
    stockUnit: 'g',
    lifeSealedDays: 5 * YEAR,
    lifeOpenedDays: 2 * YEAR,
    keepAtLeast: 200,
  },
  {
    material: 'methylcellulose powder',
    kind: 'Paste',
    stockUnit: 'g',
    keepAtLeast: 50,
    notes: 'Keeps dry and closed; no life is set.',
  },
  {
    material: 'gelatine',
    description: 'leaf or powder',
    kind: 'Paste',
    stockUnit: 'g',
    lifeSealedDays: 5 * YEAR,
    lifeOpenedDays: 2 * YEAR,
  },
  {
    material: 'wheat starch paste',
    kind: 'Paste',
    stockUnit: 'g',
    notes:
      'Made here. Studios have found it good for 3 to 20 days: set the lives of the recipe to your own experience. Look and smell for mould before use.',
  },
  {
    material: 'methylcellulose 5 %',
    kind: 'Paste',
    stockUnit: 'g',
    notes: 'Made here. Look for mould before use, cold or not.',
  },
  {
    material: 'gelatine 1 %',
    description: 'size for evening surface sheen',
    kind: 'Paste',
    stockUnit: 'ml',
    notes: 'Made here, for the day. Look and smell for mould before use.',
  },
];

const BUFFERS: readonly MaterialRow[] = [
  {
    material: 'deionised water',
    kind: 'Buffer',
    stockUnit: 'l',
    counted: 'no',
    density: 0.998,
    notes: 'From the wall: not counted.',
  },
  {
    material: 'calcium hydroxide',
    kind: 'Buffer',
    stockUnit: 'g',
    lifeSealedDays: 3 * YEAR,
    lifeOpenedDays: YEAR,
    hazards: 'H315 H318 H335',
    disposal: BY_SHEET,
    notes:
      'Alkali, can damage eyes for good: eye protection and gloves, raise no dust. Keep closed, it takes carbon dioxide from the air.',
  },
  {
    material: 'magnesium hydroxide',
    kind: 'Buffer',
    stockUnit: 'g',
    lifeSealedDays: 3 * YEAR,
    lifeOpenedDays: YEAR,
    disposal: BY_SHEET,
    notes: 'Alkali: eye protection and gloves, raise no dust. Turns into carbonate in air: keep closed.',
  },
  {
    material: 'ethanol',
    kind: 'Buffer',
    stockUnit: 'ml',
    density: 0.789,
    keepAtMost: 2000,
    hazards: 'H225 H319',
    disposal: BY_SHEET,
    notes: 'Highly flammable: away from ignition and hot plates, ventilate, gloves and eye protection.',
  },
  {
    material: 'pH buffer 7.00',
    description: 'calibration buffer',
    kind: 'Buffer',
    stockUnit: 'ml',
    lifeOpenedDays: 90,
    disposal: BY_SHEET,
    notes: 'Calibrates the meter; treats nothing. Never pour back. Use by is on the bottle.',
  },
  {
    material: 'pH buffer 10.01',
    description: 'calibration buffer',
    kind: 'Buffer',
    stockUnit: 'ml',
    lifeOpenedDays: 30,
    disposal: BY_SHEET,
    notes: 'Calibrates the meter; treats nothing. Takes up carbon dioxide once opened. Never pour back.',
  },
  {
    material: 'carbon dioxide',
    kind: 'Buffer',
    stockUnit: 'g',
    counted: 'no',
    disposal: BY_SHEET,
    notes: 'From a cylinder or siphon: not counted. Ventilate.',
  },
  {
    material: 'limewater',
    description: 'clear saturated calcium hydroxide solution',
    kind: 'Buffer',
    stockUnit: 'l',
    disposal: BY_SHEET,
    notes:
      'Made here. Strongly alkaline: eye protection and gloves. Can darken groundwood paper: spot-test first.',
  },
  {
    material: 'magnesium bicarbonate',
    description: 'mild alkaline solution, 0.04 mol/l',
    kind: 'Buffer',
    stockUnit: 'l',
    disposal: BY_SHEET,
    notes:
      'Made here. Often used for groundwood paper; can change colours and tone: spot-test first. Keep headspace, pressure can build.',
  },
  {
    material: 'pre-wetting alcohol 30 %',
    description: 'ethanol 30 % by mass in water',
    kind: 'Buffer',
    stockUnit: 'g',
    disposal: BY_SHEET,
    notes:
      'Made here; reused and topped up. Keep away from ignition, ventilate, gloves and eye protection. Test inks and colours first.',
  },
];

const again = { kind: 'Release paper', stockUnit: 'sheet', sheetWidth: 50, sheetHeight: 70 } as const;

const RELEASE_PAPER: readonly MaterialRow[] = [
  {
    ...again,
    material: 'silicone release paper',
    usesPerUnit: 20,
    lifeSealedDays: 3 * YEAR,
    notes:
      'Never wash it; some coatings are stripped by solvents, and long contact can stain: a web goes next to the object.',
  },
  { ...again, material: 'polyester web', description: 'nonwoven', usesPerUnit: 20 },
  { ...again, material: 'casting film', description: 'polyester film to brush out on', usesPerUnit: 20 },
  { ...again, material: 'blotter', usesPerUnit: 10, notes: 'Out of action for a day or two while it dries.' },
  { material: 'wool felt', kind: 'Release paper', stockUnit: 'each', usesPerUnit: 200 },
];

const HOUSING: readonly MaterialRow[] = [
  {
    material: 'polyester film 75 µm',
    kind: 'Housing',
    stockUnit: 'sheet',
    sheetWidth: 70,
    sheetHeight: 100,
    grammage: 106,
    notes: 'Not for friable media.',
  },
  {
    material: 'alkaline board',
    kind: 'Housing',
    stockUnit: 'sheet',
    sheetWidth: 70,
    sheetHeight: 100,
    notes: 'Alkaline reserve of at least 0.4 mol/kg.',
  },
];

const SUNDRIES: readonly MaterialRow[] = [
  {
    material: 'rubber sponge',
    description: 'dry cleaning sponge',
    kind: 'Sundry',
    stockUnit: 'each',
    lifeSealedDays: 3 * YEAR,
  },
  { material: 'grated eraser', kind: 'Sundry', stockUnit: 'g' },
  { material: 'stainless staple', kind: 'Sundry', stockUnit: 'each' },
  {
    material: 'original staple',
    description: "the object's own staple, cleaned and put back",
    kind: 'Sundry',
    stockUnit: 'each',
    counted: 'no',
    notes: 'Stands in usage rates for what is put back: nothing is drawn.',
  },
  { material: 'linen thread', kind: 'Sundry', stockUnit: 'm' },
  { material: 'cotton swabs', kind: 'Sundry', stockUnit: 'each', counted: 'no' },
  { material: 'gloves', kind: 'Sundry', stockUnit: 'each', counted: 'no' },
];

/** The materials of the first set: common practice, to be changed as a studio pleases. */
export const STARTER_MATERIALS: readonly MaterialRow[] = [
  ...TISSUE,
  ...PASTE,
  ...BUFFERS,
  ...RELEASE_PAPER,
  ...HOUSING,
  ...SUNDRIES,
];
