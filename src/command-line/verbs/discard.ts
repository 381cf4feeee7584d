import { booksOf } from '../../actions/books.ts';
import { checkWorkbook } from '../../actions/check-workbook.ts';
import { discardExpired, expiredAmong, expiredLots } from '../../actions/discard-expired.ts';
import { noticesJson, writtenJson } from '../answers-json.ts';
import { CallRefused } from '../arguments.ts';
import type { Command, Context, ExitCode } from '../context.ts';
import { printJson, printLines, refused, saveAndTell } from '../finish.ts';
import { deedLines } from '../lot-words.ts';
import { expiredJson, expiredText } from './discard-text.ts';

const NOTHING = 'Nothing has gone off with something left in it.';

/** Throws away what has gone off, or lists it. */
export const discard: Command = async (context) => {
  const { call, file, today, terminal, random } = context;
  const named = call.texts('lot').map((name) => name.trim());
  const lots = named.length === 0 ? null : named;
  if (call.flag('plan')) return tellPlan(context, lots);
  const written = discardExpired(file.workbook.snapshot(), lots, today, random, call.text('by'));
  if (!written.ok) return refused(written, terminal);
  const { discarded, drawing } = written;
  const { currency } = drawing.ledger.studio.settings;
  return saveAndTell(context, written, {
    json: (notices) => ({ ...expiredJson(discarded, currency), ...writtenJson(written, notices) }),
    lines: [
      ...(discarded.length === 0 ? [NOTHING] : expiredText('Thrown away', discarded, currency, terminal)),
      ...deedLines([], written, terminal),
    ],
    isShort: false,
  });
};

function tellPlan({ call, file, today, terminal }: Context, lots: readonly string[] | null): ExitCode {
  if (call.text('out') !== null) throw new CallRefused('--out goes without --plan: a plan saves nothing.');
  const { ledger } = booksOf(file.workbook.snapshot());
  const expired = lots === null ? expiredLots(ledger, today) : expiredAmong(ledger, lots, today);
  if ('ok' in expired) return refused(expired, terminal);
  const { settings, notices } = checkWorkbook(file.workbook.snapshot(), today);
  if (call.flag('json')) {
    const nothing = { posting: null, entries: [], movements: [], shortfalls: [] };
    const answer = { ...expiredJson(expired, settings.currency), ...nothing, notices: noticesJson(notices) };
    printJson(answer, terminal);
  } else {
    const nothing = [NOTHING];
    const gone = 'Gone off with something left';
    printLines(
      expired.length === 0 ? nothing : expiredText(gone, expired, settings.currency, terminal),
      terminal,
    );
  }
  return 0;
}
