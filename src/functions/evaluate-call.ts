import {
  type CellAnswer,
  type CellBooks,
  type CellProblem,
  costAnswer,
  coverAnswer,
  goodUntilAnswer,
  leftAnswer,
  orderPointAnswer,
  usableAnswer,
} from '../actions/cell-answers.ts';
import type { Day } from '../core/day.ts';
import { type DateSystem, serialOfDay } from '../core/serial-date.ts';

/** The functions for people's own sheets, as they are called there after JARLEAF. */
export type FunctionName = 'LEFT' | 'USABLE' | 'GOODUNTIL' | 'COST' | 'COVER' | 'ORDERAT';

/** What stands in a call's brackets, as a cell gives it: blank and left out are null, undefined or ''. */
export type CallArguments = readonly unknown[];

/** The books that calls are answered from. */
export interface FunctionBooks extends CellBooks {
  /** How the workbook counts days: good-until days are given as serials. */
  readonly dateSystem: DateSystem;
}

export type CallProblem = CellProblem | 'not read';

/** What a cell is given: a figure, or why there is none. */
export type CallResult =
  | { readonly value: number }
  | { readonly error: CallProblem; readonly message: string };

type Evaluate = (books: FunctionBooks, args: CallArguments) => CallResult;

const EVALUATE: Readonly<Record<FunctionName, Evaluate>> = {
  LEFT: (books, [material, unit]) => leftAnswer(books, text(material), textOrNull(unit)),
  USABLE: (books, [material, unit]) => usableAnswer(books, text(material), textOrNull(unit)),
  GOODUNTIL: (books, [lot]) => serial(goodUntilAnswer(books, text(lot)), books.dateSystem),
  COST: (books, [material, quantity, unit]) => {
    const amount = quantityOf(quantity);
    if (amount !== null) return costAnswer(books, text(material), amount, textOrNull(unit));
    const message = `A quantity is a number, such as 2.5; ${text(quantity) || 'nothing'} stands there.`;
    return { error: 'bad quantity', message };
  },
  COVER: (books, [material]) => coverAnswer(books, text(material)),
  ORDERAT: (books, [material, unit]) => orderPointAnswer(books, text(material), textOrNull(unit)),
};

/** The names of all functions. */
export const FUNCTION_NAMES = Object.keys(EVALUATE) as readonly FunctionName[];

/** What a call comes to with these books. */
export function evaluateCall(name: FunctionName, args: CallArguments, books: FunctionBooks): CallResult {
  return EVALUATE[name](books, args);
}

function text(argument: unknown): string {
  return typeof argument === 'string' || typeof argument === 'number' || typeof argument === 'boolean'
    ? String(argument).trim()
    : '';
}

function textOrNull(argument: unknown): string | null {
  return text(argument) || null;
}

function quantityOf(argument: unknown): number | null {
  return typeof argument === 'number' ? argument : null;
}

function serial(answer: CellAnswer<Day>, system: DateSystem): CallResult {
  return 'value' in answer ? { value: serialOfDay(answer.value, system) } : answer;
}
