import { emptyBath, keepBath } from '../../actions/bath.ts';
import { CallRefused, dayOption, numberOption, required } from '../arguments.ts';
import type { Command } from '../context.ts';
import { finish } from '../finish.ts';

/** Empties a bath, or keeps it with its pH. */
export const bath: Command = async (context) => {
  const { call, file, today, random } = context;
  const lot = required(call, 'lot');
  const by = call.text('by');
  const isEmptied = call.flag('empty');
  if (isEmptied === call.flag('keep')) {
    throw new CallRefused('jarleaf bath needs either --empty or --keep. See jarleaf bath --help.');
  }
  if (isEmptied && call.text('ph') !== null) throw new CallRefused('--ph goes with --keep.');
  if (!isEmptied && call.text('date') !== null) throw new CallRefused('--date goes with --empty.');
  const snapshot = file.workbook.snapshot();
  if (!isEmptied) {
    const kept = keepBath(snapshot, { lot, ph: numberOption(call, 'ph', true), by }, today, random);
    return finish(context, kept, 'Nothing is taken from stock.');
  }
  const request = { lot, date: dayOption(call, 'date') ?? today, by };
  return finish(context, emptyBath(snapshot, request, today, random), 'Nothing is taken from stock.');
};
