import { expect, test } from 'vitest';
import { lineReceived } from '../../src/command-line/verbs/receive-line.ts';
import { decimal } from '../../src/core/exact-number.ts';
import { unitNamed } from '../../src/core/unit.ts';
import { dayOf } from '../helpers/literal.ts';

const BARE = {
  line: 'H2',
  amount: 'all to come',
  supplierLot: null,
  useBy: null,
  storedAt: null,
  goods: null,
};
const packs = (count: string) => ({ packs: decimal(count) });
const of = (quantity: string, unit: string) => ({ quantity: decimal(quantity), unit: unitNamed(unit) });

test.each([
  ['H2', {}],
  ['kozo tissue 5 g', { line: 'kozo tissue 5 g' }],
  ['H2=2', { amount: packs('2') }],
  [' H2 = 1 pack ', { amount: packs('1') }],
  [
    'H2=2packs@KT-88 until 2027-01-31',
    { amount: packs('2'), supplierLot: 'KT-88', useBy: dayOf('2027-01-31') },
  ],
  ['H2=50 g for 12.40', { amount: of('50', 'g'), goods: decimal('12.4') }],
  [
    'H2=1.5 fl oz for 0@a b=c in Box 2',
    { amount: of('1.5', 'fl oz'), goods: decimal('0'), supplierLot: 'a b=c', storedAt: 'Box 2' },
  ],
  ['H2=all in Plan chest', { storedAt: 'Plan chest' }],
  ['H2=all @ K 1 until 2027-01-31 in X', { supplierLot: 'K 1', useBy: dayOf('2027-01-31'), storedAt: 'X' }],
  ['H2=12 in', { amount: of('12', 'in') }],
  ['H2=12 in in Box', { amount: of('12', 'in'), storedAt: 'Box' }],
])('“%s” is read', (typed, said) => {
  expect(lineReceived(typed)).toEqual({ ...BARE, ...said });
});

test.each([
  '',
  '=2',
  'H2=',
  'H2=0',
  'H2=-2',
  'H2=two',
  'H2=all packs',
  'H2=2@',
  'H2=2 until 31 Jan 2027',
  'H2=2 until 2027-02-30',
  'H2=2@K for 3',
  'H2=2@K in Box in fridge',
  'H2=2 for much',
])('“%s” is refused, with what would be right', (typed) => {
  expect(() => lineReceived(typed)).toThrow(/^--line holds “.*”: write it like "H2=2 packs@KT-88 until/);
});
