import { JOB_STAGES, SHARINGS, STAYS } from '../core/records.ts';
import { day, done, number, remark, text, unit, wholeNumber, word, yesNo } from './cell.ts';
import { defineTable, identifier, optional, starred, written } from './table-definition.ts';

/** The tables of what is done: treatments and what they take, recipes, jobs, the plan and the treatment log. */

export const treatmentLogTable = defineTable('TreatmentLog', 'E', {
  entry: identifier('Entry', text),
  date: starred('Date', 'day', day),
  job: starred('Job', 'text', text),
  item: optional('Item', 'text', text),
  treatment: starred('Treatment', 'text', text),
  extent: starred('Extent', 'number', number('not negative')),
  minutes: optional('Minutes', 'number', number('not negative')),
  by: optional('By', 'text', remark),
  readingBefore: optional('Reading before', 'text', remark),
  readingAfter: optional('Reading after', 'text', remark),
  notes: optional('Notes', 'text', remark),
  drawn: written('Drawn', 'text', remark),
  drawnFor: written('Drawn for', 'number', number('any')),
});

export const treatmentsTable = defineTable('Treatments', 'T', {
  treatment: identifier('Treatment', text),
  extentUnit: starred('Extent unit', 'text', text),
  minutesPerExtent: optional('Minutes per extent', 'number', number('not negative')),
  setupMinutes: optional('Setup minutes', 'number', number('not negative')),
  setupPer: optional('Setup per', 'text', word(SHARINGS)),
  standingHours: optional('Standing hours', 'number', number('not negative')),
  notes: optional('Notes', 'text', remark),
});

export const usageRatesTable = defineTable('UsageRates', null, {
  treatment: starred('Treatment', 'text', text),
  material: starred('Material', 'text', text),
  quantityPerExtent: starred('Quantity per extent', 'number', number('not negative')),
  unit: starred('Unit', 'text', unit),
  fixedQuantity: optional('Fixed quantity', 'number', number('not negative')),
  fixedPer: optional('Fixed per', 'text', word(SHARINGS)),
  waste: optional('Waste %', 'number', number('not negative')),
  whole: optional('Whole', 'text', yesNo),
  choice: optional('Choice', 'text', text),
  stays: optional('Stays', 'text', word(STAYS)),
});

export const recipesTable = defineTable('Recipes', 'R', {
  recipe: identifier('Recipe', text),
  makes: starred('Makes', 'text', text),
  yield: starred('Yield', 'number', number('positive')),
  unit: starred('Unit', 'text', unit),
  lifeDays: optional('Life days', 'number', wholeNumber),
  lifeColdDays: optional('Life cold days', 'number', wholeNumber),
  lifeDarkDays: optional('Life dark days', 'number', wholeNumber),
  smallestBatch: optional('Smallest batch', 'number', number('not negative')),
  minutes: optional('Minutes', 'number', number('not negative')),
  readyAfterHours: optional('Ready after hours', 'number', number('not negative')),
  limitedByParts: optional('Limited by parts', 'text', yesNo),
  method: optional('Method', 'text', remark),
  cautions: optional('Cautions', 'text', remark),
});

export const recipePartsTable = defineTable('RecipeParts', null, {
  recipe: starred('Recipe', 'text', text),
  material: starred('Material', 'text', text),
  quantity: starred('Quantity', 'number', number('positive')),
  unit: starred('Unit', 'text', unit),
});

export const jobsTable = defineTable('Jobs', 'J', {
  job: identifier('Job', text),
  client: optional('Client', 'text', remark),
  object: optional('Object', 'text', remark),
  leaves: optional('Leaves', 'number', wholeNumber),
  height: optional('Height cm', 'number', number('positive')),
  width: optional('Width cm', 'number', number('positive')),
  stage: optional('Stage', 'text', word(JOB_STAGES)),
  receivedOn: optional('Received on', 'day', day),
  storedAt: optional('Place', 'text', text),
  approvedOn: optional('Approved on', 'day', day),
  due: optional('Due', 'day', day),
  handedBack: optional('Handed back', 'day', day),
  notes: optional('Notes', 'text', remark),
});

export const itemsTable = defineTable('Items', 'I', {
  job: starred('Job', 'text', text),
  item: identifier('Item', text),
  description: optional('Description', 'text', remark),
  leaves: optional('Leaves', 'number', wholeNumber),
  height: optional('Height cm', 'number', number('positive')),
  width: optional('Width cm', 'number', number('positive')),
  declaredValue: optional('Declared value', 'number', number('not negative')),
  handedBack: optional('Handed back', 'day', day),
});

export const planTable = defineTable('Plan', 'N', {
  line: identifier('Line', text, false),
  job: starred('Job', 'text', text),
  item: optional('Item', 'text', text),
  treatment: starred('Treatment', 'text', text),
  extent: starred('Extent', 'number', number('not negative')),
  plannedFor: optional('Planned for', 'day', day),
  done: optional('Done', 'text', done),
});

export const removedTable = defineTable('Removed', null, {
  job: starred('Job', 'text', text),
  item: optional('Item', 'text', text),
  what: starred('What', 'text', text),
  position: optional('Position and orientation', 'text', remark),
  removedOn: starred('Removed on', 'day', day),
  keptAt: optional('Kept at', 'text', remark),
  outcome: optional('Outcome', 'text', remark),
});
