import { describe, expect, test } from 'vitest';
import { accountIn, post } from '../../src/core/ledger.ts';
import { leftOn, worthOn } from '../../src/core/lot-account.ts';
import { lotMovement } from '../../src/core/lot-movement.ts';
import { nameForMovement } from '../../src/core/movement-name.ts';
import { splitOff } from '../../src/core/split.ts';
import { lot, material, qty } from './helpers/stock-records.ts';
import { ledgerOf, numbered, on } from './helpers/studio-of.ts';

const DAY = on('2026-04-01');
const ledger = ledgerOf({
  materials: [material('Buffer', 'ml')],
  lots: [lot('B', 'Buffer', '2026-03-01', 3, { unit: 'ml', cost: '0.10' })],
});
const [parent] = ledger.studio.lots;
if (parent === undefined) throw new Error('the lot is there');

const part = (name: string, into: string) => ({ quantity: qty(1), date: DAY, into, note: 'opened', name });

describe('a part split off a lot', () => {
  test('costs what the Count charges', () => {
    const { ledger: after, count, cost } = splitOff(ledger, parent, part('M2', 'B2'));
    const account = accountIn(after, parent);
    expect([count.kind, count.into, count.job, count.quantity.toString()]).toEqual([
      'Count',
      'B2',
      null,
      '-1',
    ]);
    expect([leftOn(account, DAY).toString(), worthOn(account, DAY), cost]).toEqual(['2', 7n, 3n]);
  });

  test('takes the odd coin along that moves where its Count sorts before an earlier one', () => {
    const first = splitOff(ledger, parent, part('M5', 'B5'));
    // 10 cents over 3 ml: 3, 4 and 3. Before M5 the new Count charges 3, and M5 then 4 instead of 3.
    const second = splitOff(first.ledger, parent, part('M1', 'B1'));
    const account = accountIn(second.ledger, parent);
    expect(account.postings.map(({ cost }) => cost)).toEqual([3n, 4n]);
    expect([first.cost, second.cost, worthOn(account, DAY)]).toEqual([3n, 4n, 3n]);
    const other = splitOff(first.ledger, parent, part('M9', 'B9'));
    expect(other.cost).toBe(4n);
  });
});

describe('the identifier of a movement', () => {
  test('comes after those of its lot on that day, and leaves room for the next', () => {
    const newIdentifier = numbered();
    let after = ledger;
    const names: string[] = [];
    for (let time = 0; time < 5; time += 1) {
      const name = nameForMovement(accountIn(after, parent), DAY, newIdentifier);
      const fields = { name, date: DAY, kind: 'Waste', quantity: qty('0.1'), note: 'spilt' } as const;
      after = post(after, [lotMovement(parent, fields)]);
      names.push(name);
    }
    expect(names).toEqual(names.toSorted());
    expect(accountIn(after, parent).postings.map(({ movement }) => movement.name)).toEqual(names);
  });

  test('is some identifier where none can come after', () => {
    const fields = {
      name: '\u{10ffff}',
      date: DAY,
      kind: 'Waste',
      quantity: qty('0.1'),
      note: 'spilt',
    } as const;
    const after = post(ledger, [lotMovement(parent, fields)]);
    expect(nameForMovement(accountIn(after, parent), DAY, numbered())).toMatch(/^Mn\d+$/);
  });
});
