import { type Day, isoDay } from './day.ts';
import { type Exact, roundQuantity, sum, ZERO } from './exact-number.ts';
import { keyOf } from './identifier.ts';
import { accountsOf, type Ledger } from './ledger.ts';
import type { LotAccount } from './lot-account.ts';
import type { Coins, Currency } from './money.ts';
import { compareText } from './notice.ts';
import { type Lot, type Material, STUDIO_JOB } from './studio.ts';
import type { Unit } from './unit.ts';

/** Something that was thrown away. */
export interface Disposed {
  /** The identifier of its Waste movement; null for a lot that was only marked as discarded, or a row without one. */
  readonly movement: string | null;
  /** Null for a lot that was discarded nobody knows when. */
  readonly day: Day | null;
  readonly lot: Lot;
  /** As written, in `unit`. */
  readonly quantity: Exact;
  readonly unit: Unit;
  /** At the lot's cost; null for a lot without one. */
  readonly worth: Coins | null;
  /** As written; null where it is nobody's. */
  readonly job: string | null;
  /** A job's normal waste, or the studio's loss: what is nobody's, and what the job STUDIO wasted. */
  readonly borneBy: 'job' | 'studio';
  /** How it is known: by a Waste movement, or by a lot's state alone, with what no movement accounts for. */
  readonly by: 'waste' | 'state';
  readonly note: string | null;
}

/** What was thrown away of a material. */
export interface DisposedMaterial {
  readonly material: Material;
  /** In the material's stock unit. */
  readonly quantity: Exact;
  readonly unit: Unit;
  /** The worth of what has a cost. */
  readonly worth: Coins;
  /** How many rows are of lots without a cost; the worth misses them. */
  readonly withoutCost: number;
  /** By which rule it is to be thrown away, as Materials says; null where nothing is said. */
  readonly rule: string | null;
  readonly hazards: string | null;
  /** The earliest first. */
  readonly rows: readonly Disposed[];
}

/** What was thrown away in a year. */
export interface Disposals {
  readonly year: number;
  readonly currency: Currency;
  readonly materials: readonly DisposedMaterial[];
  /** At cost, of what has one. */
  readonly jobWaste: Coins;
  /** At cost, of what has one. */
  readonly studioLoss: Coins;
  /** How many rows are of lots without a cost. */
  readonly withoutCost: number;
  /** Lots discarded with something left in them on a day that nobody wrote down: in which year can't be told. */
  readonly undated: readonly Disposed[];
}

/**
 * What was thrown away in a calendar year: every Waste that no row has taken back, and lots that were marked as
 * discarded in that year while something was left that no movement accounts for.
 */
export function disposalsIn(ledger: Ledger, year: number): Disposals {
  const materials = ledger.studio.materials.flatMap((material) => {
    const rows = accountsOf(ledger, material)
      .flatMap((account) => [...wastesOf(account), ...discardedOf(account)])
      .filter(({ day }) => day !== null && yearOf(day) === year)
      .toSorted((a, b) => (a.day ?? 0) - (b.day ?? 0) || compareText(a.lot.name, b.lot.name));
    return rows.length === 0 ? [] : [disposedMaterial(material, rows)];
  });
  const rows = materials.flatMap((each) => each.rows);
  return {
    year,
    currency: ledger.studio.settings.currency,
    materials,
    jobWaste: worthOf(rows.filter(({ borneBy }) => borneBy === 'job')),
    studioLoss: worthOf(rows.filter(({ borneBy }) => borneBy === 'studio')),
    withoutCost: withoutCost(rows),
    undated: [...ledger.accounts.values()].flatMap(discardedOf).filter(({ day }) => day === null),
  };
}

function yearOf(day: Day): number {
  return Number(isoDay(day).slice(0, 'YYYY'.length));
}

function wastesOf({ lot, postings }: LotAccount): Disposed[] {
  return postings
    .filter(({ movement, reversedOn }) => {
      return movement.kind === 'Waste' && movement.reverses === null && reversedOn === null;
    })
    .map(({ movement: { name, day, quantity, unit, job, note }, cost }) => ({
      movement: name,
      day,
      lot,
      quantity,
      unit,
      worth: cost,
      job,
      borneBy: job === null || keyOf(job) === keyOf(STUDIO_JOB) ? 'studio' : 'job',
      by: 'waste',
      note,
    }));
}

/** What a discarded lot still held when its last movement was over. */
function discardedOf(account: LotAccount): Disposed[] {
  const { lot, postings, cost } = account;
  const { state, stateSince, quantity, unit, notes } = lot.record;
  const last = postings.at(-1);
  const left = last?.left ?? quantity;
  if (state !== 'Discarded' || left.compare(0) <= 0) return [];
  const worth = cost === null ? null : cost - (last?.charged ?? 0n);
  const fromLot = { lot, quantity: left, unit, worth, note: notes } as const;
  return [{ ...fromLot, movement: null, day: stateSince, job: null, borneBy: 'studio', by: 'state' }];
}

function disposedMaterial(material: Material, rows: readonly Disposed[]): DisposedMaterial {
  const { disposal, hazards } = material.record;
  const inStockUnit = rows.map(({ lot, quantity, unit }) =>
    quantity.mul(lot.converter.factor(unit, material.unit) ?? ZERO),
  );
  return {
    material,
    quantity: roundQuantity(sum(inStockUnit)),
    unit: material.unit,
    worth: worthOf(rows),
    withoutCost: withoutCost(rows),
    rule: disposal,
    hazards,
    rows,
  };
}

function worthOf(rows: readonly Disposed[]): Coins {
  return rows.reduce((total, { worth }) => total + (worth ?? 0n), 0n);
}

function withoutCost(rows: readonly Disposed[]): number {
  return rows.filter(({ worth }) => worth === null).length;
}
