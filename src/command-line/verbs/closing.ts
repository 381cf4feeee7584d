import { booksOf } from '../../actions/books.ts';
import { closingStock } from '../../core/closing-stock.ts';
import type { Command } from '../context.ts';
import { missesSome, printJson, printLines } from '../finish.ts';
import { closingJson, closingText } from './closing-text.ts';

/** Prints the closing stock of a day. */
export const closing: Command = ({ call, file, today, terminal }) => {
  const { ledger, notices } = booksOf(file.workbook.snapshot());
  const stock = closingStock(ledger, today);
  if (call.flag('json')) printJson(closingJson(stock), terminal);
  else printLines([...closingText(stock, terminal), ...missesSome(notices)], terminal);
  return Promise.resolve(0);
};
