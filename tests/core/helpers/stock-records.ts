import { type Day, parseDay } from '../../../src/core/day.ts';
import { decimal, type Exact } from '../../../src/core/exact-number.ts';
import type {
  LotRecord,
  MaterialRecord,
  MovementRecord,
  PlaceRecord,
  RecipePartRecord,
  RecipeRecord,
  Row,
} from '../../../src/core/records.ts';
import { findUnit, type Unit } from '../../../src/core/unit.ts';

/** Builders of the records of stock, each with defaults for all that a test doesn't speak of. */

/** A number that a test writes: as text where binary fractions would get in the way. */
export type Plain = number | string;

/** A day as YYYY-MM-DD. */
export function on(text: string): Day {
  const day = parseDay(text);
  if (day === null) throw new Error(`${text} is no day`);
  return day;
}

export function qty(value: Plain): Exact {
  return decimal(String(value));
}

export function qtyOrNull(value: Plain | undefined): Exact | null {
  return value === undefined ? null : qty(value);
}

export function dayOrNull(text: string | undefined): Day | null {
  return text === undefined ? null : on(text);
}

export function unit(name: string): Unit {
  const found = findUnit(name);
  if (found === null) throw new Error(`${name} is no unit`);
  return found;
}

let rows = 0;

/** A row in a table, below all those made before. */
export function rowOf(table: string, unreadable: readonly string[] = []): Row {
  rows += 1;
  return { place: { table, row: rows, sheetRow: rows + 1 }, unreadable: new Set(unreadable) };
}

export function material(
  name: string,
  stockUnit: string,
  more: Partial<Omit<MaterialRecord, keyof Row>> & { readonly unreadable?: readonly string[] } = {},
): MaterialRecord {
  const { unreadable, ...fields } = more;
  return {
    material: name,
    description: null,
    composition: null,
    kind: 'Paste',
    stockUnit: unit(stockUnit),
    counted: null,
    sheetWidth: null,
    sheetHeight: null,
    grammage: null,
    density: null,
    usesPerUnit: null,
    lifeSealedDays: null,
    lifeOpenedDays: null,
    phLow: null,
    phHigh: null,
    keepAtLeast: null,
    keepAtMost: null,
    serviceLevel: null,
    supplier: null,
    hazards: null,
    sdsChecked: null,
    disposal: null,
    ...fields,
    ...rowOf('Materials', unreadable),
  };
}

export interface PlainLot {
  readonly unit?: string;
  readonly cost?: Plain;
  readonly useBy?: string;
  readonly opened?: string;
  readonly retested?: string;
  readonly retestedUntil?: string;
  readonly retestedBy?: string;
  readonly ph?: Plain;
  readonly tare?: Plain;
  readonly posting?: string;
  readonly place?: string;
  readonly state?: LotRecord['state'];
  readonly since?: string;
  readonly recipe?: string;
  readonly order?: string;
  readonly orderLine?: string;
  readonly supplier?: string;
  readonly width?: Plain;
  readonly height?: Plain;
  readonly grammage?: Plain;
  readonly uses?: Plain;
  readonly left?: Plain;
  readonly written?: Plain;
  readonly unreadable?: readonly string[];
}

/** A lot in g, unless the test says otherwise. */
export function lot(
  name: string,
  of: string,
  received: string,
  quantity: Plain,
  more: PlainLot = {},
): LotRecord {
  return {
    lot: name,
    material: of,
    received: on(received),
    quantity: qty(quantity),
    unit: unit(more.unit ?? 'g'),
    cost: qtyOrNull(more.cost),
    supplier: more.supplier ?? null,
    supplierLot: null,
    useBy: dayOrNull(more.useBy),
    opened: dayOrNull(more.opened),
    retested: dayOrNull(more.retested),
    retestedUntil: dayOrNull(more.retestedUntil),
    retestedBy: more.retestedBy ?? null,
    storedAt: more.place ?? null,
    state: more.state ?? null,
    stateSince: dayOrNull(more.since),
    recipe: more.recipe ?? null,
    order: more.order ?? null,
    orderLine: more.orderLine ?? null,
    ph: qtyOrNull(more.ph),
    tare: qtyOrNull(more.tare),
    posting: more.posting ?? null,
    notes: null,
    sheetWidth: qtyOrNull(more.width),
    sheetHeight: qtyOrNull(more.height),
    grammage: qtyOrNull(more.grammage),
    usesPerUnit: qtyOrNull(more.uses),
    left: qtyOrNull(more.left),
    leftAsWritten: qtyOrNull(more.written),
    ...rowOf('Paste', more.unreadable),
  };
}

export interface PlainMovement {
  readonly unit?: string;
  readonly job?: string;
  readonly item?: string;
  readonly entry?: string;
  readonly lotIs?: MovementRecord['lotIs'];
  readonly reverses?: string;
  readonly posting?: string;
  readonly note?: string;
}

/** A movement in g, unless the test says otherwise. */
export function movement(
  name: string,
  date: string,
  kind: MovementRecord['kind'],
  of: string,
  quantity: Plain,
  more: PlainMovement = {},
): MovementRecord {
  return {
    movement: name,
    date: on(date),
    kind,
    lot: of,
    quantity: qty(quantity),
    unit: unit(more.unit ?? 'g'),
    job: more.job ?? null,
    item: more.item ?? null,
    entry: more.entry ?? null,
    lotIs: more.lotIs ?? null,
    into: null,
    offcut: null,
    reverses: more.reverses ?? null,
    by: null,
    posted: null,
    posting: more.posting ?? null,
    note: more.note ?? null,
    ...rowOf('Movements'),
  };
}

export function recipe(
  name: string,
  makes: string,
  makesQuantity: Plain,
  more: {
    readonly unit?: string;
    readonly life?: number;
    readonly lifeCold?: number;
    readonly lifeDark?: number;
    readonly smallest?: Plain;
    readonly readyAfterHours?: Plain;
    readonly limitedByParts?: boolean;
    readonly cautions?: string;
    readonly unreadable?: readonly string[];
  } = {},
): RecipeRecord {
  return {
    recipe: name,
    makes,
    yield: qty(makesQuantity),
    unit: unit(more.unit ?? 'g'),
    lifeDays: more.life ?? null,
    lifeColdDays: more.lifeCold ?? null,
    lifeDarkDays: more.lifeDark ?? null,
    smallestBatch: qtyOrNull(more.smallest),
    minutes: null,
    readyAfterHours: qtyOrNull(more.readyAfterHours),
    limitedByParts: more.limitedByParts ?? null,
    method: null,
    cautions: more.cautions ?? null,
    ...rowOf('Recipes', more.unreadable),
  };
}

export function recipePart(of: string, named: string, quantity: Plain, unitName = 'g'): RecipePartRecord {
  return {
    recipe: of,
    material: named,
    quantity: qty(quantity),
    unit: unit(unitName),
    ...rowOf('RecipeParts'),
  };
}

export function place(
  name: string,
  cold: boolean | null = null,
  more: { readonly dark?: boolean; readonly order?: Plain } = {},
): PlaceRecord {
  return {
    storage: name,
    cold,
    dark: more.dark ?? null,
    walkingOrder: qtyOrNull(more.order),
    ...rowOf('Places'),
  };
}
