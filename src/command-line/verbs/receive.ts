import { booksOf } from '../../actions/books.ts';
import { cancelOrder } from '../../actions/cancel-order.ts';
import { checkWorkbook } from '../../actions/check-workbook.ts';
import { type RestOfOrder, restOfOrder } from '../../actions/order-lines.ts';
import type { LineReceived, OrderReceived, OrderToReceive } from '../../actions/order-to-receive.ts';
import { receiveOrder } from '../../actions/receive-order.ts';
import { openOrders } from '../../core/open-orders.ts';
import { CallRefused, dayOption, numberOption } from '../arguments.ts';
import type { Command, Context, ExitCode } from '../context.ts';
import { printJson, printLines, refused, saveAndTell } from '../finish.ts';
import { cancelledJson, onItsWayJson, receivedJson } from './receive-json.ts';
import { lineReceived } from './receive-line.ts';
import { cancelledText, onItsWayText, receivedText } from './receive-text.ts';

/** Takes in what came of an order, or lists what is on its way. */
export const receive: Command = async (context) => {
  const { call, file, today, terminal, random } = context;
  const order = call.text('order')?.trim() ?? null;
  if (order === null) return list(context);
  if (call.flag('cancel')) return cancel(context, order);
  const given = call.texts('line').map(lineReceived);
  const rest = given.length > 0 ? null : restOfOrder(file.workbook.snapshot(), order, today);
  if (rest?.ok === false) return refused(rest, terminal);
  const request: OrderToReceive = {
    order,
    lines: inPlace(rest?.lines ?? given, call.text('place')?.trim() ?? null),
    received: dayOption(call, 'date') ?? today,
    carriage: numberOption(call, 'carriage', true),
    by: call.text('by'),
  };
  const received = receiveOrder(file.workbook.snapshot(), request, today, random);
  if (!received.ok) return refused(received, terminal);
  return tell(context, received, rest?.leftOut ?? []);
};

function tell(context: Context, received: OrderReceived, leftOut: RestOfOrder['leftOut']): Promise<ExitCode> {
  const { terminal, today } = context;
  const { lots, order } = received;
  return saveAndTell(context, received, {
    json: (notices) => receivedJson(received, leftOut, today, notices),
    lines: receivedText(received, leftOut, today, terminal),
    isShort: leftOut.length > 0,
    about: [order.order ?? '', ...lots.flatMap(({ lot }) => [lot.name, lot.material.name])],
  });
}

/** Closes an order of which nothing more will come. */
function cancel(context: Context, order: string): Promise<ExitCode> {
  const { call, file, today, terminal, random } = context;
  const other = ['place', 'date', 'carriage', 'by'].find((option) => call.text(option) !== null);
  const option = call.texts('line').length > 0 ? 'line' : other;
  if (option !== undefined) {
    throw new CallRefused(
      `--${option} is for what came, and with --cancel nothing more comes: leave one out.`,
    );
  }
  const cancelled = cancelOrder(file.workbook.snapshot(), order, today, random);
  if (!cancelled.ok) return Promise.resolve(refused(cancelled, terminal));
  return saveAndTell(context, cancelled, {
    json: (notices) => cancelledJson(cancelled, notices),
    lines: cancelledText(cancelled, terminal),
    isShort: false,
    about: [cancelled.order.order ?? '', ...cancelled.notComing.map(({ line }) => line.material.name)],
  });
}

/** The lines, put where a place is named for all that don't say. */
function inPlace(lines: readonly LineReceived[], place: string | null): LineReceived[] {
  return lines.map((line) => ({ ...line, storedAt: line.storedAt ?? place }));
}

function list({ call, file, today, terminal }: Context): Promise<ExitCode> {
  const lonely = ['place', 'date', 'carriage', 'out', 'by'].find((option) => call.text(option) !== null);
  const option = call.texts('line').length > 0 ? 'line' : call.flag('cancel') ? 'cancel' : lonely;
  if (option !== undefined) {
    throw new CallRefused(`--${option} goes with --order: without it what is on its way is only listed.`);
  }
  const snapshot = file.workbook.snapshot();
  const { studio } = booksOf(snapshot).ledger;
  const orders = openOrders(studio, today);
  if (call.flag('json')) {
    printJson(onItsWayJson(orders, studio, today, checkWorkbook(snapshot, today).notices), terminal);
  } else printLines(onItsWayText(orders, today, terminal), terminal);
  return Promise.resolve(0);
}
