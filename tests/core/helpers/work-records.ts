import type {
  EntryRecord,
  ItemRecord,
  JobRecord,
  JobStage,
  OfferRecord,
  OrderLineRecord,
  OrderRecord,
  PlanRecord,
  Sharing,
  SupplierRecord,
  TreatmentRecord,
  UsageRateRecord,
} from '../../../src/core/records.ts';
import { dayOrNull, on, type Plain, qty, qtyOrNull, rowOf, unit } from './stock-records.ts';

/** Builders of the records of work and trade, each with defaults for all that a test doesn't speak of. */

export function treatment(
  name: string,
  more: { readonly minutes?: Plain; readonly setup?: Plain; readonly setupPer?: Sharing } = {},
): TreatmentRecord {
  return {
    treatment: name,
    extentUnit: 'leaf',
    minutesPerExtent: qtyOrNull(more.minutes),
    setupMinutes: qtyOrNull(more.setup),
    setupPer: more.setupPer ?? null,
    standingHours: null,
    ...rowOf('Treatments'),
  };
}

export interface PlainRate {
  readonly unit?: string;
  readonly fixed?: Plain;
  readonly per?: Sharing;
  readonly waste?: Plain;
  readonly whole?: boolean;
  readonly choice?: string;
}

/** A usage rate in g, unless the test says otherwise. */
export function rate(of: string, takes: string, quantity: Plain, more: PlainRate = {}): UsageRateRecord {
  return {
    treatment: of,
    material: takes,
    quantityPerExtent: qty(quantity),
    unit: unit(more.unit ?? 'g'),
    fixedQuantity: qtyOrNull(more.fixed),
    fixedPer: more.per ?? null,
    waste: qtyOrNull(more.waste),
    whole: more.whole ?? null,
    choice: more.choice ?? null,
    ...rowOf('UsageRates'),
  };
}

export interface PlainEntry {
  readonly job?: string;
  readonly item?: string;
  readonly drawn?: string;
  readonly notes?: string;
  readonly drawnFor?: Plain;
}

/** A log entry of job J1, unless the test says otherwise. */
export function entry(
  name: string | null,
  date: string,
  of: string,
  extent: Plain,
  more: PlainEntry = {},
): EntryRecord {
  return {
    entry: name,
    date: on(date),
    job: more.job ?? 'J1',
    item: more.item ?? null,
    treatment: of,
    extent: qty(extent),
    minutes: null,
    notes: more.notes ?? null,
    drawn: more.drawn ?? null,
    drawnFor: qtyOrNull(more.drawnFor),
    ...rowOf('TreatmentLog'),
  };
}

export function job(name: string, stage: JobStage | null = 'Booked'): JobRecord {
  return { job: name, object: null, stage, due: null, storedAt: null, ...rowOf('Jobs') };
}

export function item(of: string, name: string): ItemRecord {
  return { job: of, item: name, ...rowOf('Items') };
}

export interface PlainPlan {
  readonly job?: string;
  readonly item?: string;
  readonly planned?: string;
  readonly done?: boolean;
}

/** A plan row of job J1, unless the test says otherwise. */
export function plan(line: string | null, of: string, extent: Plain, more: PlainPlan = {}): PlanRecord {
  return {
    line,
    job: more.job ?? 'J1',
    item: more.item ?? null,
    treatment: of,
    extent: qty(extent),
    plannedFor: dayOrNull(more.planned),
    done: more.done ?? null,
    ...rowOf('Plan'),
  };
}

export function supplier(name: string, leadTime?: Plain, spread?: Plain): SupplierRecord {
  return {
    supplier: name,
    leadTimeDays: qtyOrNull(leadTime),
    leadTimeSpreadDays: qtyOrNull(spread),
    minimumOrder: null,
    carriage: null,
    carriageFreeOver: null,
    ...rowOf('Suppliers'),
  };
}

/** An offer of supplier S1 in g, unless the test says otherwise. */
export function offer(
  of: string,
  packQuantity: Plain,
  packPrice: Plain,
  more: {
    readonly supplier?: string;
    readonly unit?: string;
    readonly from?: Plain;
    readonly checked?: string;
    readonly sds?: string;
  } = {},
): OfferRecord {
  return {
    supplier: more.supplier ?? 'S1',
    material: of,
    packQuantity: qty(packQuantity),
    unit: unit(more.unit ?? 'g'),
    packPrice: qty(packPrice),
    fromPacks: qtyOrNull(more.from),
    checkedOn: dayOrNull(more.checked),
    sdsChecked: dayOrNull(more.sds),
    ...rowOf('Offers'),
  };
}

export function order(
  name: string,
  orderedOn: string,
  more: { readonly supplier?: string; readonly expected?: string; readonly state?: string } = {},
): OrderRecord {
  return {
    order: name,
    supplier: more.supplier ?? 'S1',
    orderedOn: on(orderedOn),
    expected: dayOrNull(more.expected),
    state: more.state ?? null,
    ...rowOf('Orders'),
  };
}

export function orderLine(
  of: string,
  line: string | null,
  named: string,
  packs: Plain,
  packQuantity: Plain,
  unitName = 'g',
): OrderLineRecord {
  return {
    order: of,
    line,
    material: named,
    packs: qty(packs),
    packQuantity: qty(packQuantity),
    unit: unit(unitName),
    packPrice: null,
    ...rowOf('OrderLines'),
  };
}
