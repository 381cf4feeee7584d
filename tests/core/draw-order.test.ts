import { describe, expect, test } from 'vitest';
import { cover, drawOrder } from '../../src/core/draw-order.ts';
import type { Records } from '../../src/core/records.ts';
import { lot, material, movement, type Plain, qty, unit } from './helpers/stock-records.ts';
import { account, ledgerOf, materialNamed, on } from './helpers/studio-of.ts';

const materials = [material('Paste', 'g')];
const DAY = '2026-03-20';

function order(lots: Records['lots'], movements: Records['movements'] = []): string[] {
  const ledger = ledgerOf({ materials, lots, movements });
  return drawOrder(ledger, materialNamed(ledger, 'Paste'), on(DAY)).map((each) => each.lot.name);
}

function covered(
  some: Partial<Records>,
  quantity: Plain,
  more: { readonly unit?: string; readonly whole?: boolean; readonly lot?: string } = {},
) {
  const ledger = ledgerOf({ materials, ...some });
  const need = {
    material: materialNamed(ledger, 'Paste'),
    quantity: qty(quantity),
    unit: unit(more.unit ?? 'g'),
    whole: more.whole ?? false,
    lot: more.lot === undefined ? null : account(ledger, more.lot).lot,
  };
  const { takes, missing } = cover(ledger, need, on(DAY));
  return [
    ...takes.map((take) => `${take.lot.name} ${take.quantity.toString()} ${take.lotIs}`),
    missing.toString(),
  ];
}

describe('the order in which lots are drawn', () => {
  test('the earliest good until goes first, whatever else; what keeps goes last', () => {
    const lots = [
      lot('keeps', 'Paste', '2026-01-01', 1, { opened: '2026-01-02' }),
      lot('later', 'Paste', '2026-01-01', 1, { useBy: '2026-05-01', opened: '2026-01-02' }),
      lot('sooner', 'Paste', '2026-03-01', 1, { useBy: '2026-04-01' }),
    ];
    expect(order(lots)).toEqual(['sooner', 'later', 'keeps']);
  });

  test('of one good until, what is open goes before what is sealed', () => {
    const lots = [
      lot('A sealed', 'Paste', '2026-01-01', 1),
      lot('B opened', 'Paste', '2026-03-01', 1, { opened: '2026-03-02' }),
      lot('C in use', 'Paste', '2026-03-02', 5),
    ];
    const inUse = [movement('M1', '2026-03-10', 'Use', 'C in use', 1)];
    expect(order(lots, inUse)).toEqual(['B opened', 'C in use', 'A sealed']);
  });

  test('then the earliest received', () => {
    const lots = [lot('A', 'Paste', '2026-03-02', 1), lot('B', 'Paste', '2026-03-01', 1)];
    expect(order(lots)).toEqual(['B', 'A']);
  });

  test('then the lot, in plain character order', () => {
    const names = ['b', 'A10', 'A9', 'C', 'É'];
    expect(order(names.map((name) => lot(name, 'Paste', '2026-03-01', 1)))).toEqual([
      'A10',
      'A9',
      'C',
      'b',
      'É',
    ]);
  });

  test('never a second row with the identifier of another lot, on which what is drawn would not fall', () => {
    const lots = [lot('A', 'Paste', '2026-03-02', 1), lot('a', 'Paste', '2026-03-01', 1)];
    expect(order(lots)).toEqual(['A']);
  });

  test('leaves out what may not be used on that day', () => {
    const lots = [
      lot('expired', 'Paste', '2026-03-01', 1, { useBy: '2026-03-19' }),
      lot('last day', 'Paste', '2026-03-01', 1, { useBy: DAY }),
      lot('aside', 'Paste', '2026-03-01', 1, { state: 'Set aside' }),
      lot('aside later', 'Paste', '2026-03-01', 1, { state: 'Set aside', since: '2026-03-21' }),
      lot('discarded', 'Paste', '2026-03-01', 1, { state: 'Discarded' }),
      lot('to come', 'Paste', '2026-03-21', 1),
      lot('empty', 'Paste', '2026-03-01', 1),
      lot('doubtful', 'Paste', '2026-03-01', 1, { unreadable: ['Use by'] }),
      lot('unknown recipe', 'Paste', '2026-03-01', 1, { recipe: 'Unheard of' }),
    ];
    expect(order(lots, [movement('M1', '2026-03-02', 'Waste', 'empty', 1)])).toEqual([
      'last day',
      'aside later',
    ]);
  });
});

describe('covering a need', () => {
  const two = [lot('A', 'Paste', '2026-03-01', 3), lot('B', 'Paste', '2026-03-02', 3)];

  test('is split across lots, and says what no lot covers', () => {
    expect(covered({ lots: two }, 2)).toEqual(['A 2 assumed', '0']);
    expect(covered({ lots: two }, 5)).toEqual(['A 3 assumed', 'B 2 assumed', '0']);
    expect(covered({ lots: two }, '7.5')).toEqual(['A 3 assumed', 'B 3 assumed', '1.5']);
    expect(covered({}, 1)).toEqual(['1']);
  });

  test('takes no more than is left of a lot on any later day, also one to come', () => {
    const movements = [
      movement('M1', '2026-03-25', 'Use', 'A', 2),
      movement('M2', '2026-03-26', 'Put back', 'A', 2),
      movement('M3', '2026-03-25', 'Use', 'B', 5),
    ];
    expect(covered({ lots: two, movements }, 4)).toEqual(['A 1 assumed', '3']);
  });

  test('looks at the end of later days, not at what happens within them', () => {
    const movements = [
      movement('M1', '2026-03-25', 'Use', 'A', 3),
      movement('M2', '2026-03-25', 'Put back', 'A', 3),
    ];
    expect(covered({ lots: two, movements }, 3)).toEqual(['A 3 assumed', '0']);
  });

  test('takes whole units only from each lot', () => {
    const lots = [
      lot('A', 'Paste', '2026-03-01', '1.5'),
      lot('B', 'Paste', '2026-03-02', '0.9'),
      ...two.slice(1),
    ];
    const apart = lots.map((each, place) => ({ ...each, lot: `L${place}` }));
    expect(covered({ lots: apart }, 3, { whole: true })).toEqual(['L0 1 assumed', 'L2 2 assumed', '0']);
  });

  test('takes from a lot that a person named whatever its state, once it is there, and from no other', () => {
    const lots = [
      lot('aside', 'Paste', '2026-03-01', 3, { state: 'Set aside' }),
      lot('expired', 'Paste', '2026-03-01', 3, { useBy: '2026-03-02' }),
      lot('to come', 'Paste', '2026-03-22', 3),
      ...two,
    ];
    expect(covered({ lots }, 2, { lot: 'aside' })).toEqual(['aside 2 confirmed', '0']);
    expect(covered({ lots }, 4, { lot: 'expired' })).toEqual(['expired 3 confirmed', '1']);
    expect(covered({ lots }, 2, { lot: 'to come' })).toEqual(['2']);
  });

  test('empties a lot in another unit by writing 6 decimals, and leaves nothing', () => {
    // 100 g are 3.527396194958041… oz.
    const lots = [lot('A', 'Paste', '2026-03-01', 100)];
    expect(covered({ lots }, 4, { unit: 'oz' })).toEqual(['A 3.527396 assumed', '0.472604']);
  });
});
