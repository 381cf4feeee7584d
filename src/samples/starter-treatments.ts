import type { treatmentsTable, usageRatesTable } from '../workbook/tables-work.ts';
import type { SampleRow } from './sample-table.ts';

type TreatmentRow = SampleRow<typeof treatmentsTable>;
type RateRow = SampleRow<typeof usageRatesTable>;

/** The treatments of the first set: minutes of set-up, and for each unit of their extent. */
export const STARTER_TREATMENTS: readonly TreatmentRow[] = [
  {
    treatment: 'testing',
    extentUnit: 'spot',
    setupMinutes: 10,
    minutesPerExtent: 5,
    notes:
      'pH, and whether inks and colours bear water or alcohol (flammable: ventilate, no ignition). The calibration buffers are for the meter: they treat nothing.',
  },
  {
    treatment: 'removing staples',
    extentUnit: 'staple',
    setupMinutes: 5,
    minutesPerExtent: 6,
    notes: 'Takes nothing from stock. Write what was removed, and where it was, into Removed.',
  },
  {
    treatment: 'surface cleaning',
    extentUnit: 'dm² of face',
    setupMinutes: 5,
    minutesPerExtent: 1,
    notes:
      'Raise as little dust as you can. Mould or its smell on an object: stop, do not brush, keep it apart and ask who is trained for it.',
  },
  {
    treatment: 'washing, three baths',
    extentUnit: 'dm²',
    setupMinutes: 30,
    minutesPerExtent: 0.5,
    notes:
      'Test every ink and colour first. Alcohol for pre-wetting is flammable: ventilate, no ignition, gloves, eye protection.',
  },
  {
    treatment: 'deacidifying in a bath',
    extentUnit: 'dm²',
    setupMinutes: 20,
    minutesPerExtent: 0.3,
    notes:
      'Spot-test first. Mild bicarbonate is the usual start, since limewater can darken groundwood paper. Gloves and eye protection.',
  },
  {
    treatment: 'drying, five changes',
    extentUnit: 'dm²',
    setupMinutes: 10,
    minutesPerExtent: 0.3,
    standingHours: 72,
  },
  {
    treatment: 'mending tears',
    extentUnit: 'cm',
    setupMinutes: 15,
    minutesPerExtent: 3,
    notes:
      "The day's 15 g of paste is counted here, once a day; infilling losses and guarding a fold share it.",
  },
  {
    treatment: 'infilling losses',
    extentUnit: 'cm² of loss',
    setupMinutes: 20,
    minutesPerExtent: 12,
    notes:
      "Shares the day's paste, which is counted with mending tears: without a mend that day, overwrite the amount.",
  },
  {
    treatment: 'guarding a fold',
    extentUnit: 'cm',
    setupMinutes: 15,
    minutesPerExtent: 1.5,
    notes:
      "Shares the day's paste, which is counted with mending tears: without a mend that day, overwrite the amount.",
  },
  {
    treatment: 'humidifying and refolding',
    extentUnit: 'item',
    setupMinutes: 20,
    minutesPerExtent: 25,
    standingHours: 4,
  },
  {
    treatment: 're-stapling through the old holes',
    extentUnit: 'staple',
    setupMinutes: 5,
    minutesPerExtent: 8,
    notes: 'The original staple where it is sound, else a new one: choose stainless staple.',
  },
  {
    treatment: 'evening surface sheen',
    extentUnit: 'dm²',
    setupMinutes: 10,
    minutesPerExtent: 8,
    notes: 'Test on an edge first. A web goes between release paper and object.',
  },
  { treatment: 'pressing', extentUnit: 'item', setupMinutes: 10, minutesPerExtent: 5, standingHours: 168 },
  {
    treatment: 'housing',
    extentUnit: 'item',
    setupMinutes: 0,
    minutesPerExtent: 12,
    notes:
      'Film (two sides) and board for an object of 26 × 17 cm at size + 2 cm: overwrite the amounts for other sizes.',
  },
];

const water = (quantityPerExtent: number): RateRow => ({
  material: 'deionised water',
  quantityPerExtent,
  unit: 'l',
  stays: 'removed again',
});
const uses = (material: string, quantityPerExtent: number): RateRow => ({
  material,
  quantityPerExtent,
  unit: 'use',
  stays: 'contact only',
});
const calibration = (material: string): RateRow => ({
  material,
  quantityPerExtent: 0,
  unit: 'ml',
  fixedQuantity: 10,
  fixedPer: 'day',
});
const mend = (material: string): RateRow => ({
  material,
  quantityPerExtent: 1.5,
  unit: 'cm2',
  waste: 40,
  choice: 'A',
  stays: 'in object',
});
const dayOfPaste = (material: string): RateRow => ({
  material,
  quantityPerExtent: 0.03,
  unit: 'g',
  fixedQuantity: 15,
  fixedPer: 'day',
  choice: 'B',
  stays: 'in object',
});
const stays = (material: string, quantityPerExtent: number, unit: string, more: RateRow = {}): RateRow => ({
  material,
  quantityPerExtent,
  unit,
  stays: 'in object',
  ...more,
});

const RATES: Readonly<Record<string, readonly RateRow[]>> = {
  testing: [calibration('pH buffer 7.00'), calibration('pH buffer 10.01')],
  'surface cleaning': [
    { material: 'rubber sponge', quantityPerExtent: 0.01, unit: 'each', stays: 'contact only' },
    { material: 'grated eraser', quantityPerExtent: 0.3, unit: 'g', stays: 'removed again' },
  ],
  'washing, three baths': [
    water(1.2),
    { material: 'pre-wetting alcohol 30 %', quantityPerExtent: 5, unit: 'g', stays: 'removed again' },
    uses('polyester web', 0.06),
  ],
  'deacidifying in a bath': [
    stays('magnesium bicarbonate', 0.4, 'l', { choice: 'A' }),
    stays('limewater', 0.4, 'l', { choice: 'A' }),
    uses('polyester web', 0.06),
  ],
  'drying, five changes': [uses('blotter', 0.3), uses('wool felt', 0.06)],
  'mending tears': [
    mend('kozo tissue 5 g'),
    mend('kozo tissue 3.5 g'),
    mend('kozo tissue 9 g'),
    dayOfPaste('wheat starch paste'),
    dayOfPaste('methylcellulose 5 %'),
  ],
  'infilling losses': [
    stays('infill paper 80 g', 3, 'cm2'),
    stays('kozo tissue 5 g', 3, 'cm2'),
    stays('wheat starch paste', 0.1, 'g'),
  ],
  'guarding a fold': [
    stays('kozo tissue 9 g', 2, 'cm2', { waste: 20 }),
    stays('wheat starch paste', 0.05, 'g'),
  ],
  'humidifying and refolding': [
    uses('blotter', 2),
    uses('polyester web', 2),
    uses('silicone release paper', 2),
  ],
  're-stapling through the old holes': [
    stays('original staple', 1, 'each', { choice: 'A' }),
    stays('stainless staple', 1, 'each', { choice: 'A' }),
  ],
  'evening surface sheen': [stays('gelatine 1 %', 2, 'ml'), uses('silicone release paper', 1)],
  pressing: [uses('polyester web', 2), uses('blotter', 2)],
  housing: [
    { material: 'polyester film 75 µm', quantityPerExtent: 1064, unit: 'cm2', stays: 'contact only' },
    { material: 'alkaline board', quantityPerExtent: 532, unit: 'cm2', stays: 'contact only' },
  ],
};

/** What the treatments of the first set take of each material. */
export const STARTER_RATES: readonly RateRow[] = Object.entries(RATES).flatMap(([treatment, rates]) =>
  rates.map((rate) => ({ treatment, ...rate })),
);
