import { checkWorkbook, type PlacedNotice } from '../../actions/check-workbook.ts';
import {
  type BatchPlan,
  type BatchPour,
  type BatchToMake,
  type MadeBatch,
  makeBatch,
  planBatch,
} from '../../actions/make-batch.ts';
import { missingParts } from '../../core/batch.ts';
import { isoDay } from '../../core/day.ts';
import { quantityNumber } from '../../core/exact-number.ts';
import type { Currency } from '../../core/money.ts';
import type { Unit } from '../../core/unit.ts';
import { amountIn, amountOption } from '../amount-option.ts';
import { currencyCode, day, money, noticesJson, writtenJson } from '../answers-json.ts';
import {
  amountUsed,
  type Call,
  CallRefused,
  dayOption,
  missingOption,
  numberOption,
  required,
} from '../arguments.ts';
import { batchText } from '../batch-text.ts';
import type { Command, Context, ExitCode } from '../context.ts';
import { missesSome, printJson, printLines, refused, saveAndTell } from '../finish.ts';
import type { Terminal } from '../terminal.ts';
import { writtenText } from '../written-text.ts';
import { MAKE_OPTIONS } from './make-help.ts';
import { makePlanText } from './make-plan-text.ts';
import { outlook } from './plan.ts';
import { makePlanJson } from './plan-json.ts';

/** Makes a batch by a recipe, or says what it would take. */
export const make: Command = async (context) => {
  const { call, file, today, terminal, random } = context;
  if (call.text('recipe') === null) return tellWhenToMake(context);
  const request = requestOf(context);
  if (call.flag('plan')) return tellPlan(context, request);
  const made = makeBatch(file.workbook.snapshot(), request, today, random);
  if (!made.ok) return refused(made, terminal);
  const { currency } = made.drawing.ledger.studio.settings;
  return saveAndTell(context, made, {
    json: (notices) => madeJson(made, currency, notices),
    lines: madeLines(made, currency, terminal),
    isShort: missingParts(made.plan.parts).length + made.drawing.shortfalls.length > 0,
  });
};

/** The options that go with a recipe. */
const OF_A_BATCH = Object.keys(MAKE_OPTIONS).filter(
  (option) => !['on', 'json', 'help', 'until'].includes(option),
);

/** When to make how much of everything that is made here. */
function tellWhenToMake(context: Context): ExitCode {
  const { call, terminal } = context;
  const lonely = OF_A_BATCH.find(
    (option) => call.text(option) !== null || call.texts(option).length > 0 || call.flag(option),
  );
  if (lonely !== undefined) throw missingOption('make', 'recipe');
  const { answer, checked } = outlook(context);
  const { currency } = checked.settings;
  const made = answer.materials.flatMap(({ make: making, unit }) =>
    making === null ? [] : [{ making, unit }],
  );
  if (call.flag('json')) {
    printJson(
      {
        asOf: isoDay(answer.today),
        until: isoDay(answer.until),
        currency: currencyCode(currency),
        materials: made.map(({ making, unit }) => ({ unit, ...makePlanJson(making, currency) })),
        notices: noticesJson(checked.notices),
      },
      terminal,
    );
  } else if (made.length === 0) {
    printLines(['Nothing has to be made for what is planned.', ...missesSome(checked.notices)], terminal);
  } else {
    const lines = made.flatMap(({ making, unit }) => ['', ...makePlanText(making, unit, currency, terminal)]);
    printLines([...lines.slice(1), ...missesSome(checked.notices)], terminal);
  }
  return made.some(({ making }) => making.late.length + making.unserved.length > 0) ? 1 : 0;
}

/** The batch, the treatment that it was poured out for, and the posting of both. */
function madeLines(made: MadeBatch, currency: Currency, terminal: Terminal): string[] {
  const { drawing, posting } = made;
  const movements = drawing.movements.filter(({ kind }) => kind !== 'Make');
  const poured = { ...made, posting: null, remarks: [], drawing: { ...drawing, movements } };
  return [
    ...batchText(made.plan, made, currency, terminal),
    ...(drawing.entries.length === 0
      ? []
      : ['', ...writtenText(poured, 'Nothing is taken from stock for it.', terminal)]),
    ...(posting === null ? [] : ['', `Posting ${posting}.`]),
  ];
}

function tellPlan({ call, file, today, terminal }: Context, request: BatchToMake): ExitCode {
  if (call.text('out') !== null) throw new CallRefused('--out goes without --plan: a plan saves nothing.');
  const plan = planBatch(file.workbook.snapshot(), request, today);
  if (!plan.ok) return refused(plan, terminal);
  const { settings, notices } = checkWorkbook(file.workbook.snapshot(), today);
  if (call.flag('json')) {
    const nothing = { posting: null, entries: [], movements: [] };
    printJson(
      { ...planJson(plan, null, settings.currency), ...nothing, notices: noticesJson(notices) },
      terminal,
    );
  } else printLines(batchText(plan, null, settings.currency, terminal), terminal);
  return missingParts(plan.parts).length > 0 ? 1 : 0;
}

function requestOf({ call, today }: Context): BatchToMake {
  const recipe = required(call, 'recipe');
  const amount = amountOption(call, 'amount');
  if (amount === null) throw missingOption('make', 'amount');
  return {
    recipe,
    amount: amount.quantity,
    unit: amount.unit,
    yielded: amountIn(call, 'yield', amount.unit, 'amount'),
    date: dayOption(call, 'date') ?? today,
    storedAt: call.text('place'),
    asUsed: call.texts('use').map(amountUsed),
    by: call.text('by'),
    notes: call.text('notes'),
    pour: pourOf(call, amount.unit),
  };
}

const POUR_OPTIONS = ['job', 'item', 'treatment', 'extent', 'pour'];

function pourOf(call: Call, unit: Unit): BatchPour | null {
  if (POUR_OPTIONS.every((option) => call.text(option) === null)) return null;
  const extent = numberOption(call, 'extent', false);
  const job = required(call, 'job');
  const treatment = required(call, 'treatment');
  if (extent === null) throw missingOption('make', 'extent');
  return { job, item: call.text('item'), treatment, extent, amount: amountIn(call, 'pour', unit, 'amount') };
}

function planJson(plan: BatchPlan, lot: string | null, currency: Currency) {
  return {
    lot,
    material: plan.recipe.record.makes,
    recipe: plan.recipe.name,
    quantity: quantityNumber(plan.yielded),
    unit: plan.unit.name,
    cost: money(plan.cost, currency),
    goodUntil: day(plan.goodUntil),
    goodUntilBecause: plan.goodUntilBecause,
    readyAfterHours: plan.readyAfterHours === null ? null : quantityNumber(plan.readyAfterHours),
    parts: plan.parts.map(({ material, needed, unit, takes, missing, makeFirst }) => ({
      material: material.name,
      needed: quantityNumber(needed),
      unit: unit.name,
      missing: quantityNumber(missing),
      makeFirst: makeFirst?.name ?? null,
      takes: takes.map((take) => ({
        lot: take.lot.name,
        lotIs: take.lotIs,
        quantity: quantityNumber(take.quantity),
        unit: take.unit.name,
        cost: money(take.cost, currency),
      })),
    })),
    shortfalls: missingParts(plan.parts).map(shortJson),
  };
}

function shortJson({
  material,
  missing,
  unit,
}: Pick<BatchPlan['parts'][number], 'material' | 'missing' | 'unit'>) {
  return { material: material.name, missing: quantityNumber(missing), unit: unit.name };
}

function madeJson(made: MadeBatch, currency: Currency, notices: readonly PlacedNotice[]) {
  const plan = planJson(made.plan, made.lot.name, currency);
  const written = writtenJson(made, notices);
  return { ...plan, ...written, shortfalls: [...plan.shortfalls, ...made.drawing.shortfalls.map(shortJson)] };
}
