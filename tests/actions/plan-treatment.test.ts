import { describe, expect, test } from 'vitest';
import { logTreatment } from '../../src/actions/log-treatment.ts';
import { planTreatment, type TreatmentPlan } from '../../src/actions/plan-treatment.ts';
import type { TreatmentToLog } from '../../src/actions/treatment-to-log.ts';
import { decimal, quantityNumber } from '../../src/core/exact-number.ts';
import { costIn } from '../../src/core/ledger.ts';
import { unitNamed } from '../../src/core/unit.ts';
import { randomFrom } from '../helpers/bench.ts';
import { date, dayOf, type Literal } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

const today = dayOf(TODAY);

const MEND: TreatmentToLog = {
  job: '26-014',
  item: null,
  treatment: 'Mend tear',
  extent: decimal('6'),
  date: today,
  minutes: null,
  by: null,
  notes: null,
  asUsed: [],
};

/** The studio with an adhesive to choose instead of the paste. */
const WITH_A_CHOICE = {
  ...STUDIO,
  Materials: [...STUDIO.Materials, { Material: 'Methylcellulose 5 %', Kind: 'Paste', 'Stock unit': 'g' }],
  Paste: [
    ...STUDIO.Paste,
    {
      Lot: 'C-1',
      Material: 'Methylcellulose 5 %',
      Received: date('2026-03-01'),
      Quantity: 100,
      Unit: 'g',
      Cost: 5,
    },
  ],
  UsageRates: [
    { Treatment: 'Mend tear', Material: 'Repair tissue 5', 'Quantity per extent': 0.5, Unit: 'sheet' },
    {
      Treatment: 'Mend tear',
      Material: 'Wheat starch paste',
      'Quantity per extent': 4,
      Unit: 'g',
      Choice: 'a',
    },
    {
      Treatment: 'Mend tear',
      Material: 'Methylcellulose 5 %',
      'Quantity per extent': 2,
      Unit: 'g',
      Choice: 'A',
    },
  ],
} as const satisfies Literal;

function plan(request: Partial<TreatmentToLog> = {}, literal: Literal = STUDIO): TreatmentPlan {
  const answer = planTreatment(snapshotOf(literal), { ...MEND, ...request }, today);
  if (!answer.ok) throw new Error(answer.message);
  return answer;
}

function useOf(planned: TreatmentPlan, material: string) {
  const use = planned.uses.find((each) => each.material.name === material);
  if (use === undefined) throw new Error(`nothing is planned of ${material}`);
  return use;
}

describe('a plan takes what logging takes', () => {
  test.each([
    ['by the rates', {}],
    ['more than there is', { extent: decimal('60') }],
    [
      'amounts that were really used',
      {
        asUsed: [
          { material: 'Wheat starch paste', quantity: decimal('12.5'), unit: unitNamed('g'), lot: 'P-1' },
        ],
      },
    ],
    [
      'a lot that is named',
      {
        asUsed: [
          { material: 'Repair tissue 5', quantity: decimal('1'), unit: unitNamed('sheet'), lot: 'T-2' },
        ],
      },
    ],
  ] as const)('%s', (_, request) => {
    const planned = plan(request);
    const written = logTreatment(snapshotOf(STUDIO), { ...MEND, ...request }, today, randomFrom(3));
    if (!written.ok) throw new Error(written.message);
    const { ledger, movements, shortfalls } = written.drawing;
    expect(
      planned.uses.flatMap(({ takes }) =>
        takes.map(({ lot, lotIs, quantity, cost }) => [lot.name, lotIs, quantityNumber(quantity), cost]),
      ),
    ).toEqual(
      movements.map((movement) => [
        movement.lot.name,
        movement.lotIs,
        quantityNumber(movement.quantity),
        costIn(ledger, movement),
      ]),
    );
    expect(
      planned.uses.flatMap(({ material, missing }) =>
        missing.compare(0) > 0 ? [[material.name, quantityNumber(missing)]] : [],
      ),
    ).toEqual(shortfalls.map(({ material, missing }) => [material.name, quantityNumber(missing)]));
    expect(planned.cost).toBe(movements.reduce((sum, each) => sum + (costIn(ledger, each) ?? 0n), 0n));
  });
});

test('what the rates say stays beside an amount that was overwritten, and the lots that could be named', () => {
  const use = useOf(
    plan({
      asUsed: [{ material: 'Wheat starch paste', quantity: decimal('12'), unit: unitNamed('g'), lot: null }],
    }),
    'Wheat starch paste',
  );
  expect([quantityNumber(use.quantity), quantityNumber(use.byRates ?? decimal('0'))]).toEqual([12, 30]);
  expect(use.lots.map(({ lot, left, doubt }) => [lot.name, quantityNumber(left), doubt])).toEqual([
    ['P-1', 200, null],
  ]);
});

test('lots that the rules would not pick come last, each with the reason', () => {
  const tissue = (lot: string, cells: Record<string, string | number | ReturnType<typeof date>>) => ({
    Lot: lot,
    Material: 'Repair tissue 5',
    Received: date('2026-01-10'),
    Quantity: 1,
    Unit: 'sheet',
    ...cells,
  });
  const use = useOf(
    plan(
      {},
      {
        ...STUDIO,
        Tissue: [
          tissue('old', { 'Use by': date('2026-04-02') }),
          tissue('aside', { State: 'Set aside' }),
          tissue('thrown', { State: 'Discarded' }),
          tissue('later', { Received: date('2026-04-04') }),
          tissue('good', {}),
          tissue('spent', {}),
        ],
        Movements: [
          {
            Movement: 'M-1',
            Date: date('2026-02-01'),
            Kind: 'Use',
            Lot: 'spent',
            Quantity: 1,
            Unit: 'sheet',
          },
        ],
      },
    ),
    'Repair tissue 5',
  );
  expect(use.lots.map(({ lot, doubt }) => [lot.name, doubt])).toEqual([
    ['good', null],
    ['old', 'gone off'],
    ['aside', 'set aside'],
    ['thrown', 'discarded'],
    ['later', 'not received yet'],
    ['spent', 'empty'],
  ]);
  expect(quantityNumber(use.missing)).toBe(2);
});

describe('alternatives', () => {
  test('are named with what each would take; the first is taken', () => {
    const planned = plan({}, WITH_A_CHOICE);
    expect(planned.uses.map(({ material }) => material.name)).toEqual([
      'Repair tissue 5',
      'Wheat starch paste',
    ]);
    const { alternatives } = useOf(planned, 'Wheat starch paste');
    expect(
      alternatives.map(({ material, quantity, unit }) => [
        material.name,
        quantityNumber(quantity),
        unit.name,
      ]),
    ).toEqual([
      ['Wheat starch paste', 24, 'g'],
      ['Methylcellulose 5 %', 12, 'g'],
    ]);
  });

  test('are taken where an amount of them is given', () => {
    const [, alternative] = useOf(plan({}, WITH_A_CHOICE), 'Wheat starch paste').alternatives;
    if (alternative === undefined) throw new Error('no alternative');
    const { material, quantity, unit } = alternative;
    const planned = plan({ asUsed: [{ material: material.name, quantity, unit, lot: null }] }, WITH_A_CHOICE);
    expect(planned.uses.map((use) => use.material.name)).toEqual(['Repair tissue 5', 'Methylcellulose 5 %']);
    expect(useOf(planned, 'Methylcellulose 5 %').takes.map(({ lot }) => lot.name)).toEqual(['C-1']);
  });

  test('without a choice there are none', () => {
    expect(useOf(plan(), 'Wheat starch paste').alternatives).toEqual([]);
  });
});

test('an entry of a later day waits and takes nothing yet', () => {
  expect(plan({ date: dayOf('2026-04-04') })).toMatchObject({ waits: true, uses: [], cost: 0n });
});

test('names that lead nowhere are refused with those that may have been meant', () => {
  const answer = planTreatment(snapshotOf(STUDIO), { ...MEND, treatment: 'Mend tears' }, today);
  expect(answer).toMatchObject({ ok: false, message: expect.stringContaining('Did you mean Mend tear?') });
});
