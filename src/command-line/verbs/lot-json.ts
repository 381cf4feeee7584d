import type { PlacedNotice } from '../../actions/check-workbook.ts';
import { type Day, isoDay } from '../../core/day.ts';
import { type Exact, quantityNumber } from '../../core/exact-number.ts';
import { accountIn, type Ledger } from '../../core/ledger.ts';
import { lifeLimitsOn, retestOn } from '../../core/life.ts';
import { isReversedBy } from '../../core/lot-account.ts';
import { toCoins } from '../../core/money.ts';
import { lotFigures } from '../../core/stock.ts';
import type { Lot } from '../../core/studio.ts';
import { costPerUse, maxUses } from '../../core/uses.ts';
import { currencyCode, day, money, noticesJson } from '../answers-json.ts';
import { hazardsJson } from '../hazards-text.ts';
import { lotStateJson } from '../lot-words.ts';

/** Everything about one lot as other programs read it. */
export function lotJson(ledger: Ledger, lot: Lot, notices: readonly PlacedNotice[], today: Day) {
  const { record, material } = lot;
  const { currency } = ledger.studio.settings;
  const account = accountIn(ledger, lot);
  const figures = lotFigures(account, today);
  const retest = retestOn(lot, today);
  const uses = maxUses(lot);
  return {
    ...lotStateJson(ledger, lot, today),
    asOf: isoDay(today),
    currency: currencyCode(currency),
    table: record.place.table,
    row: record.place.sheetRow,
    place: record.storedAt,
    cold: lot.cold,
    dark: lot.dark,
    received: isoDay(record.received),
    quantity: quantityNumber(record.quantity),
    supplier: record.supplier,
    supplierLot: record.supplierLot,
    recipe: record.recipe,
    usable: figures.usable,
    stateSince: day(record.stateSince),
    limits: lifeLimitsOn(account, today).map((limit) => ({ day: isoDay(limit.day), reason: limit.reason })),
    retested:
      retest === null ? null : { on: isoDay(retest.on), until: isoDay(retest.until), by: record.retestedBy },
    ph: number(record.ph),
    phLow: number(material.record.phLow),
    phHigh: number(material.record.phHigh),
    cost: record.cost === null ? null : money(toCoins(record.cost, currency), currency),
    worth: money(figures.worth, currency),
    uses: uses === null ? null : quantityNumber(uses),
    costPerUse: money(costPerUse(lot, currency), currency),
    hazards: material.record.hazards,
    hazardStatements: hazardsJson(material),
    disposal: material.record.disposal,
    notes: record.notes,
    movements: account.postings
      .filter(({ movement }) => movement.day <= today)
      .map((posting) => {
        const { movement, left, cost } = posting;
        return {
          movement: movement.name,
          date: isoDay(movement.date),
          kind: movement.kind,
          quantity: quantityNumber(movement.quantity),
          unit: movement.unit.name,
          job: movement.job,
          item: movement.item,
          entry: movement.entry,
          into: movement.into,
          reverses: movement.reverses?.name ?? null,
          isReversed: isReversedBy(posting, today),
          left: quantityNumber(left),
          cost: money(cost, currency),
          note: movement.note,
        };
      }),
    notices: noticesJson(notices),
  };
}

function number(value: Exact | null): number | null {
  return value === null ? null : quantityNumber(value);
}
