import { booksOf } from '../../actions/books.ts';
import { checkWorkbook } from '../../actions/check-workbook.ts';
import { findLot } from '../../actions/find-lot.ts';
import { required } from '../arguments.ts';
import type { Command } from '../context.ts';
import { printJson, printLines, refused } from '../finish.ts';
import { lotJson } from './lot-json.ts';
import { lotText } from './lot-text.ts';

/** Prints everything about one lot. */
export const lot: Command = ({ call, file, today, terminal }) => {
  const snapshot = file.workbook.snapshot();
  const { ledger } = booksOf(snapshot);
  const found = findLot(ledger.studio, required(call, 'lot'));
  if ('ok' in found) return Promise.resolve(refused(found, terminal));
  const notices = checkWorkbook(snapshot, today).notices.filter(
    ({ at: { place } }) => place.table === found.record.place.table && place.row === found.record.place.row,
  );
  if (call.flag('json')) printJson(lotJson(ledger, found, notices, today), terminal);
  else printLines(lotText(ledger, found, notices, today, terminal), terminal);
  return Promise.resolve(0);
};
