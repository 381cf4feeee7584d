import { basename } from 'node:path';
import { carryYearOver } from '../../actions/carry-over.ts';
import { refuseExisting } from '../../files-node/workbook-file.ts';
import { missingOption, required } from '../arguments.ts';
import type { Command } from '../context.ts';
import { printJson, printLines, refused } from '../finish.ts';
import { carryJson, carryText } from './carry-text.ts';

/** Carries a workbook over to a new file. */
export const carry: Command = async ({ call, file, today, terminal, random }) => {
  const target = required(call, 'out');
  if (call.text('on') === null) throw missingOption('carry', 'on');
  await refuseExisting(target);
  const request = { from: basename(call.file ?? ''), day: today, by: call.text('by') };
  const carried = carryYearOver(file.workbook.snapshot(), request, random);
  if (!carried.ok) return refused(carried, terminal);
  file.workbook.apply(carried.changes);
  file.workbook.removeRowsOf(carried.removed);
  await file.saveTo(target);
  if (call.flag('json')) printJson(carryJson(carried, request.from), terminal);
  else printLines(carryText(carried, { from: call.file ?? '', to: target }, terminal), terminal);
  return 0;
};
