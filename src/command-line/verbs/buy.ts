import { basketLines } from '../../actions/basket-lines.ts';
import { booksOf } from '../../actions/books.ts';
import { checkWorkbook } from '../../actions/check-workbook.ts';
import { orderText } from '../../actions/order-text.ts';
import { type OrdersPlaced, placeOrder } from '../../actions/place-order.ts';
import type { Refusal } from '../../actions/writing-desk.ts';
import type { Basket } from '../../core/buying/basket.ts';
import { basketOf } from '../../core/buying/basket-of.ts';
import type { BasketProblem } from '../../core/buying/basket-problem.ts';
import { offerFor, withWishes } from '../../core/buying/wishes.ts';
import { keyOf } from '../../core/identifier.ts';
import type { PlanAnswer } from '../../core/planning/plan-answer.ts';
import { highsSolver } from '../../solver/highs-solver.ts';
import { loadHighs } from '../../solver/load-highs.ts';
import { type Call, CallRefused } from '../arguments.ts';
import type { Command, Context } from '../context.ts';
import { missesSome, printJson, printLines, refused, savedTo } from '../finish.ts';
import { heading } from '../terminal.ts';
import { buyJson, type OrderWritten } from './buy-json.ts';
import { buyText } from './buy-text.ts';
import { outlook } from './plan.ts';

/** Says what to order now from whom; with --order writes the orders and prints the texts to send. */
export const buy: Command = async (context) => {
  const { call, file, today, terminal } = context;
  checkOptions(call);
  const { answer, problem, checked } = outlook(context);
  const { currency } = checked.settings;
  const byHand = packsByHand(call, answer);
  const needs = withWishes(answer.needs, answer.besides, byHand);
  const basket = await basketOf(
    { today, needs, suppliers: problem.suppliers, byHand },
    highsSolver(loadHighs),
    currency,
  );
  let written: readonly OrderWritten[] = [];
  if (call.flag('order')) {
    const placed = place(context, basket);
    if (!placed.ok) return refused(placed, terminal);
    file.workbook.apply(placed.changes);
    await file.saveTo(call.text('out') ?? undefined);
    for (const remark of placed.remarks) terminal.printError(remark);
    written = placed.orders.map((order) => ({
      supplier: order.supplier.supplier ?? '',
      order: order.order,
      text: orderText(order),
    }));
  }
  const { notices } = written.length === 0 ? checked : checkWorkbook(file.workbook.snapshot(), today);
  if (call.flag('json')) {
    printJson(buyJson(today, answer.needs, basket, written, currency, notices), terminal);
  } else {
    printLines(
      [...buyText(answer.needs, basket, currency, terminal), ...missesSome(checked.notices)],
      terminal,
    );
    for (const { supplier, order, text } of written) {
      printLines(['', heading(`Order ${order}, to send to ${supplier}`, terminal), text], terminal);
    }
    if (written.length > 0) terminal.print(savedTo(call));
  }
  return basket.remarks.some(({ kind }) => kind !== 'by hand too much' && kind !== 'would go off') ? 1 : 0;
};

function checkOptions(call: Call): void {
  if (call.flag('order')) return;
  const lonely = call.text('out') !== null ? 'out' : call.texts('supplier').length > 0 ? 'supplier' : null;
  if (lonely !== null) throw new CallRefused(`--${lonely} goes with --order: without it nothing is saved.`);
}

function place({ call, file, today, random }: Context, basket: Basket): OrdersPlaced | Refusal {
  const snapshot = file.workbook.snapshot();
  const wanted = call.texts('supplier').map(keyOf);
  const named = basket.orders.map(({ supplier }) => supplier);
  const unknown = call.texts('supplier').find((name) => !named.some((each) => keyOf(each) === keyOf(name)));
  if (unknown !== undefined) {
    const list = named.length === 0 ? 'nobody' : named.join(', ');
    throw new CallRefused(`Nothing is to be ordered from ${unknown} now, only from ${list}.`);
  }
  const orders = basket.orders.filter(
    ({ supplier }) => wanted.length === 0 || wanted.includes(keyOf(supplier)),
  );
  const request = {
    lines: basketLines(booksOf(snapshot).ledger.studio, orders),
    expected: orders.map(({ supplier, expected }) => ({ supplier, day: expected })),
    orderedOn: today,
  };
  return placeOrder(snapshot, request, today, random);
}

/** So many packs of a row of Offers, written "Offers 7=2", or of a material, written "gelatine=2". */
function packsByHand(call: Call, { needs, besides, materials }: PlanAnswer): BasketProblem['byHand'] {
  const all = [...needs, ...besides];
  const rows = all.flatMap(({ offers }) => offers.map(({ offer }) => offer));
  return call.texts('packs').map((typed) => {
    const [, name = '', packs = ''] = /^(.+)=\s*(\d+)\s*$/.exec(typed) ?? [];
    const row = rows.find((each) => keyOf(each) === keyOf(name));
    if (row !== undefined) return { offer: row, packs: Number(packs) };
    const need = all.find(({ material }) => keyOf(material) === keyOf(name));
    const offer = need === undefined ? null : offerFor(need, Number(packs));
    if (offer !== null) return { offer: offer.offer, packs: Number(packs) };
    const material = materials.find((each) => keyOf(each.material) === keyOf(name))?.material;
    if (material !== undefined) {
      throw new CallRefused(`--packs holds “${typed}”: nobody sells ${material}: add a row to Offers.`);
    }
    const wanted = needs.flatMap(({ offers }) => offers.map((each) => each.offer));
    const known =
      wanted.length === 0 ? 'nothing has to be bought now' : `what is needed has ${wanted.join(', ')}`;
    throw new CallRefused(
      `--packs holds “${typed}”: write an offer or a material and a whole number, such as "${rows[0] ?? 'Offers 7'}=2"; ${known}.`,
    );
  });
}
