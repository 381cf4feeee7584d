import { type Exact, ONE, ratio, ZERO } from './exact-number.ts';
import type { Dimension, Unit } from './unit.ts';

/**
 * The facts of a material, or of one lot of it, by which its quantities pass between dimensions.
 * A fact that is not above 0 leads nowhere, as if it were blank.
 */
export interface MaterialFacts {
  readonly stockUnit: Unit;
  /** cm; for a roll, its width. */
  readonly sheetWidth: Exact | null;
  /** cm; for a roll, its length. */
  readonly sheetHeight: Exact | null;
  /** g/m2 */
  readonly grammage: Exact | null;
  /** g/ml */
  readonly density: Exact | null;
  /** Uses of one stock unit. */
  readonly usesPerUnit: Exact | null;
}

/** The facts that a lot may have of its own; they win over the material's. */
export type LotFacts = Pick<MaterialFacts, 'sheetWidth' | 'sheetHeight' | 'grammage' | 'usesPerUnit'>;

/** One of `from` is `factor` of `to`, in base units of both dimensions. */
interface Link {
  readonly from: Dimension;
  readonly to: Dimension;
  readonly factor: Exact;
}

const CM2_PER_M2 = 10_000;

/** Converts quantities of one material, or of one lot, along its own facts. */
export interface Converter {
  /** How many of `to` one of `from` is; null where the facts lead from the one to the other by no path. */
  factor(from: Unit, to: Unit): Exact | null;
}

/**
 * A converter for a material's facts. Links chain: use → sheet → area → mass → volume.
 * A sheet is width × height. Where a roll is spoken of (what is kept in rolls or in lengths, or a roll as one
 * of the two units converted), the same two sizes are the roll's width and length; lengths convert along it.
 * @param lotUnit the unit in which the lot is kept, if it is a lot's converter
 */
export function converterFor(facts: MaterialFacts, lotUnit?: Unit): Converter {
  const known = new Map<string, Exact | null>();
  const kept = [facts.stockUnit.dimension, lotUnit?.dimension];
  const rolled = kept.includes('roll') || kept.includes('length');
  return {
    factor(from, to) {
      if (from.name === to.name) return ONE;
      const key = `${from.name}>${to.name}`;
      let factor = known.get(key);
      if (factor === undefined) {
        const asRoll = rolled || from.dimension === 'roll' || to.dimension === 'roll';
        const path = follow(linksOf(facts, asRoll), from.dimension, to.dimension);
        factor = path?.mul(from.inBase).div(to.inBase) ?? null;
        known.set(key, factor);
      }
      return factor;
    },
  };
}

/** A material's facts with a lot's own ones in their place where it has them. */
export function factsOfLot(material: MaterialFacts, lot: LotFacts): MaterialFacts {
  return {
    stockUnit: material.stockUnit,
    density: material.density,
    sheetWidth: lot.sheetWidth ?? material.sheetWidth,
    sheetHeight: lot.sheetHeight ?? material.sheetHeight,
    grammage: lot.grammage ?? material.grammage,
    usesPerUnit: lot.usesPerUnit ?? material.usesPerUnit,
  };
}

function linksOf(facts: MaterialFacts, asRoll: boolean): Link[] {
  const { sheetWidth, sheetHeight, grammage, density, usesPerUnit, stockUnit } = facts;
  const links: Link[] = [];
  if (asRoll) {
    if (isKnown(sheetHeight)) links.push({ from: 'roll', to: 'length', factor: sheetHeight });
    if (isKnown(sheetWidth)) links.push({ from: 'length', to: 'area', factor: sheetWidth });
  } else if (isKnown(sheetWidth) && isKnown(sheetHeight)) {
    links.push({ from: 'sheet', to: 'area', factor: sheetWidth.mul(sheetHeight) });
  }
  if (isKnown(grammage)) links.push({ from: 'area', to: 'mass', factor: grammage.mul(ratio(1, CM2_PER_M2)) });
  if (isKnown(density)) links.push({ from: 'volume', to: 'mass', factor: density });
  if (isKnown(usesPerUnit) && stockUnit.dimension !== 'use') {
    links.push({ from: stockUnit.dimension, to: 'use', factor: usesPerUnit.div(stockUnit.inBase) });
  }
  return links;
}

function isKnown(fact: Exact | null): fact is Exact {
  return fact !== null && fact.compare(ZERO) > 0;
}

/** The product of the factors on the way from one dimension to the other; links can be walked both ways. */
function follow(links: readonly Link[], from: Dimension, to: Dimension): Exact | null {
  const reached = new Map<Dimension, Exact>([[from, ONE]]);
  for (const [here, soFar] of reached) {
    if (here === to) return soFar;
    for (const link of links) {
      if (link.from === here && !reached.has(link.to)) reached.set(link.to, soFar.mul(link.factor));
      if (link.to === here && !reached.has(link.from)) reached.set(link.from, soFar.div(link.factor));
    }
  }
  return null;
}
