import { checkWorkbook } from '../actions/check-workbook.ts';
import { drawEntries } from '../actions/draw-entries.ts';
import { logTreatment } from '../actions/log-treatment.ts';
import { quotePlan } from '../actions/quote-job.ts';
import { undoPosting } from '../actions/undo-posting.ts';
import { checkJson, quoteJson } from './answers-json.ts';
import {
  amountUsed,
  type Call,
  CallRefused,
  dayOption,
  missingOption,
  numberOption,
  required,
} from './arguments.ts';
import { checkText } from './check-text.ts';
import type { Command } from './context.ts';
import { finish, printJson, printLines, refused, savedTo } from './finish.ts';
import { quoteText } from './quote-text.ts';
import { bath } from './verbs/bath.ts';
import { buy } from './verbs/buy.ts';
import { carry } from './verbs/carry.ts';
import { closing } from './verbs/closing.ts';
import { count } from './verbs/count.ts';
import { discard } from './verbs/discard.ts';
import { disposal } from './verbs/disposal.ts';
import { lot } from './verbs/lot.ts';
import { make } from './verbs/make.ts';
import { open } from './verbs/open.ts';
import { plan } from './verbs/plan.ts';
import { receive } from './verbs/receive.ts';
import { retest } from './verbs/retest.ts';
import { reuse } from './verbs/reuse.ts';
import { upgrade } from './verbs/upgrade.ts';

/** What each verb does. */
export const COMMANDS: Readonly<Record<Call['verb'], Command>> = {
  check: async ({ call, file, today, terminal }) => {
    const answer = checkWorkbook(file.workbook.snapshot(), today);
    if (call.flag('json')) printJson(checkJson(answer), terminal);
    else printLines(checkText(answer, call.flag('lots'), terminal), terminal);
    return answer.notices.some(({ severity }) => severity === 'stop') ? 1 : 0;
  },

  log: async (context) => {
    const { call, file, today, random } = context;
    const extent = numberOption(call, 'extent', false);
    if (extent === null) throw missingOption('log', 'extent');
    const request = {
      job: required(call, 'job'),
      item: call.text('item'),
      treatment: required(call, 'treatment'),
      extent,
      date: dayOption(call, 'date') ?? today,
      minutes: numberOption(call, 'minutes', true),
      by: call.text('by'),
      notes: call.text('notes'),
      asUsed: call.texts('use').map(amountUsed),
    };
    const written = logTreatment(file.workbook.snapshot(), request, today, random);
    return finish(context, written, 'Nothing is taken from stock for it.');
  },

  draw: async (context) => {
    const { file, today, call, random } = context;
    const written = drawEntries(file.workbook.snapshot(), today, random, call.text('by'));
    const isIdle = written.ok && written.drawing.entries.length === 0;
    return finish(
      context,
      written,
      isIdle ? 'Every entry up to today is drawn.' : 'Nothing more could be taken from stock.',
    );
  },

  undo: async (context) => {
    const { call, file, today, random } = context;
    const written = undoPosting(
      file.workbook.snapshot(),
      required(call, 'posting'),
      today,
      random,
      call.text('by'),
    );
    return finish(context, written, 'Nothing was taken back.');
  },

  quote: async ({ call, file, today, terminal, random }) => {
    const freeze = call.flag('freeze');
    if (!freeze && call.text('out') !== null)
      throw new CallRefused('--out goes with --freeze: without it nothing is saved.');
    const quoted = quotePlan(file.workbook.snapshot(), required(call, 'job'), freeze, today, random);
    if (!quoted.ok) return refused(quoted, terminal);
    if (quoted.frozen !== null) file.workbook.apply(quoted.frozen.changes);
    const { settings, notices } = checkWorkbook(file.workbook.snapshot(), today);
    if (quoted.frozen !== null) await file.saveTo(call.text('out') ?? undefined);
    if (call.flag('json')) printJson(quoteJson(quoted, settings.currency, notices), terminal);
    else {
      printLines(quoteText(quoted, settings.currency, terminal), terminal);
      if (quoted.frozen !== null) terminal.print(savedTo(call));
    }
    return 0;
  },

  plan,
  make,
  buy,
  receive,
  bath,
  open,
  retest,
  discard,
  reuse,
  lot,
  count,
  closing,
  disposal,
  carry,
  upgrade,
};
