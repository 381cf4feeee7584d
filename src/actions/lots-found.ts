import { addDays, type Day, spokenDay } from '../core/day.ts';
import { type Exact, roundQuantity } from '../core/exact-number.ts';
import { keyOf } from '../core/identifier.ts';
import { accountIn, costIn, type Ledger, post } from '../core/ledger.ts';
import { leftOn } from '../core/lot-account.ts';
import type { CountRecord } from '../core/records.ts';
import {
  type CountDifference,
  countMovement,
  countObstacle,
  LAST_NAME,
} from '../core/stocktake-differences.ts';
import type { Lot } from '../core/studio.ts';
import { type Unit, unitNamed } from '../core/unit.ts';
import { spokenQuantity } from '../core/wording.ts';
import { RECORD_TABLES } from '../workbook/known-tables.ts';
import { noSuchName } from './nearest-name.ts';
import { type Refusal, refuse } from './writing-desk.ts';

const GRAM = unitNamed('g');

/** One lot as it was found. */
export interface LotCounted {
  /** Typed or scanned. */
  readonly lot: string;
  /** Null where it was weighed. */
  readonly quantity: Exact | null;
  /** Null for the lot's own unit. */
  readonly unit: Unit | null;
  /** What stood on the balance in grams, jar and all; null where the quantity is given. */
  readonly gross: Exact | null;
  readonly note: string | null;
}

/** One lot with how much of it was found, in a unit that leads to its own. */
export interface Found {
  readonly lot: Lot;
  readonly quantity: Exact;
  readonly unit: Unit;
  readonly gross: Exact | null;
  readonly note: string | null;
}

/** What was counted or weighed of each lot; refused as soon as one of them can't be counted so. */
export function whatWasFound(
  ledger: Ledger,
  { counted, date }: { readonly counted: readonly LotCounted[]; readonly date: Day },
  today: Day,
): readonly Found[] | Refusal {
  if (date > today) return refuse(`Nothing can be counted on ${spokenDay(date)}, which is still to come.`);
  const all: Found[] = [];
  for (const each of counted) {
    const lot = ledger.studio.lotsByKey.get(keyOf(each.lot));
    if (lot === undefined) {
      return noSuchName(
        'lot',
        each.lot.trim(),
        'the stock tables',
        ledger.studio.lots.map(({ name }) => name),
      );
    }
    if (all.some((other) => other.lot === lot)) {
      return refuse(`Lot ${lot.name} is given twice: give what is left of it once.`);
    }
    const amount = amountOf(lot, each);
    if ('ok' in amount) return amount;
    const obstacle = countObstacle(ledger, lot, { countedOn: date, unit: amount.unit }, today);
    if (obstacle !== null) return refuse(obstacle);
    all.push({ lot, ...amount, gross: each.gross, note: each.note });
  }
  return all;
}

/** How much of a lot was found: as given, or what the balance showed less the empty jar. */
function amountOf(
  lot: Lot,
  { quantity, unit, gross }: LotCounted,
): { readonly quantity: Exact; readonly unit: Unit } | Refusal {
  if (gross === null) {
    if (quantity === null) return refuse(`How much of lot ${lot.name} was found is not given.`);
    if (quantity.compare(0) < 0) return refuse(`Less than nothing can't be left of lot ${lot.name}.`);
    return { quantity, unit: unit ?? lot.record.unit };
  }
  if (quantity !== null) {
    return refuse(`Lot ${lot.name} is given both counted and weighed: give one of the two.`);
  }
  const { tare, place } = lot.record;
  const where = `Tare g of lot ${lot.name} (row ${place.sheetRow} of ${place.table})`;
  if (tare === null) {
    return refuse(
      `${where} is blank, so what is in the jar can't be told from its weight: ` +
        'weigh an empty jar of the same kind and fill it in, or give what is left without the jar.',
    );
  }
  const net = gross.sub(tare);
  if (net.compare(0) < 0) {
    return refuse(
      `Lot ${lot.name} weighs ${spokenQuantity(gross, GRAM)} with its jar, and the empty jar alone ` +
        `${spokenQuantity(tare, GRAM)}: one of the two is wrong, the weight or ${where}.`,
    );
  }
  const factor = lot.converter.factor(GRAM, lot.record.unit);
  if (factor === null) {
    return refuse(
      `Nothing says how much of lot ${lot.name} one gram is, which is kept in ${lot.record.unit.name}: ` +
        `give the density or the grammage of ${lot.material.name}, or count it.`,
    );
  }
  return { quantity: roundQuantity(net.mul(factor)), unit: lot.record.unit };
}

/** What a count of today's ledger comes to. */
export function asCounted(ledger: Ledger, stocktake: string, found: Found, date: Day): CountDifference {
  const { lot, quantity, unit, gross, note } = found;
  const account = accountIn(ledger, lot);
  const factor = lot.converter.factor(unit, lot.record.unit);
  if (factor === null) throw new Error(`${unit.name} led to the unit of lot ${lot.name} before`);
  const counted = roundQuantity(quantity.mul(factor));
  const expected = roundQuantity(leftOn(account, date));
  const difference = counted.sub(expected);
  const record: CountRecord = {
    count: null,
    stocktake,
    lot: lot.name,
    countedOn: date,
    quantity,
    unit,
    gross,
    leftThen: expected,
    leftDayBefore: roundQuantity(leftOn(account, addDays(date, -1))),
    by: null,
    posting: null,
    note,
    place: { table: RECORD_TABLES.counts.name, row: -1, sheetRow: 0 },
    unreadable: new Set(),
  };
  const count = countMovement({ record, lot, difference }, LAST_NAME);
  const cost = count === null ? 0n : costIn(post(ledger, [count]), count);
  return { record, lot, counted, expected, difference, cost: account.cost === null ? null : cost };
}
