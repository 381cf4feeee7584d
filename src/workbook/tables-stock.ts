import {
  LOT_CERTAINTIES,
  LOT_STATES,
  MATERIAL_KINDS,
  type MaterialKind,
  MOVEMENT_KINDS,
} from '../core/records.ts';
import { day, number, remark, text, unit, wholeNumber, word, yesNo } from './cell.ts';
import { defineTable, identifier, optional, starred, written } from './table-definition.ts';

/** The tables of what is kept: materials, lots, and every change to a lot. */

export const materialsTable = defineTable('Materials', 'K', {
  material: identifier('Material', text),
  description: optional('Description', 'text', remark),
  composition: optional('Composition', 'text', remark),
  kind: starred('Kind', 'text', word(MATERIAL_KINDS)),
  stockUnit: starred('Stock unit', 'text', unit),
  counted: optional('Counted', 'text', yesNo),
  sheetWidth: optional('Sheet width cm', 'number', number('positive')),
  sheetHeight: optional('Sheet height cm', 'number', number('positive')),
  grammage: optional('Grammage', 'number', number('positive')),
  grain: optional('Grain', 'text', remark),
  density: optional('Density g/ml', 'number', number('positive')),
  usesPerUnit: optional('Uses per unit', 'number', number('positive')),
  lifeSealedDays: optional('Life sealed days', 'number', wholeNumber),
  lifeOpenedDays: optional('Life opened days', 'number', wholeNumber),
  phLow: optional('pH low', 'number', number('not negative')),
  phHigh: optional('pH high', 'number', number('not negative')),
  keepAtLeast: optional('Keep at least', 'number', number('not negative')),
  keepAtMost: optional('Keep at most', 'number', number('not negative')),
  serviceLevel: optional('Service level %', 'number', number('percent below 100')),
  supplier: optional('Supplier', 'text', text),
  hazards: optional('Hazards', 'text', remark),
  sdsChecked: optional('SDS checked', 'day', day),
  disposal: optional('Disposal', 'text', remark),
  notes: optional('Notes', 'text', remark),
});

const lotColumns = {
  lot: identifier('Lot', text),
  material: starred('Material', 'text', text),
  received: starred('Received', 'day', day),
  quantity: starred('Quantity', 'number', number('positive')),
  unit: starred('Unit', 'text', unit),
  cost: optional('Cost', 'number', number('not negative')),
  supplier: optional('Supplier', 'text', text),
  supplierLot: optional('Supplier lot', 'text', remark),
  useBy: optional('Use by', 'day', day),
  opened: optional('Opened', 'day', day),
  storedAt: optional('Place', 'text', text),
  state: optional('State', 'text', word(LOT_STATES)),
  stateSince: optional('State since', 'day', day),
  recipe: optional('Recipe', 'text', text),
  order: optional('Order', 'text', text),
  orderLine: optional('Order line', 'text', text),
  ph: optional('pH', 'number', number('not negative')),
  tare: optional('Tare g', 'number', number('not negative')),
  sheetWidth: optional('Sheet width cm', 'number', number('positive')),
  sheetHeight: optional('Sheet height cm', 'number', number('positive')),
  grammage: optional('Grammage', 'number', number('positive')),
  usesPerUnit: optional('Uses per unit', 'number', number('positive')),
  retested: optional('Retested', 'day', day),
  retestedUntil: optional('Retested until', 'day', day),
  retestedBy: optional('Retested by', 'text', remark),
  posting: optional('Posting', 'text', remark),
  notes: optional('Notes', 'text', remark),
  left: written('Left', 'number', number('any')),
  leftAsWritten: written('Left as written', 'number', number('any')),
  goodUntil: written('Good until', 'day', remark),
  worth: written('Worth', 'number', remark),
};

/** A stock table of any name: whatever table has the starred columns of a lot is one. */
export function stockTable(name: string) {
  return defineTable(name, 'L', lotColumns);
}

/** The stock table in which a new lot of each kind of material belongs. */
export const STOCK_TABLE_OF_KIND: Readonly<Record<MaterialKind, string>> = {
  Tissue: 'Tissue',
  Paste: 'Paste',
  Buffer: 'Buffers',
  'Release paper': 'ReleasePaper',
  Housing: 'Housing',
  Sundry: 'Sundries',
};

export const movementsTable = defineTable('Movements', 'M', {
  movement: identifier('Movement', text),
  date: starred('Date', 'day', day),
  kind: starred('Kind', 'text', word(MOVEMENT_KINDS)),
  lot: starred('Lot', 'text', text),
  quantity: starred('Quantity', 'number', number('any')),
  unit: starred('Unit', 'text', unit),
  job: optional('Job', 'text', text),
  item: optional('Item', 'text', text),
  entry: optional('Entry', 'text', text),
  lotIs: optional('Lot is', 'text', word(LOT_CERTAINTIES)),
  into: optional('Into', 'text', text),
  offcut: optional('Offcut', 'text', text),
  cost: written('Cost', 'number', remark),
  reverses: optional('Reverses', 'text', text),
  by: optional('By', 'text', remark),
  posted: optional('Posted', 'day', day),
  posting: optional('Posting', 'text', text),
  note: optional('Note', 'text', remark),
});

export const placesTable = defineTable('Places', 'P', {
  storage: identifier('Place', text),
  cold: optional('Cold', 'text', yesNo),
  dark: optional('Dark', 'text', yesNo),
  walkingOrder: optional('Walking order', 'number', number('any')),
});

export const offcutsTable = defineTable('Offcuts', 'C', {
  offcut: identifier('Offcut', text),
  lot: starred('Lot', 'text', text),
  width: starred('Width cm', 'number', number('positive')),
  height: starred('Height cm', 'number', number('positive')),
  grain: optional('Grain', 'text', remark),
  keptOn: optional('Kept on', 'day', day),
  usedOn: optional('Used on', 'day', day),
});

/** What was counted in a stocktake that is under way, lot by lot, so that it can be stopped and taken up again. */
export const countsTable = defineTable('Counts', 'G', {
  count: identifier('Count', text),
  stocktake: starred('Stocktake', 'text', text),
  lot: starred('Lot', 'text', text),
  countedOn: starred('Counted on', 'day', day),
  quantity: starred('Quantity', 'number', number('not negative')),
  unit: starred('Unit', 'text', unit),
  gross: optional('Gross g', 'number', number('not negative')),
  leftThen: written('Left then', 'number', number('any')),
  leftDayBefore: written('Left the day before', 'number', number('any')),
  by: optional('By', 'text', remark),
  posting: written('Posting', 'text', text),
  note: optional('Note', 'text', remark),
});
