import { type Day, spokenDay } from '../core/day.ts';
import type { Exact } from '../core/exact-number.ts';
import { keyOf, type Random } from '../core/identifier.ts';
import { accountIn } from '../core/ledger.ts';
import { openedOn } from '../core/life.ts';
import { type LotAccount, leftOn, smallestLeftFrom, stateOn } from '../core/lot-account.ts';
import type { Lot, Studio } from '../core/studio.ts';
import type { Unit } from '../core/unit.ts';
import { spokenNumber, spokenQuantity } from '../core/wording.ts';
import { dayCell } from '../workbook/cell-write.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { changeLot } from './change-lot.ts';
import { lotInHand } from './lot-in-hand.ts';
import { partWithin, splitLot } from './split-lot.ts';
import {
  openDesk,
  openMovements,
  type Refusal,
  refuse,
  type WritingDesk,
  type Written,
} from './writing-desk.ts';

/** A lot, or one container of it, to be opened. */
export interface LotToOpen {
  readonly lot: string;
  /** How much the container holds; null opens the whole lot. */
  readonly quantity: Exact | null;
  /** Of the quantity; null for the lot's own unit. */
  readonly unit: Unit | null;
  readonly date: Day;
  readonly by: string | null;
}

/** What was opened: the lot itself, or the container that is a lot of its own now. */
export type OpenedLot = Written & { readonly opened: Lot };

/**
 * Opens a lot: the day goes into Opened. Where a quantity is given that is less than what is left, the lot is
 * several containers, and one of them is split off into a lot of its own, which is open from that day on.
 */
export function openLot(
  snapshot: WorkbookSnapshot,
  request: LotToOpen,
  today: Day,
  random: Random,
): OpenedLot | Refusal {
  const { date, by, quantity } = request;
  if (quantity === null) {
    const desk = openDesk(snapshot, today, random);
    if (!desk.ok) return desk;
    const lot = lotToOpen(desk, request);
    return 'ok' in lot ? lot : openWhole(snapshot, desk, lot, date, random);
  }
  const desk = openMovements(snapshot, today, random, ['Into']);
  if (!desk.ok) return desk;
  const lot = lotToOpen(desk, request);
  if ('ok' in lot) return lot;
  const within = partWithin(desk.ledger, lot, { quantity, unit: request.unit ?? lot.record.unit }, date);
  if ('ok' in within) return within;
  const { part } = within;
  if (part === null) return openWhole(snapshot, desk, lot, date, random);
  const table = desk.tables.get(lot.record.place.table.toLowerCase());
  if (table?.columns.has('Opened') !== true) return noColumnOpened(lot);
  const split = splitLot(desk, lot, {
    quantity: part,
    date,
    by,
    isOpened: true,
    state: null,
    deed: 'opened',
  });
  return split.ok ? { ...split, opened: split.child } : split;
}

function lotToOpen(desk: WritingDesk, request: LotToOpen): Lot | Refusal {
  const lot = lotInHand(desk, request);
  if ('ok' in lot) return lot;
  const { date } = request;
  const account = accountIn(desk.ledger, lot);
  const state = stateOn(account, date);
  if (state !== 'Usable') return refuse(`Lot ${lot.name} was ${state.toLowerCase()} on ${spokenDay(date)}.`);
  return smallestLeftFrom(account, date).compare(0) <= 0
    ? refuse(`Nothing is left of lot ${lot.name}.`)
    : lot;
}

function noColumnOpened(lot: Lot): Refusal {
  return refuse(
    `The table ${lot.record.place.table} has no column Opened, where the day must be written: add it.`,
  );
}

function openWhole(
  snapshot: WorkbookSnapshot,
  desk: WritingDesk,
  lot: Lot,
  date: Day,
  random: Random,
): OpenedLot | Refusal {
  const account = accountIn(desk.ledger, lot);
  if (lot.record.opened !== null) {
    return refuse(`Lot ${lot.name} has been open since ${spokenDay(lot.record.opened)}, as Opened says.`);
  }
  const since = openedOn(account, desk.today);
  if (since !== null && since < date) {
    return refuse(
      `Lot ${lot.name} has been open since ${spokenDay(since)}, when it was first used: give that day or an earlier one.`,
    );
  }
  const cells = [{ header: 'Opened', cell: dayCell(date), needed: true }];
  const changed = changeLot(snapshot, desk, lot, cells, { today: desk.today, random });
  if (!changed.ok) return changed;
  const remarks = [...changed.remarks, ...looksLikeSeveral(desk, account, date)];
  return { ...changed, opened: changed.lot, remarks };
}

function looksLikeSeveral({ ledger }: WritingDesk, account: LotAccount, date: Day): string[] {
  const { lot } = account;
  const container = containerOf(ledger.studio, lot);
  if (container === null || leftOn(account, date).compare(container) <= 0) return [];
  const { unit, quantity } = lot.record;
  return [
    `Lot ${lot.name} looks like ${spokenNumber(quantity.div(container))} containers of ${spokenQuantity(container, unit)}, ` +
      `and all of it counts as open now. To open one of them clear Opened and open it with the quantity of one.`,
  ];
}

/**
 * How much one container of a lot holds, in the lot's unit, where the lot looks like several of them: the pack
 * quantity of its order line, else of an offer of its supplier, that goes into its Quantity twice or more without a
 * rest. The largest of several.
 * @returns null where it looks like one
 */
export function containerOf(studio: Studio, lot: Lot): Exact | null {
  const { order, orderLine, supplier, quantity, unit } = lot.record;
  const isOf = (a: string | null, b: string | null): boolean =>
    a !== null && b !== null && keyOf(a) === keyOf(b);
  const lines = studio.orderLines.filter(
    ({ record, material }) =>
      material === lot.material &&
      isOf(record.order, order) &&
      (orderLine === null || isOf(record.line, orderLine)),
  );
  const offers = lot.material.offers.filter((offer) => supplier === null || isOf(offer.supplier, supplier));
  const packs = (rows: readonly { readonly packQuantity: Exact; readonly unit: Unit }[]): Exact[] =>
    rows
      .map((row) => lot.converter.factor(row.unit, unit)?.mul(row.packQuantity) ?? null)
      .filter((pack) => pack !== null)
      .filter((pack) => quantity.div(pack).d === 1n && quantity.compare(pack) > 0)
      .toSorted((a, b) => b.compare(a));
  const ofLines = packs(lines.map(({ record }) => record));
  return (lines.length > 0 ? ofLines[0] : packs(offers)[0]) ?? null;
}
