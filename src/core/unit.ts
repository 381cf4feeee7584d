import { decimal, type Exact } from './exact-number.ts';

/** What a unit measures or counts. Units of one dimension convert by their legal factors alone. */
export type Dimension = 'mass' | 'volume' | 'area' | 'length' | 'sheet' | 'roll' | 'each' | 'use';

/** A unit in its one spelling, such as "g", "fl oz" or "sheet". */
export interface Unit {
  readonly name: string;
  readonly dimension: Dimension;
  /** How many of the dimension's base unit (g, ml, cm2, cm, or the counted thing itself) one of it is. */
  readonly inBase: Exact;
}

/**
 * Exact legal factors: the international yard and pound agreement of 1959 (inch 25.4 mm, pound 453.59237 g),
 * the US gallon of 231 cubic inches, and the UK gallon of 4.54609 l (Weights and Measures Act 1985).
 */
const FACTORS: readonly (readonly [Dimension, Readonly<Record<string, string>>])[] = [
  ['mass', { mg: '0.001', g: '1', kg: '1000', oz: '28.349523125', lb: '453.59237' }],
  [
    'volume',
    {
      ml: '1',
      l: '1000',
      'fl oz': '29.5735295625',
      gal: '3785.411784',
      'imp fl oz': '28.4130625',
      'imp gal': '4546.09',
    },
  ],
  ['area', { cm2: '1', dm2: '100', m2: '10000', 'sq in': '6.4516' }],
  ['length', { mm: '0.1', cm: '1', m: '100', in: '2.54', ft: '30.48', yd: '91.44' }],
  ['sheet', { sheet: '1' }],
  ['roll', { roll: '1' }],
  ['each', { each: '1' }],
  ['use', { use: '1' }],
];

/** Other spellings that people write for the same unit. */
const SPELLINGS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    gram: 'g',
    grams: 'g',
    litre: 'l',
    litres: 'l',
    liter: 'l',
    liters: 'l',
    inch: 'in',
    inches: 'in',
    in2: 'sq in',
    'sq. in': 'sq in',
    'sq. in.': 'sq in',
    sheets: 'sheet',
    rolls: 'roll',
    uses: 'use',
  }),
);

const UNITS: ReadonlyMap<string, Unit> = new Map(
  FACTORS.flatMap(([dimension, factors]) =>
    Object.entries(factors).map(([name, factor]) => [name, { name, dimension, inBase: decimal(factor) }]),
  ),
);

/** The spellings of all units, for messages and validation lists. */
export const UNIT_NAMES: readonly string[] = [...UNITS.keys()];

/**
 * Finds a unit by its name or a usual spelling; case and surplus spaces ignored, cm² and ㎠ read as cm2.
 * @returns null where no unit is called so
 */
export function findUnit(text: string): Unit | null {
  const plain = text.normalize('NFKC').trim().toLowerCase().replace(/\s+/g, ' ');
  return UNITS.get(SPELLINGS.get(plain) ?? plain) ?? null;
}

/** A unit that the program itself names; it must exist. */
export function unitNamed(name: string): Unit {
  const unit = UNITS.get(name);
  if (unit === undefined) throw new Error(`no unit is called ${name}`);
  return unit;
}

const PIECES: ReadonlySet<Dimension> = new Set(['sheet', 'roll', 'each']);

/** Whether a unit counts whole pieces, of which nobody orders a part. */
export function countsPieces({ dimension }: Unit): boolean {
  return PIECES.has(dimension);
}
