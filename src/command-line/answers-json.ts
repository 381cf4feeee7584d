import type { PlacedNotice, WorkbookCheck } from '../actions/check-workbook.ts';
import type { Quoted } from '../actions/quote-job.ts';
import type { Written } from '../actions/writing-desk.ts';
import { type Day, isoDay } from '../core/day.ts';
import { quantityNumber } from '../core/exact-number.ts';
import { costIn } from '../core/ledger.ts';
import { type Coins, type Currency, moneyText } from '../core/money.ts';

/** The answers as other programs read them: quantities as numbers, days as YYYY-MM-DD, money as decimal text. */

export function money(coins: Coins | null, currency: Currency): string | null {
  return coins === null ? null : moneyText(coins, currency);
}

export function day(value: Day | null): string | null {
  return value === null ? null : isoDay(value);
}

export function currencyCode(currency: Currency): string | null {
  return currency.code === '' ? null : currency.code;
}

export function noticesJson(notices: readonly PlacedNotice[]) {
  return notices.map(({ code, severity, subject, message, at, address }) => ({
    code,
    severity,
    subject,
    message,
    table: at.place.table,
    row: at.place.sheetRow,
    column: at.column,
    address,
  }));
}

export function checkJson({ stock, notices, settings }: WorkbookCheck) {
  const { currency } = settings;
  return {
    asOf: isoDay(stock.today),
    currency: currencyCode(currency),
    materials: stock.materials.map(({ material, left, usable, onOrder, reorder, goodUntil, worth }) => ({
      material: material.record.material,
      unit: material.unit.name,
      left: left === null ? null : quantityNumber(left),
      usable: usable === null ? null : quantityNumber(usable),
      onOrder: quantityNumber(onOrder),
      planned: quantityNumber(reorder.planned),
      reorderPoint: quantityNumber(reorder.reorderPoint),
      suggestedOrder: quantityNumber(reorder.suggestedOrder),
      goodUntil: day(goodUntil),
      worth: money(worth, currency),
    })),
    lots: stock.lots.map(({ lot, left, goodUntil, state, usable, worth }) => ({
      lot: lot.record.lot,
      material: lot.material.name,
      table: lot.record.place.table,
      unit: lot.record.unit.name,
      left: quantityNumber(left),
      goodUntil: day(goodUntil),
      state,
      usable,
      worth: money(worth, currency),
    })),
    notices: noticesJson(notices),
  };
}

export function writtenJson({ drawing, posting }: Written, notices: readonly PlacedNotice[]) {
  const { currency } = drawing.ledger.studio.settings;
  return {
    posting,
    entries: drawing.entries.map(({ entry, drawn, extent }) => ({
      entry: entry.name,
      job: entry.record.job,
      item: entry.record.item,
      treatment: entry.treatment.name,
      extent: quantityNumber(extent),
      drawn,
    })),
    movements: drawing.movements.map((movement) => ({
      movement: movement.name,
      date: isoDay(movement.date),
      kind: movement.kind,
      lot: movement.lot.name,
      quantity: quantityNumber(movement.quantity),
      unit: movement.unit.name,
      job: movement.job,
      item: movement.item,
      entry: movement.entry,
      cost: money(costIn(drawing.ledger, movement), currency),
    })),
    shortfalls: drawing.shortfalls.map(({ entry, material, missing, unit }) => ({
      entry: entry.name,
      material: material.name,
      missing: quantityNumber(missing),
      unit: unit.name,
    })),
    notices: noticesJson(notices),
  };
}

export function quoteJson({ quote }: Quoted, currency: Currency, notices: readonly PlacedNotice[]) {
  return {
    job: quote.job,
    asOf: isoDay(quote.asOf),
    currency: currencyCode(currency),
    lines: quote.lines.map((line) => ({
      what: line.what,
      item: line.item,
      material: line.material.name,
      quantity: quantityNumber(line.quantity),
      unit: line.unit.name,
      each: money(line.each, currency),
      amount: money(line.amount, currency),
      basis: line.basis,
      lots: line.lots,
    })),
    consumables: moneyText(quote.consumables, currency),
    markup: moneyText(quote.markup, currency),
    benchTime: moneyText(quote.benchTime, currency),
    other: moneyText(quote.other, currency),
    tax: moneyText(quote.tax, currency),
    total: moneyText(quote.total, currency),
    shortfalls: quote.shortfalls.map(({ material, missing, unit }) => ({
      material: material.name,
      missing: quantityNumber(missing),
      unit: unit.name,
    })),
    notices: noticesJson(notices),
  };
}
