import { type OpenedLot, openLot } from '../../actions/open-lot.ts';
import { type Day, spokenDay } from '../../core/day.ts';
import { accountIn } from '../../core/ledger.ts';
import { leftOn } from '../../core/lot-account.ts';
import { toCoins } from '../../core/money.ts';
import { spokenQuantity } from '../../core/wording.ts';
import { amountOption } from '../amount-option.ts';
import { writtenJson } from '../answers-json.ts';
import { dayOption, required } from '../arguments.ts';
import { spokenMoney } from '../check-text.ts';
import type { Command } from '../context.ts';
import { refused, saveAndTell } from '../finish.ts';
import { deedLines, goodWords, lotStateJson, namedLot } from '../lot-words.ts';

/** Opens a lot, or one container of it. */
export const open: Command = async (context) => {
  const { call, file, today, terminal, random } = context;
  const amount = amountOption(call, 'quantity');
  const request = {
    lot: required(call, 'lot'),
    quantity: amount?.quantity ?? null,
    unit: amount?.unit ?? null,
    date: dayOption(call, 'date') ?? today,
    by: call.text('by'),
  };
  const written = openLot(file.workbook.snapshot(), request, today, random);
  if (!written.ok) return refused(written, terminal);
  return saveAndTell(context, written, {
    json: (notices) => ({
      ...lotStateJson(written.drawing.ledger, written.opened, today),
      from: written.drawing.movements[0]?.lot.name ?? null,
      ...writtenJson(written, notices),
    }),
    lines: deedLines([...openedWords(written, request.date, today)], written, terminal),
    isShort: false,
  });
};

function openedWords({ opened, drawing }: OpenedLot, date: Day, today: Day): string[] {
  const { ledger, movements } = drawing;
  const { currency } = ledger.studio.settings;
  const since = `open since ${spokenDay(date)}; ${goodWords(ledger, opened, today)}.`;
  const parent = movements[0]?.lot;
  if (parent === undefined) return [`${namedLot(opened)} is ${since}`];
  const { cost, quantity, unit } = opened.record;
  const share =
    cost === null
      ? 'Neither lot has a cost.'
      : `It takes ${spokenMoney(toCoins(cost, currency), currency)}${currency.code === '' ? '' : ` ${currency.code}`} of the cost along.`;
  return [
    `${namedLot(opened)}, ${spokenQuantity(quantity, unit)} from lot ${parent.name}, is ${since}`,
    `${share} Left in lot ${parent.name}: ${spokenQuantity(leftOn(accountIn(ledger, parent), today), unit)}.`,
  ];
}
