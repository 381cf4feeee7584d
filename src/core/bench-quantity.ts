import { decimal, type Exact, ONE, roundQuantity, ZERO } from './exact-number.ts';
import { type Unit, unitNamed } from './unit.ts';

/**
 * Units among which a bench changes over as a quantity grows, each with the number from which it is used: a balance
 * shows 0.4 g, nobody weighs 400 mg; a cylinder shows 500 ml, nobody pours 0.5 l. Legal systems never mix: a US
 * gallon leads to US fluid ounces only. By common practice; no standard says so.
 */
const FAMILIES: readonly (readonly (readonly [unit: string, from: string])[])[] = [
  [
    ['mg', '0'],
    ['g', '0.1'],
    ['kg', '1'],
  ],
  [
    ['ml', '0'],
    ['l', '1'],
  ],
  [
    ['cm2', '0'],
    ['m2', '1'],
  ],
  [
    ['mm', '0'],
    ['cm', '1'],
    ['m', '1'],
  ],
  [
    ['oz', '0'],
    ['lb', '1'],
  ],
  [
    ['fl oz', '0'],
    ['gal', '1'],
  ],
  [
    ['imp fl oz', '0'],
    ['imp gal', '1'],
  ],
];

/** A larger unit is gone over to only where the number stays as short as people are shown it. */
const SHORT_DECIMALS = 3;

/**
 * A quantity in the unit that a bench would measure it in: 0.0125 l as 12.5 ml, 1500 mg as 1.5 g. The value is
 * exactly the same; a unit that belongs to no family (sheet, dm2, ft) stays.
 * @param quantity 0 or more, in `unit`
 */
export function benchQuantity(
  quantity: Exact,
  unit: Unit,
): { readonly quantity: Exact; readonly unit: Unit } {
  const family = FAMILIES.find((units) => units.some(([name]) => name === unit.name));
  if (family === undefined || quantity.equals(ZERO)) return { quantity, unit };
  const steps = family.map(([name, from]) => {
    const step = unitNamed(name);
    const factor = step.name === unit.name ? ONE : unit.inBase.div(step.inBase);
    const own = quantity.mul(factor);
    return { unit: step, quantity: own, reached: own.compare(decimal(from)) >= 0 };
  });
  const given = steps.findIndex((step) => step.unit.name === unit.name);
  const larger = steps.findLast((step, place) => place > given && step.reached && isShort(step.quantity));
  const smaller = steps.findLast((step, place) => place <= given && step.reached);
  return larger ?? smaller ?? { quantity, unit };
}

function isShort(quantity: Exact): boolean {
  return quantity.equals(roundQuantity(quantity)) && quantity.equals(quantity.round(SHORT_DECIMALS));
}
