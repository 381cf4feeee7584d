import { retestLot } from '../../actions/retest-lot.ts';
import { isoDay, spokenDay } from '../../core/day.ts';
import { quantityNumber } from '../../core/exact-number.ts';
import { day, writtenJson } from '../answers-json.ts';
import { dayOption, missingOption, numberOption, required } from '../arguments.ts';
import type { Command } from '../context.ts';
import { refused, saveAndTell } from '../finish.ts';
import { deedLines, lotStateJson, namedLot } from '../lot-words.ts';

/** Writes down that a lot was tested, and until when it was found good. */
export const retest: Command = async (context) => {
  const { call, file, today, terminal, random } = context;
  const lot = required(call, 'lot');
  const until = dayOption(call, 'until');
  if (until === null) throw missingOption('retest', 'until');
  const request = {
    lot,
    until,
    by: required(call, 'by'),
    on: dayOption(call, 'date') ?? today,
    ph: numberOption(call, 'ph', true),
  };
  const written = retestLot(file.workbook.snapshot(), request, today, random);
  if (!written.ok) return refused(written, terminal);
  const { record } = written.lot;
  return saveAndTell(context, written, {
    json: (notices) => ({
      ...lotStateJson(written.drawing.ledger, written.lot, today),
      retested: isoDay(request.on),
      retestedUntil: day(until),
      retestedBy: request.by,
      ph: record.ph === null ? null : quantityNumber(record.ph),
      ...writtenJson(written, notices),
    }),
    lines: deedLines(
      [
        `${namedLot(written.lot)} was tested on ${spokenDay(request.on)} by ${request.by} and found good until ${spokenDay(until)}.`,
        'Whether it is fit for use is the judgement of the person who tested it; the supplier’s safety data sheet still holds.',
      ],
      written,
      terminal,
    ),
    isShort: false,
  });
};
