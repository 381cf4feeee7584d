import { accountIn, type Ledger } from '../core/ledger.ts';
import { type Coins, type Currency, fromCoins } from '../core/money.ts';
import type { LotRecord } from '../core/records.ts';
import { lotFigures } from '../core/stock.ts';
import type { Lot, Material } from '../core/studio.ts';
import { appendRows, dayCell, moneyCell, quantityCell, textCell } from '../workbook/cell-write.ts';
import type { LocatedTable } from '../workbook/located-table.ts';
import type { Change } from '../workbook/port.ts';
import { STOCK_TABLE_OF_KIND } from '../workbook/tables-stock.ts';
import { type Refusal, tableNamed, type WritingDesk } from './writing-desk.ts';

/** What a lot that the program writes begins with; what is left out is blank. */
export type NewLot = Pick<LotRecord, 'received' | 'quantity' | 'unit'> &
  Partial<
    Pick<
      LotRecord,
      | 'supplier'
      | 'supplierLot'
      | 'useBy'
      | 'opened'
      | 'retested'
      | 'retestedUntil'
      | 'retestedBy'
      | 'storedAt'
      | 'state'
      | 'stateSince'
      | 'recipe'
      | 'order'
      | 'orderLine'
      | 'ph'
      | 'tare'
      | 'sheetWidth'
      | 'sheetHeight'
      | 'grammage'
      | 'usesPerUnit'
      | 'posting'
      | 'notes'
    >
  > & {
    /** Null where it isn't known. */
    readonly cost: Coins | null;
  };

/**
 * The table in which a new lot of a material is written: the one of its kind, or the one that a given lot stands in.
 * @param beside a lot of the same material whose table is taken
 */
export function tableForLot(
  desk: Pick<WritingDesk, 'tables'>,
  material: Material,
  beside: Lot | null = null,
): LocatedTable | Refusal {
  return tableNamed(desk, beside?.record.place.table ?? STOCK_TABLE_OF_KIND[material.record.kind]);
}

/** The record of a lot that isn't written yet; its identifier is new. */
export function lotRecordOf(
  desk: Pick<WritingDesk, 'newIdentifier'>,
  table: { readonly snapshot: Pick<LocatedTable['snapshot'], 'name'> },
  material: Material,
  { cost, ...fields }: NewLot,
  currency: Currency,
): LotRecord & { readonly lot: string } {
  return {
    lot: desk.newIdentifier('L'),
    material: material.name,
    supplier: null,
    supplierLot: null,
    useBy: null,
    opened: null,
    retested: null,
    retestedUntil: null,
    retestedBy: null,
    storedAt: null,
    state: null,
    stateSince: null,
    recipe: null,
    order: null,
    orderLine: null,
    ph: null,
    tare: null,
    sheetWidth: null,
    sheetHeight: null,
    grammage: null,
    usesPerUnit: null,
    posting: null,
    notes: null,
    left: null,
    leftAsWritten: null,
    cost: cost === null ? null : fromCoins(cost, currency),
    ...fields,
    place: { table: table.snapshot.name, row: -1, sheetRow: 0 },
    unreadable: new Set(),
  };
}

/**
 * The change that writes a new lot with its written cells.
 * @param ledger the ledger with the lot in it, and with what was drawn from it at once
 */
export function lotRowChanges(desk: WritingDesk, table: LocatedTable, ledger: Ledger, lot: Lot): Change[] {
  const { record } = lot;
  const { currency } = ledger.studio.settings;
  const figures = lotFigures(accountIn(ledger, lot), desk.today);
  const left = quantityCell(figures.left);
  return appendRows(table, [
    {
      lot: textCell(record.lot),
      material: textCell(record.material),
      received: dayCell(record.received),
      quantity: quantityCell(record.quantity),
      unit: textCell(record.unit.name),
      cost: record.cost === null ? textCell(null) : { kind: 'number', number: record.cost.valueOf() },
      supplier: textCell(record.supplier),
      supplierLot: textCell(record.supplierLot),
      useBy: dayCell(record.useBy),
      opened: dayCell(record.opened),
      retested: dayCell(record.retested),
      retestedUntil: dayCell(record.retestedUntil),
      retestedBy: textCell(record.retestedBy),
      storedAt: textCell(record.storedAt),
      state: textCell(record.state),
      stateSince: dayCell(record.stateSince),
      recipe: textCell(record.recipe),
      order: textCell(record.order),
      orderLine: textCell(record.orderLine),
      ph: quantityCell(record.ph),
      tare: quantityCell(record.tare),
      sheetWidth: quantityCell(record.sheetWidth),
      sheetHeight: quantityCell(record.sheetHeight),
      grammage: quantityCell(record.grammage),
      usesPerUnit: quantityCell(record.usesPerUnit),
      posting: textCell(record.posting),
      notes: textCell(record.notes),
      left,
      leftAsWritten: left,
      goodUntil: dayCell(figures.goodUntil),
      worth: moneyCell(figures.worth, currency),
    },
  ]);
}
