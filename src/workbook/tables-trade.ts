import { day, number, remark, text, unit, wholeNumber } from './cell.ts';
import { defineTable, identifier, optional, starred } from './table-definition.ts';

/** The tables of buying and of quoting. */

export const suppliersTable = defineTable('Suppliers', 'S', {
  supplier: identifier('Supplier', text),
  leadTimeDays: optional('Lead time days', 'number', number('not negative')),
  leadTimeSpreadDays: optional('Lead time spread days', 'number', number('not negative')),
  minimumOrder: optional('Minimum order', 'number', number('not negative')),
  carriage: optional('Carriage', 'number', number('not negative')),
  carriageFreeOver: optional('Carriage free over', 'number', number('not negative')),
  notes: optional('Notes', 'text', remark),
});

export const offersTable = defineTable('Offers', null, {
  supplier: starred('Supplier', 'text', text),
  material: starred('Material', 'text', text),
  packQuantity: starred('Pack quantity', 'number', number('positive')),
  unit: starred('Unit', 'text', unit),
  packPrice: starred('Pack price', 'number', number('not negative')),
  fromPacks: optional('From packs', 'number', number('not negative')),
  checkedOn: optional('Checked on', 'day', day),
  sdsChecked: optional('SDS checked', 'day', day),
});

export const ordersTable = defineTable('Orders', 'D', {
  order: identifier('Order', text),
  supplier: starred('Supplier', 'text', text),
  orderedOn: starred('Ordered on', 'day', day),
  expected: optional('Expected', 'day', day),
  state: optional('State', 'text', text),
});

export const orderLinesTable = defineTable('OrderLines', 'H', {
  order: starred('Order', 'text', text),
  line: identifier('Line', text),
  material: starred('Material', 'text', text),
  packs: starred('Packs', 'number', number('positive')),
  packQuantity: starred('Pack quantity', 'number', number('positive')),
  unit: starred('Unit', 'text', unit),
  packPrice: optional('Pack price', 'number', number('not negative')),
});

export const quotesTable = defineTable('Quotes', 'Q', {
  quote: identifier('Quote', text),
  version: starred('Version', 'number', wholeNumber),
  job: starred('Job', 'text', text),
  madeOn: starred('Made on', 'day', day),
  validUntil: optional('Valid until', 'day', day),
  state: optional('State', 'text', remark),
  replaces: optional('Replaces', 'text', remark),
  currency: optional('Currency', 'text', remark),
  consumables: optional('Consumables', 'number', number('any')),
  markup: optional('Markup', 'number', number('any')),
  benchTime: optional('Bench time', 'number', number('any')),
  other: optional('Other', 'number', number('any')),
  tax: optional('Tax', 'number', number('any')),
  total: optional('Total', 'number', number('any')),
});

export const quoteLinesTable = defineTable('QuoteLines', 'G', {
  quote: starred('Quote', 'text', text),
  version: starred('Version', 'number', wholeNumber),
  line: identifier('Line', text),
  item: optional('Item', 'text', text),
  treatment: optional('Treatment', 'text', text),
  material: optional('Material', 'text', text),
  what: starred('What', 'text', text),
  quantity: optional('Quantity', 'number', number('any')),
  unit: optional('Unit', 'text', unit),
  each: optional('Each', 'number', number('any')),
  amount: optional('Amount', 'number', number('any')),
  basis: optional('Basis', 'text', remark),
  how: optional('How', 'text', remark),
});

export const settingsTable = defineTable('Settings', null, {
  setting: starred('Setting', 'text', text),
  value: starred('Value', 'text', text),
});
