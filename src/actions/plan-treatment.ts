import type { Day } from '../core/day.ts';
import { drawEntry } from '../core/draw.ts';
import { drawOrder } from '../core/draw-order.ts';
import { entryNeeds, entryStatus, isCountable, rateQuantity, takesFixed } from '../core/entry-needs.ts';
import { type Exact, sum, ZERO } from '../core/exact-number.ts';
import { identifierMaker, keyOf, type Random } from '../core/identifier.ts';
import { accountIn, accountsOf, costIn, type Ledger } from '../core/ledger.ts';
import { goodUntilOn, isExpiredOn } from '../core/life.ts';
import { leftOn, smallestLeftFrom, stateOn, totalCost } from '../core/lot-account.ts';
import type { Coins } from '../core/money.ts';
import type { LotCertainty } from '../core/records.ts';
import { seededRandom } from '../core/seeded-random.ts';
import type { Entry, Lot, Material, UsageRate } from '../core/studio.ts';
import type { Unit } from '../core/unit.ts';
import { withEntry } from '../core/with-entry.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { booksOf } from './books.ts';
import { entryRecordOf, findNamed, type TreatmentToLog } from './treatment-to-log.ts';
import type { Refusal } from './writing-desk.ts';

/** What logging a treatment would take from stock, before anything is written. */
export interface TreatmentPlan {
  readonly ok: true;
  /** Dated after today: the entry would be kept, and drawn on its day. */
  readonly waits: boolean;
  /** One per material, in the order of the treatment's rates; the amounts that a person gave last. */
  readonly uses: readonly PlannedUse[];
  /** What all of it costs; null as soon as a lot without a cost is among them. */
  readonly cost: Coins | null;
}

/** What would be taken of one material. */
export interface PlannedUse {
  readonly material: Material;
  /** In `unit`. */
  readonly quantity: Exact;
  readonly unit: Unit;
  /** What the rates say, in `unit`; null where no rate in force names the material. */
  readonly byRates: Exact | null;
  readonly takes: readonly PlannedTake[];
  /** What no lot covers, in `unit`; 0 where all is covered. */
  readonly missing: Exact;
  readonly cost: Coins | null;
  /** The materials of which one is to be chosen, this one among them, with what each would take; empty without a choice. */
  readonly alternatives: readonly Alternative[];
  /** The lots that could be named instead: in draw order, then those that the rules would not pick. */
  readonly lots: readonly LotChoice[];
}

export interface PlannedTake {
  readonly lot: Lot;
  readonly lotIs: LotCertainty;
  /** In the unit of the use. */
  readonly quantity: Exact;
  readonly cost: Coins | null;
}

export interface Alternative {
  readonly material: Material;
  readonly quantity: Exact;
  readonly unit: Unit;
}

/** Why the rules would not pick a lot by themselves. */
export type LotDoubt =
  | 'gone off'
  | 'set aside'
  | 'discarded'
  | 'not received yet'
  | 'cannot be told'
  | 'empty';

export interface LotChoice {
  readonly lot: Lot;
  /** What can be taken of it on the day of the treatment, in the unit of the use. */
  readonly left: Exact;
  readonly goodUntil: Day | null;
  /** Null where the draw order may pick it. */
  readonly doubt: LotDoubt | null;
}

/**
 * Works out what a treatment would take, from which lots and at what cost. Nothing is written, and the figures are
 * those that logging it would give, but for an odd coin between two uses of one lot on one day.
 */
export function planTreatment(
  snapshot: WorkbookSnapshot,
  request: TreatmentToLog,
  today: Day,
): TreatmentPlan | Refusal {
  const { ledger } = booksOf(snapshot);
  const named = findNamed(ledger.studio, request);
  if (!named.ok) return named;
  const record = entryRecordOf(request, named, PROVISIONAL, '');
  const { ledger: before, entry } = withEntry(ledger, record, named.treatment, named.asUsed);
  if (entryStatus(before, entry, today) === 'waiting') return { ok: true, waits: true, uses: [], cost: 0n };
  const drawing = drawEntry(before, entry, today, identifierMaker(provisionalRandom(), new Set()));
  const needs = entryNeeds(before, entry, today).filter(({ quantity }) => quantity.compare(0) > 0);
  const uses = [...new Set(needs.map(({ material }) => material))].map((material): PlannedUse => {
    const own = needs.filter((need) => need.material === material);
    const unit = own[0]?.unit ?? material.unit;
    const inUnit = (quantity: Exact, from: Unit, lot: Lot | null): Exact =>
      quantity.mul((lot ?? material).converter.factor(from, unit) ?? ZERO);
    const takes = drawing.movements
      .filter(({ lot }) => lot.material === material)
      .map((movement) => ({
        lot: movement.lot,
        lotIs: movement.lotIs ?? 'assumed',
        quantity: inUnit(movement.quantity, movement.unit, movement.lot),
        cost: costIn(drawing.ledger, movement),
      }));
    const rates = ratesFor(before, entry, material);
    return {
      material,
      unit,
      quantity: sum(own.map((need) => inUnit(need.quantity, need.unit, need.lot))),
      byRates:
        rates.length === 0
          ? null
          : sum(rates.map((rate) => inUnit(quantityBy(before, entry, rate, today), rate.record.unit, null))),
      takes,
      missing: sum(
        drawing.shortfalls
          .filter((shortfall) => shortfall.material === material)
          .map((shortfall) => inUnit(shortfall.missing, shortfall.unit, null)),
      ),
      cost: totalCost(takes.map(({ cost }) => cost)),
      alternatives: alternativesTo(before, entry, material, today),
      lots: lotsToName(before, material, unit, request.date),
    };
  });
  return { ok: true, waits: false, uses, cost: totalCost(uses.map(({ cost }) => cost)) };
}

const PROVISIONAL = 'not written yet';

/** Numbers for the identifiers of what is only planned: nothing of it is kept, so they are the same every time. */
export function provisionalRandom(): Random {
  return seededRandom(1);
}

function quantityBy(ledger: Ledger, entry: Entry, rate: UsageRate, today: Day): Exact {
  return rateQuantity(rate, entry.record.extent, takesFixed(ledger, entry, rate, today));
}

function ratesFor(ledger: Ledger, entry: Entry, material: Material): UsageRate[] {
  return entry.treatment.rates.filter((rate) => rate.material === material && isCountable(ledger, rate));
}

/** The alternatives among which a material was chosen, each with what the rates take of it. */
function alternativesTo(ledger: Ledger, entry: Entry, material: Material, today: Day): Alternative[] {
  const choice = entry.treatment.rates.find(
    (rate) => rate.material === material && rate.record.choice !== null,
  )?.record.choice;
  if (choice == null) return [];
  return entry.treatment.rates
    .filter((rate) => rate.record.choice !== null && keyOf(rate.record.choice) === keyOf(choice))
    .filter((rate) => isCountable(ledger, rate))
    .map((rate) => ({
      material: rate.material,
      quantity: quantityBy(ledger, entry, rate, today),
      unit: rate.record.unit,
    }));
}

/** The lots of a material that could be named on a day: in draw order, then those that the rules would not pick. */
export function lotsToName(ledger: Ledger, material: Material, unit: Unit, day: Day): LotChoice[] {
  const ordered = drawOrder(ledger, material, day).map(({ lot }) => lot);
  const others = accountsOf(ledger, material)
    .map(({ lot }) => lot)
    .filter((lot) => !ordered.includes(lot) && ledger.studio.lotsByKey.get(keyOf(lot.name)) === lot);
  return [...ordered, ...others].flatMap((lot): LotChoice[] => {
    const account = accountIn(ledger, lot);
    const factor = lot.converter.factor(lot.record.unit, unit);
    if (factor === null) return [];
    return [
      {
        lot,
        left: smallestLeftFrom(account, day).mul(factor),
        goodUntil: goodUntilOn(account, day),
        doubt: ordered.includes(lot) ? null : doubtAbout(ledger, lot, day),
      },
    ];
  });
}

function doubtAbout(ledger: Ledger, lot: Lot, day: Day): LotDoubt {
  const account = accountIn(ledger, lot);
  if (lot.record.received > day) return 'not received yet';
  if (stateOn(account, day) === 'Discarded') return 'discarded';
  if (stateOn(account, day) === 'Set aside') return 'set aside';
  if (isExpiredOn(account, day)) return 'gone off';
  return leftOn(account, day).compare(0) <= 0 ? 'empty' : 'cannot be told';
}
