import { bringBack, retireSheet, setWet } from '../../actions/reuse-lot.ts';
import type { Refusal, Written } from '../../actions/writing-desk.ts';
import { spokenDay } from '../../core/day.ts';
import { keyOf } from '../../core/identifier.ts';
import { accountIn } from '../../core/ledger.ts';
import type { Lot } from '../../core/studio.ts';
import { USE, usesLeft } from '../../core/uses.ts';
import { spokenQuantity } from '../../core/wording.ts';
import { writtenJson } from '../answers-json.ts';
import { type Call, CallRefused, dayOption, numberOption, required } from '../arguments.ts';
import type { Command, Context } from '../context.ts';
import { refused, saveAndTell } from '../finish.ts';
import { deedLines, lotStateJson, namedLot } from '../lot-words.ts';

/** The deeds, and the options that go with each alone. */
const DEEDS = { retire: ['presses'], wet: ['sheets'], back: ['uses', 'how'] } as const;

type Deed = keyof typeof DEEDS;

/** Retires a sheet early, sets sheets aside while they dry, or brings them back. */
export const reuse: Command = async (context) => {
  const { call, today, terminal } = context;
  const deed = deedOf(call);
  const done = carriedOut(deed, context);
  if (!done.ok) return refused(done, terminal);
  const { ledger } = done.drawing;
  const lot = lotAfter(done, required(call, 'lot'));
  return saveAndTell(context, done, {
    json: (notices) => ({ ...lotStateJson(ledger, lot, today), ...writtenJson(done, notices) }),
    lines: deedLines([sentenceOf(deed, done, lot, context)], done, terminal),
    isShort: false,
  });
};

function deedOf(call: Call): Deed {
  const given = (Object.keys(DEEDS) as Deed[]).filter((deed) => call.flag(deed));
  const [deed] = given;
  if (deed === undefined || given.length > 1) {
    throw new CallRefused('jarleaf reuse needs one of --retire, --wet and --back. See jarleaf reuse --help.');
  }
  for (const [other, options] of Object.entries(DEEDS)) {
    const stray = other === deed ? undefined : options.find((option) => call.text(option) !== null);
    if (stray !== undefined) throw new CallRefused(`--${stray} goes with --${other}.`);
  }
  return deed;
}

type Done = Written & { readonly wet?: Lot };

function carriedOut(deed: Deed, { call, file, today, random }: Context): Done | Refusal {
  const snapshot = file.workbook.snapshot();
  const date = dayOption(call, 'date') ?? today;
  const handled = { lot: required(call, 'lot'), date, by: call.text('by') };
  switch (deed) {
    case 'retire':
      return retireSheet(
        snapshot,
        { ...handled, presses: numberOption(call, 'presses', true) },
        today,
        random,
      );
    case 'wet':
      return setWet(snapshot, { ...handled, sheets: numberOption(call, 'sheets', false) }, today, random);
    case 'back': {
      const how = required(call, 'how');
      if (how !== 'dried' && how !== 'washed') {
        throw new CallRefused(`--how holds “${how}”: dried or washed is right.`);
      }
      const uses = numberOption(call, 'uses', false);
      return bringBack(snapshot, { ...handled, uses, how }, today, random);
    }
  }
}

/** The lot that it was done with: the one that was split off, where some sheets are set aside. */
function lotAfter({ wet, drawing }: Done, name: string): Lot {
  const { lotsByKey } = drawing.ledger.studio;
  const lot = wet ?? lotsByKey.get(keyOf(name));
  if (lot === undefined) throw new Error(`lot ${name} was there before`);
  return lot;
}

function sentenceOf(deed: Deed, { drawing }: Done, lot: Lot, { call, today }: Context): string {
  const date = spokenDay(dayOption(call, 'date') ?? today);
  const left = usesLeft(accountIn(drawing.ledger, lot), today);
  const rest = left === null ? '' : ` Uses left: ${spokenQuantity(left, USE)}.`;
  const moved = drawing.movements[0];
  const quantity = moved === undefined ? '' : spokenQuantity(moved.quantity.abs(), moved.unit);
  switch (deed) {
    case 'retire':
      return `${namedLot(lot)}: a ${lot.material.unit.name} is retired, ${quantity} are written off.${rest}`;
    case 'wet': {
      const part = moved === undefined ? '' : `, ${quantity} from lot ${moved.lot.name},`;
      return `${namedLot(lot)}${part} is set aside since ${date}: nothing is drawn from it until it is brought back.`;
    }
    case 'back':
      return quantity === ''
        ? `${namedLot(lot)} is back in use, ${required(call, 'how')} on ${date}.${rest}`
        : `${namedLot(lot)} is back in use, ${required(call, 'how')} on ${date}: ${quantity} put back.${rest}`;
  }
}
