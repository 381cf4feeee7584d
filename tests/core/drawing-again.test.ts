import { describe, expect, test } from 'vitest';
import { drawEntry } from '../../src/core/draw.ts';
import type { Records } from '../../src/core/records.ts';
import { movementsOfPosting, reverse } from '../../src/core/undo.ts';
import { written } from './helpers/random-studio.ts';
import { lot, material, movement, qty, unit } from './helpers/stock-records.ts';
import { draw, entryNamed, ledgerOf, materialNamed, numbered, on, taken } from './helpers/studio-of.ts';
import { entry, job, rate, treatment } from './helpers/work-records.ts';

const TODAY = '2026-04-01';
const base: Partial<Records> = {
  materials: [
    material('Paste', 'g'),
    material('Glue', 'g'),
    material('Water', 'l', { counted: false }),
    material('Tissue', 'sheet', { kind: 'Tissue' }),
  ],
  treatments: [treatment('Lining'), treatment('Looking')],
  jobs: [job('J1')],
};
const paste = [lot('P', 'Paste', '2026-03-01', 100), lot('Q', 'Paste', '2026-03-02', 100)];
const glue = [lot('G', 'Glue', '2026-03-01', 100)];

/** What is drawn today for entry E1 of 4 leaves, dated 10 March 2026, and others. */
function drawn(some: Partial<Records>): string[] {
  const entries = [entry('E1', '2026-03-10', 'Lining', 4)];
  return taken(draw(ledgerOf({ ...base, lots: [...paste, ...glue], entries, ...some }), TODAY));
}

describe('an entry drawn in part', () => {
  const rates = [rate('Lining', 'Glue', 50, { choice: 'a' }), rate('Lining', 'Paste', 50, { choice: 'a' })];

  test('is completed for the extent it was drawn for, with the alternative it has used', () => {
    const entries = [entry('E1', '2026-03-10', 'Lining', 9, { drawn: 'Part ', drawnFor: 3 })];
    const movements = [movement('M1', '2026-03-10', 'Use', 'P', 100, { entry: 'E1' })];
    expect(drawn({ entries, movements, usageRates: rates })).toEqual(['E1 Q 50 g']);
  });

  test('becomes yes where nothing is missing any more', () => {
    const entries = [entry('E1', '2026-03-10', 'Lining', 2, { drawn: 'part', drawnFor: 2 })];
    const movements = [movement('M1', '2026-03-10', 'Use', 'G', 100, { entry: 'E1' })];
    const drawing = draw(ledgerOf({ ...base, lots: glue, entries, movements, usageRates: rates }), TODAY);
    expect(drawing.movements).toEqual([]);
    expect(drawing.entries.map(({ drawn: state }) => state)).toEqual(['yes']);
  });

  test('counts what is drawn of a material once, where two rates take it', () => {
    const usageRates = [rate('Lining', 'Paste', 25), rate('Lining', 'Paste', 0, { fixed: 80 })];
    const lots = [lot('P', 'Paste', '2026-03-01', 120)];
    const entries = [entry('E1', '2026-03-10', 'Lining', 4)];
    const records = { ...base, lots, usageRates, entries };
    const first = draw(ledgerOf(records), TODAY);
    expect(taken(first)).toEqual(['E1 P 100 g', 'E1 P 20 g', 'E1 - Paste 60 g']);
    const again = ledgerOf({
      ...records,
      movements: written(first.movements),
      entries: [entry('E1', '2026-03-10', 'Lining', 4, { drawn: 'part', drawnFor: 4 })],
      lots: [...lots, lot('Q', 'Paste', '2026-03-05', 100)],
    });
    expect(taken(draw(again, TODAY))).toEqual(['E1 Q 60 g']);
  });

  test('does not take again for a rate in whole units what another rate has drawn', () => {
    const usageRates = [
      rate('Lining', 'Tissue', '0.25', { unit: 'sheet', whole: true }),
      rate('Lining', 'Tissue', '0.1', { unit: 'sheet' }),
    ];
    const lots = [lot('T', 'Tissue', '2026-03-01', '0.9', { unit: 'sheet' })];
    const entries = [entry('E1', '2026-03-10', 'Lining', 4)];
    const first = draw(ledgerOf({ ...base, lots, usageRates, entries }), TODAY);
    expect(taken(first)).toEqual(['E1 T 0.4 sheet', 'E1 - Tissue 1 sheet']);
    expect(taken(draw(first.ledger, TODAY))).toEqual(['E1 - Tissue 1 sheet']);
  });
});

describe('amounts as they were really used', () => {
  const entries = [entry('E1', '2026-03-10', 'Lining', 4)];
  const usageRates = [
    rate('Lining', 'Glue', 1, { choice: 'a' }),
    rate('Lining', 'Paste', 1, { choice: 'a' }),
  ];
  const ledger = ledgerOf({ ...base, lots: [...paste, ...glue], entries, usageRates });
  const used = (name: string, quantity: string, more: { unit?: string; lot?: string } = {}) => ({
    material: materialNamed(ledger, name),
    quantity: qty(quantity),
    unit: unit(more.unit ?? 'g'),
    lot: ledger.studio.lotsByKey.get((more.lot ?? '').toLowerCase()) ?? null,
  });
  const drawAs = (...amounts: ReturnType<typeof used>[]) =>
    drawEntry(ledger, entryNamed(ledger, 'E1'), on(TODAY), numbered(), amounts);

  test('stand in for the rates, choose an alternative, and may name a lot', () => {
    expect(taken(drawAs(used('Glue', '7.5')))).toEqual(['E1 G 7.5 g']);
    expect(taken(drawAs(used('Paste', '7')))).toEqual(['E1 P 7 g']);
    const named = drawAs(used('Paste', '7', { lot: 'Q' }));
    expect(named.movements.map(({ lot: { name }, lotIs }) => [name, lotIs])).toEqual([['Q', 'confirmed']]);
  });

  test('are drawn besides what the rates say of other materials', () => {
    expect(taken(drawAs(used('Tissue', '2', { unit: 'sheet' })))).toEqual([
      'E1 G 4 g',
      'E1 - Tissue 2 sheet',
    ]);
  });

  test('add up where one material is given twice, named lots first', () => {
    expect(taken(drawAs(used('Paste', '120'), used('Paste', '60', { lot: 'P' })))).toEqual([
      'E1 P 60 g',
      'E1 P 40 g',
      'E1 Q 80 g',
    ]);
  });

  test('of what is not counted are not drawn and never fall short', () => {
    expect(taken(drawAs(used('Water', '3', { unit: 'l' })))).toEqual(['E1 G 4 g']);
  });

  test('are what a part is completed to, also when given in two units', () => {
    const first = drawAs(used('Paste', '150'), used('Paste', '0.1', { unit: 'kg' }));
    expect(taken(first)).toEqual(['E1 P 100 g', 'E1 Q 50 g', 'E1 Q 0.05 kg', 'E1 - Paste 0.05 kg']);
    const part = entry('E1', '2026-03-10', 'Lining', 4, { drawn: 'part', drawnFor: 4 });
    const more = ledgerOf({
      ...base,
      usageRates,
      entries: [part],
      lots: [...paste, ...glue, lot('R', 'Paste', '2026-03-03', 80)],
      movements: written(first.movements),
    });
    const rest = draw(more, TODAY).movements.map(
      ({ lot: { name }, change }) => `${name} ${change.toString()}`,
    );
    expect(rest).toEqual(['R -50']);
  });
});

describe('taking back', () => {
  test('finds the movements of a posting, whatever the case, in the order of their rows', () => {
    const movements = ['P1', 'p1', 'P2'].map((posting, place) =>
      movement(`M${9 - place}`, '2026-03-10', 'Use', 'P', 1, { posting }),
    );
    const ledger = ledgerOf({ ...base, lots: paste, movements });
    expect(movementsOfPosting(ledger, ' P1').map(({ name }) => name)).toEqual(['M9', 'M8']);
  });

  test('a part of what an entry has drawn leaves it drawn in part, and it can be completed', () => {
    const usageRates = [rate('Lining', 'Paste', 1), rate('Lining', 'Glue', 1)];
    const entries = [entry('E1', '2026-03-10', 'Lining', 4)];
    const first = draw(ledgerOf({ ...base, lots: [...paste, ...glue], usageRates, entries }), TODAY);
    const undone = reverse(first.ledger, first.movements.slice(0, 1), on(TODAY), numbered('undo'));
    expect(undone.entries.map(({ drawn: state }) => state)).toEqual(['part']);
    expect(undone.movements[0]).toMatchObject({
      kind: 'Use',
      date: on('2026-03-10'),
      entry: 'E1',
      job: 'J1',
    });
    expect(undone.movements[0]?.quantity.valueOf()).toBe(-4);
    expect(taken(draw(undone.ledger, TODAY, 'x'))).toEqual(['E1 P 4 g']);
  });
});
