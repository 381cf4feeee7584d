import { booksOf } from '../../actions/books.ts';
import { isoDay } from '../../core/day.ts';
import { disposalsIn } from '../../core/disposals.ts';
import { type Call, CallRefused } from '../arguments.ts';
import type { Command } from '../context.ts';
import { printJson, printLines } from '../finish.ts';
import { disposalJson, disposalText } from './disposal-text.ts';

/** Prints what was thrown away in a year. */
export const disposal: Command = ({ call, file, today, terminal }) => {
  const year = yearOption(call) ?? Number(isoDay(today).slice(0, 'YYYY'.length));
  const { ledger } = booksOf(file.workbook.snapshot());
  const disposals = disposalsIn(ledger, year);
  if (call.flag('json')) printJson(disposalJson(disposals), terminal);
  else printLines(disposalText(disposals, terminal), terminal);
  return Promise.resolve(0);
};

function yearOption(call: Call): number | null {
  const typed = call.text('year');
  if (typed === null) return null;
  if (!/^(?:19[7-9]|20\d|21\d)\d$/.test(typed.trim())) {
    throw new CallRefused(`--year holds “${typed}”: a year is right, such as 2026.`);
  }
  return Number(typed);
}
