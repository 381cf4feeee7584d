import { booksOf } from '../../actions/books.ts';
import { checkWorkbook } from '../../actions/check-workbook.ts';
import type { LotCounted } from '../../actions/lots-found.ts';
import { noSuchName } from '../../actions/nearest-name.ts';
import {
  type CountWritten,
  countLots,
  countNow,
  type LotsToCount,
  postStocktake,
} from '../../actions/stocktake.ts';
import type { Refusal } from '../../actions/writing-desk.ts';
import { parsePlainNumber } from '../../core/exact-number.ts';
import { keyOf } from '../../core/identifier.ts';
import { stocktakeList } from '../../core/stocktake.ts';
import type { Studio } from '../../core/studio.ts';
import { findUnit, UNIT_NAMES } from '../../core/unit.ts';
import { CallRefused, dayOption } from '../arguments.ts';
import type { Command, Context, ExitCode } from '../context.ts';
import { printJson, printLines, refused, savedTo } from '../finish.ts';
import { countedJson, countedText, stocktakeJson, stocktakeText } from './count-text.ts';

export const count: Command = async (context) => {
  const { call } = context;
  const counted = [...call.texts('counted').map(countedLot), ...call.texts('gross').map(weighedLot)];
  return counted.length === 0 && !call.flag('post') ? list(context) : write(context, counted);
};

function list({ call, file, today, terminal }: Context): Promise<ExitCode> {
  for (const option of ['out', 'stocktake', 'date', 'by']) {
    if (call.text(option) === null) continue;
    throw new CallRefused(`--${option} goes with --counted, --gross or --post: a list changes nothing.`);
  }
  const { ledger } = booksOf(file.workbook.snapshot());
  const place = placeMeant(ledger.studio, call.text('place'));
  if (place !== null && typeof place !== 'string') return Promise.resolve(refused(place, terminal));
  const answer = stocktakeList(ledger, today, place);
  if (call.flag('json')) printJson(stocktakeJson(answer, today, place), terminal);
  else printLines(stocktakeText(answer, today, place, terminal), terminal);
  return Promise.resolve(0);
}

/** A place that is named in Places, or by a lot. */
function placeMeant({ places, lots }: Studio, typed: string | null): string | null | Refusal {
  if (typed === null) return null;
  const names = [
    ...places.flatMap(({ storage }) => storage ?? []),
    ...lots.flatMap(({ record }) => record.storedAt ?? []),
  ];
  const known = names.find((name) => keyOf(name) === keyOf(typed));
  return known ?? noSuchName('place', typed.trim(), 'Places', [...new Set(names)]);
}

async function write(context: Context, counted: readonly LotCounted[]): Promise<ExitCode> {
  const { call, file, today, terminal } = context;
  const written = carryOut(context, counted);
  if (!written.ok) return refused(written, terminal);
  const target = call.text('out');
  const { notices } = checkWorkbook(file.workbook.snapshot(), today);
  const isSaved = target !== null || written.isChanged;
  if (isSaved) await file.saveTo(target ?? undefined);
  if (call.flag('json')) printJson(countedJson(written, notices), terminal);
  else {
    printLines(countedText(written, call.flag('post'), terminal), terminal);
    if (isSaved) terminal.print(savedTo(call));
  }
  return written.remarks.length > 0 ? 1 : 0;
}

type Carried = CountWritten & { readonly isChanged: boolean };

/** Keeps what was counted, posts it, or both; the file has the changes then. */
function carryOut({ call, file, today, random }: Context, counted: readonly LotCounted[]): Carried | Refusal {
  const { workbook } = file;
  const by = call.text('by');
  const stocktake = call.text('stocktake');
  const isToPost = call.flag('post');
  const apply = (written: CountWritten | Refusal): Carried | Refusal => {
    if (!written.ok) return written;
    workbook.apply(written.changes);
    return { ...written, isChanged: written.changes.length > 0 };
  };
  const { studio } = booksOf(workbook.snapshot()).ledger;
  const place = placeMeant(studio, call.text('place'));
  if (place !== null && typeof place !== 'string') return place;
  if (counted.length === 0) {
    if (place !== null) throw new CallRefused('--place goes with a list, or with what was counted there.');
    return apply(postStocktake(workbook.snapshot(), { stocktake, by }, today, random));
  }
  const date = dayOption(call, 'date') ?? today;
  const request: LotsToCount = { stocktake, place, counted, date, by };
  const hasCounts = workbook.snapshot().tables.some(({ name }) => keyOf(name) === 'counts');
  if (isToPost && !hasCounts) return apply(countNow(workbook.snapshot(), request, today, random));
  const kept = apply(countLots(workbook.snapshot(), request, today, random));
  if (!kept.ok || !isToPost) return kept;
  const posted = apply(postStocktake(workbook.snapshot(), { stocktake: kept.stocktake, by }, today, random));
  return posted.ok ? { ...posted, isChanged: posted.isChanged || kept.isChanged } : posted;
}

/** What was found of a lot, written LOT=NUMBER or LOT=NUMBER UNIT. */
function countedLot(typed: string): LotCounted {
  const { lot, number, rest } = splitLot(typed, '--counted', '"P-014=12.5 g"');
  const unit = rest === '' ? null : findUnit(rest);
  if (rest !== '' && unit === null) {
    throw new CallRefused(
      `--counted holds the unit “${rest}”: a unit is right, one of ${UNIT_NAMES.join(', ')}.`,
    );
  }
  return { lot, quantity: number, unit, gross: null, note: null };
}

/** What a lot weighs in grams, jar and all, written LOT=NUMBER. */
function weighedLot(typed: string): LotCounted {
  const { lot, number, rest } = splitLot(typed, '--gross', '"P-014=130"');
  if (rest !== '' && findUnit(rest)?.name !== 'g') {
    throw new CallRefused(`--gross holds “${typed}”: what the balance shows in grams is right.`);
  }
  return { lot, quantity: null, unit: null, gross: number, note: null };
}

function splitLot(typed: string, option: string, example: string) {
  const [, lot = '', figure = '', rest = ''] = /^(.+)=\s*([^\s=]*?)\s*([^\d\s.,=][^=]*)?$/s.exec(typed) ?? [];
  const number = parsePlainNumber(figure);
  if (lot.trim() === '' || number === null || number.compare(0) < 0) {
    throw new CallRefused(`${option} holds “${typed}”: write it like ${example}.`);
  }
  return { lot: lot.trim(), number, rest: rest.trim() };
}
