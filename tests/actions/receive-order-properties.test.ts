import fc from 'fast-check';
import { expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import type { OrderReceived } from '../../src/actions/order-to-receive.ts';
import { placeOrder } from '../../src/actions/place-order.ts';
import { receiveOrder } from '../../src/actions/receive-order.ts';
import { undoPosting } from '../../src/actions/undo-posting.ts';
import { decimal } from '../../src/core/exact-number.ts';
import { stockOn } from '../../src/core/stock.ts';
import { Desk } from '../helpers/desk.ts';
import type { Literal } from '../helpers/literal.ts';
import { came, delivery, orders, packs, TODAY } from './helpers/order-bench.ts';

/** Orders of random lines, delivered in random parts, against a pencil that keeps whole thousandths and cents. */

const MATERIALS = ['Tissue', 'Gelatine', 'Ethanol'] as const;
const UNITS = { Tissue: 'sheet', Gelatine: 'g', Ethanol: 'l' } as const;
/** Of one unit of a line, in the material's stock unit. */
const IN_STOCK = { Tissue: 1n, Gelatine: 1n, Ethanol: 1000n } as const;
const THOUSAND = 1000n;

const BENCH: Literal = {
  Materials: [
    { Material: 'Tissue', Kind: 'Tissue', 'Stock unit': 'sheet' },
    { Material: 'Gelatine', Kind: 'Paste', 'Stock unit': 'g' },
    { Material: 'Ethanol', Kind: 'Buffer', 'Stock unit': 'ml' },
  ],
  Tissue: [],
  Paste: [],
  Buffers: [],
  Movements: [],
  Suppliers: [{ Supplier: 'S1' }],
  Orders: [],
  OrderLines: [],
  Settings: [{ Setting: 'currency', Value: 'EUR' }],
};

interface Line {
  readonly material: (typeof MATERIALS)[number];
  readonly packs: number;
  readonly packQuantity: number;
  readonly cents: number;
}

/** Parts of a delivery in turn: of which line, and how many thousandths of a pack of it. */
interface Part {
  readonly line: number;
  readonly thousandths: number;
}

interface Delivered {
  readonly parts: readonly Part[];
  readonly carriage: number;
}

const someLine: fc.Arbitrary<Line> = fc.record({
  material: fc.constantFrom(...MATERIALS),
  packs: fc.integer({ min: 1, max: 9 }),
  packQuantity: fc.integer({ min: 1, max: 250 }),
  cents: fc.integer({ min: 1, max: 9999 }),
});

const someDelivery: fc.Arbitrary<Delivered> = fc.record({
  parts: fc.array(
    fc.record({
      line: fc.nat(),
      thousandths: fc.oneof(fc.constantFrom(1000, 2000, 3000), fc.integer({ min: 1, max: 4000 })),
    }),
    { minLength: 1, maxLength: 4 },
  ),
  carriage: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 2500 })),
});

interface World {
  readonly lines: readonly Line[];
  readonly deliveries: readonly Delivered[];
}

const someWorld: fc.Arbitrary<World> = fc.record({
  lines: fc.array(someLine, { minLength: 1, maxLength: 4 }),
  deliveries: fc.array(someDelivery, { minLength: 0, maxLength: 4 }),
});

function ordered({ lines }: World): {
  readonly bench: Desk;
  readonly order: string;
  readonly names: readonly string[];
} {
  const bench = new Desk(BENCH);
  const request = orders(
    lines.map(({ material, packs: count, packQuantity, cents }) =>
      packs('S1', material, `${count} × ${packQuantity} ${UNITS[material]} at ${cents / 100}`),
    ),
  );
  const placed = bench.do((snapshot, random) => placeOrder(snapshot, request, TODAY, random));
  const [order] = placed.orders;
  return { bench, order: order?.order ?? '', names: order?.lines.map(({ line }) => line) ?? [] };
}

function take(
  bench: Desk,
  order: string,
  names: readonly string[],
  { parts, carriage }: Delivered,
): OrderReceived {
  const lines = parts.map(({ line, thousandths }) =>
    came(names[line % names.length] ?? '', thousandths / 1000),
  );
  const request = delivery(order, lines, { carriage: String(carriage / 100) });
  return bench.do((snapshot, random) => receiveOrder(snapshot, request, TODAY, random));
}

/** The rest of an order, as far as anything of a line is still to come. */
function takeRest(
  bench: Desk,
  order: string,
  names: readonly string[],
  left: readonly bigint[],
  carriage: number,
) {
  const lines = names.filter((_, place) => (left[place] ?? 0n) > 0n).map((name) => came(name));
  if (lines.length === 0) return null;
  const request = delivery(order, lines, { carriage: String(carriage / 100) });
  return bench.do((snapshot, random) => receiveOrder(snapshot, request, TODAY, random));
}

/** What is on order of each material, in thousandths of its stock unit. */
function onOrder(bench: Desk): bigint[] {
  return stockOn(bench.ledger, TODAY).materials.map((each) => inThousandths(each.onOrder));
}

function inThousandths(quantity: { readonly n: bigint; readonly d: bigint; readonly s: bigint }): bigint {
  expect((quantity.n * THOUSAND) % quantity.d).toBe(0n);
  return (quantity.s * quantity.n * THOUSAND) / quantity.d;
}

/** By the pencil: what is still to come of each line, in thousandths of a pack. */
function leftOf({ lines, deliveries }: World): bigint[] {
  const left = lines.map((line) => BigInt(line.packs) * THOUSAND);
  for (const { parts } of deliveries) {
    for (const { line, thousandths: part } of parts) {
      const place = line % lines.length;
      left[place] = (left[place] ?? 0n) - BigInt(part);
    }
  }
  return left.map((each) => (each > 0n ? each : 0n));
}

function inStock({ lines }: World, left: readonly bigint[]): bigint[] {
  return MATERIALS.map((material) =>
    lines.reduce(
      (sum, line, place) =>
        line.material === material
          ? sum + (left[place] ?? 0n) * BigInt(line.packQuantity) * IN_STOCK[material]
          : sum,
      0n,
    ),
  );
}

function stateOf(bench: Desk): string | null | undefined {
  return booksOf(bench.snapshot).ledger.studio.orders[0]?.state;
}

/** In cents, of all lots. */
function costs(bench: Desk): bigint {
  return bench.ledger.studio.lots.reduce(
    (sum, { record }) => sum + BigInt(Math.round((record.cost?.valueOf() ?? Number.NaN) * 100)),
    0n,
  );
}

test('what is on order is what was ordered less what came, never below nothing, and the State follows', () => {
  fc.assert(
    fc.property(someWorld, (world) => {
      const { bench, order, names } = ordered(world);
      expect(onOrder(bench)).toEqual(inStock(world, leftOf({ ...world, deliveries: [] })));
      world.deliveries.forEach((each, place) => {
        const isClosed = stateOf(bench) === 'Received';
        const received = take(bench, order, names, each);
        const left = leftOf({ ...world, deliveries: world.deliveries.slice(0, place + 1) });
        expect(onOrder(bench)).toEqual(inStock(world, left));
        const isDone = isClosed || left.every((quantity) => quantity === 0n);
        expect([received.state, stateOf(bench)]).toEqual(
          Array(2).fill(isDone ? 'Received' : 'Part received'),
        );
      });
      takeRest(bench, order, names, leftOf(world), 0);
      expect(onOrder(bench)).toEqual([0n, 0n, 0n]);
      expect(stateOf(bench)).toBe('Received');
    }),
    { numRuns: 60 },
  );
});

test('the lots of an order cost its goods and the carriage of its deliveries, to the cent, however it was split', () => {
  fc.assert(
    fc.property(someWorld, fc.integer({ min: 0, max: 2500 }), (world, lastCarriage) => {
      const { bench, order, names } = ordered(world);
      const shared = world.deliveries.reduce((sum, each) => {
        const { lots } = take(bench, order, names, each);
        // So small a part of a pack may be worth no cent: then there is nothing to share carriage by.
        return lots.every(({ goods }) => goods === 0n) ? sum : sum + each.carriage;
      }, 0);
      const rest = takeRest(bench, order, names, leftOf(world), lastCarriage);
      const isLastShared = rest?.lots.some(({ goods }) => goods !== 0n) ?? false;
      const goods = world.lines.reduce((sum, line, place) => {
        const overs = arrivedOf(world, place) - BigInt(line.packs) * THOUSAND;
        const taken = BigInt(line.packs) * THOUSAND + (overs > 0n ? overs : 0n);
        return sum + halfAway(taken * BigInt(line.cents), THOUSAND);
      }, 0n);
      expect(costs(bench)).toBe(goods + BigInt(shared) + (isLastShared ? BigInt(lastCarriage) : 0n));
    }),
    { numRuns: 60 },
  );
});

/** By the pencil: what came of a line, in thousandths of a pack. */
function arrivedOf({ lines, deliveries }: World, place: number): bigint {
  return deliveries
    .flatMap(({ parts }) => parts)
    .filter(({ line }) => line % lines.length === place)
    .reduce((sum, part) => sum + BigInt(part.thousandths), 0n);
}

function halfAway(numerator: bigint, denominator: bigint): bigint {
  return (2n * numerator + denominator) / (2n * denominator);
}

test('deliveries that are taken back, in any order, leave the order as it was', () => {
  const someOrder = fc.infiniteStream(fc.nat({ max: 1000 }));
  fc.assert(
    fc.property(someWorld, someOrder, (world, ranks) => {
      const { bench, order, names } = ordered(world);
      const before = onOrder(bench);
      const postings = world.deliveries.map((each) => take(bench, order, names, each).posting ?? '');
      const shuffled = postings
        .map((posting) => ({ posting, rank: ranks.next().value ?? 0 }))
        .toSorted((a, b) => a.rank - b.rank);
      shuffled.forEach(({ posting }) => {
        bench.do((snapshot, random) => undoPosting(snapshot, posting, TODAY, random));
      });
      expect(onOrder(bench)).toEqual(before);
      expect(stateOf(bench)).toBe('Ordered');
      const figures = stockOn(bench.ledger, TODAY);
      expect(figures.materials.map(({ left }) => left?.equals(decimal('0')))).toEqual([true, true, true]);
      expect(figures.lots.map(({ worth }) => worth)).toEqual(figures.lots.map(() => 0n));
    }),
    { numRuns: 40 },
  );
});
