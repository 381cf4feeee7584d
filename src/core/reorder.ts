import { addDays, type Day } from './day.ts';
import { dailyDemand } from './demand.ts';
import { type Exact, exact, roundQuantity, smaller, sum, ZERO } from './exact-number.ts';
import { keyOf } from './identifier.ts';
import type { Ledger } from './ledger.ts';
import type { PlannedUse, UndrawnUse } from './planned-use.ts';
import { dailyStatistics, reorderPoint, serviceFactor } from './reorder-formula.ts';
import type { Material } from './studio.ts';
import { cheapestPack } from './unit-price.ts';

/** When to order a material and how much; quantities in its stock unit, with at most 6 decimals. */
export interface ReorderAnswer {
  /** What is planned within the lead time and the review days, and what the log has not drawn yet. */
  readonly planned: Exact;
  readonly reorderPoint: Exact;
  /** Usable and on order, less planned. */
  readonly position: Exact;
  /** Whether the position is at or below the point; never at a point of 0. */
  readonly isLow: boolean;
  /** What is wanting to the point and the cover days, before packs and life are looked at; 0 unless low. */
  readonly wanted: Exact;
  /** 0 unless low. */
  readonly suggestedOrder: Exact;
}

/** What the answer rests on besides the ledger. */
export interface ReorderSupply {
  /** In the material's stock unit. */
  readonly usable: Exact;
  /** In the material's stock unit. */
  readonly onOrder: Exact;
  readonly planned: readonly PlannedUse[];
  readonly undrawn: readonly UndrawnUse[];
}

/**
 * The reorder point and what to order: point = the larger of Keep at least and d·L + z·√(L·σd² + d²·σL²)
 * (see reorder-formula.ts); at or below it, order up to point + d × order cover days, in whole packs, but never
 * more than can be used before it goes off.
 */
export function reorderAnswer(
  ledger: Ledger,
  material: Material,
  supply: ReorderSupply,
  today: Day,
): ReorderAnswer {
  const { settings } = ledger.studio;
  const lead = material.supplier?.leadTimeDays?.valueOf() ?? 0;
  const leadDays = lead + settings.reviewDays;
  const { mean, deviation } = dailyStatistics(dailyDemand(ledger, material, today));
  const planned = sum(
    [
      ...supply.planned.filter((use) => use.material === material && use.day <= addDays(today, leadDays)),
      ...supply.undrawn.filter((use) => use.material === material),
    ].map((use) => use.quantity),
  );
  const point = roundQuantity(
    exact(
      reorderPoint({
        keepAtLeast: material.record.keepAtLeast?.valueOf() ?? 0,
        meanDaily: mean,
        deviationDaily: deviation,
        leadDays,
        leadSpreadDays: material.supplier?.leadTimeSpreadDays?.valueOf() ?? 0,
        factor: serviceFactor(material.record.serviceLevel?.valueOf() ?? null),
      }),
    ),
  );
  const position = roundQuantity(supply.usable.add(supply.onOrder).sub(planned));
  const isLow = point.compare(0) > 0 && position.compare(point) <= 0;
  const wanted = isLow ? point.add(exact(mean * settings.orderCoverDays)).sub(position) : ZERO;
  return {
    planned: roundQuantity(planned),
    reorderPoint: point,
    position,
    isLow,
    wanted: roundQuantity(wanted),
    suggestedOrder: isLow ? orderOf(material, wanted, exact(mean)) : ZERO,
  };
}

/** Whole packs of what is wanted, as far as daily use can finish them within the material's life. */
function orderOf(material: Material, wanted: Exact, meanDaily: Exact): Exact {
  const life = material.offers.length > 0 ? material.record.lifeSealedDays : lifeOfMade(material);
  const most = life === null || meanDaily.compare(0) === 0 ? null : meanDaily.mul(life);
  const fromSupplier = material.offers.filter(
    ({ supplier }) =>
      material.record.supplier !== null && keyOf(supplier) === keyOf(material.record.supplier),
  );
  const pack = cheapestPack(material, fromSupplier.length > 0 ? fromSupplier : material.offers, wanted);
  if (pack === null) return roundQuantity(most === null ? wanted : smaller(wanted, most));
  const packs = wanted.div(pack.quantity).ceil(0);
  const usablePacks = most === null ? packs : most.div(pack.quantity).floor(0);
  return roundQuantity(smaller(packs, usablePacks).mul(pack.quantity));
}

/** The life of what is made at the bench: the recipe's, and the material's own where it has one. */
function lifeOfMade(material: Material): number | null {
  const lives = [material.record.lifeSealedDays, material.recipe?.record.lifeDays ?? null].filter(
    (life) => life !== null,
  );
  return lives.length === 0 ? null : Math.min(...lives);
}
