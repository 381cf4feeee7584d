import { describe, expect, test } from 'vitest';
import { entryStatus } from '../../src/core/entry-needs.ts';
import type { Records } from '../../src/core/records.ts';
import { movementsOfPosting, reverse } from '../../src/core/undo.ts';
import { written } from './helpers/random-studio.ts';
import { lot, material, movement } from './helpers/stock-records.ts';
import { draw, entryNamed, ledgerOf, noticesOn, numbered, on, onlyOf, taken } from './helpers/studio-of.ts';
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
  const usageRates = [
    rate('Lining', 'Glue', 1, { choice: 'a' }),
    rate('Lining', 'Paste', 1, { choice: 'a' }),
  ];
  const recordsWith = (notes: string, more: Partial<Records> = {}) => ({
    ...base,
    lots: [...paste, ...glue],
    usageRates,
    entries: [entry('E1', '2026-03-10', 'Lining', 4, { notes })],
    ...more,
  });
  const studioWith = (notes: string, more: Partial<Records> = {}) => ledgerOf(recordsWith(notes, more));
  const drawWith = (notes: string) => draw(studioWith(notes), TODAY);

  test('stand in for the rates, choose an alternative, and may name a lot', () => {
    expect(taken(drawWith('Used: Glue=7.5 g'))).toEqual(['E1 G 7.5 g']);
    expect(taken(drawWith('the corner was brittle. Used: paste=7 g'))).toEqual(['E1 P 7 g']);
    const named = drawWith('Used: Paste=7 g@q');
    expect(named.movements.map(({ lot: { name }, lotIs }) => [name, lotIs])).toEqual([['Q', 'confirmed']]);
  });

  test('are drawn besides what the rates say of other materials', () => {
    expect(taken(drawWith('Used: Tissue=2 sheets'))).toEqual(['E1 G 4 g', 'E1 - Tissue 2 sheet']);
  });

  test('add up where one material is given twice, named lots first', () => {
    expect(taken(drawWith('Used: Paste=120 g; Paste=60 g@P'))).toEqual([
      'E1 P 60 g',
      'E1 P 40 g',
      'E1 Q 80 g',
    ]);
  });

  test('of what is not counted are not drawn and never fall short', () => {
    expect(taken(drawWith('Used: Water=3 l'))).toEqual(['E1 G 4 g']);
  });

  test('of nothing draw nothing, and leave nothing to draw', () => {
    const ledger = studioWith('Used: Glue=0 g');
    expect(entryStatus(ledger, entryNamed(ledger, 'E1'), on(TODAY))).toBe('drawn');
    expect(taken(draw(ledger, TODAY))).toEqual([]);
  });

  test('are taken again after they were taken back, from the lot that was named', () => {
    const first = drawWith('Used: Paste=7 g@Q');
    const undone = reverse(first.ledger, first.movements, on(TODAY), numbered('undo'));
    expect(taken(draw(undone.ledger, TODAY))).toEqual(['E1 Q 7 g']);
  });

  test('keep the alternative that was chosen where nothing of it was there', () => {
    const ledger = studioWith('Used: Paste=7 g', { lots: glue });
    const first = draw(ledger, TODAY);
    expect(taken(first)).toEqual(['E1 - Paste 7 g']);
    expect(taken(draw(first.ledger, TODAY))).toEqual(['E1 - Paste 7 g']);
  });

  test('are what a part is completed to, also when given in two units and of named lots', () => {
    const first = drawWith('Used: Paste=150 g@P; Paste=0.1 kg');
    expect(taken(first)).toEqual(['E1 P 100 g', 'E1 Q 0.1 kg', 'E1 - Paste 50 g']);
    const notes = 'Used: Paste=150 g; Paste=0.1 kg';
    const both = draw(studioWith(notes), TODAY);
    expect(taken(both)).toEqual(['E1 P 100 g', 'E1 Q 50 g', 'E1 Q 0.05 kg', 'E1 - Paste 0.05 kg']);
    const part = entry('E1', '2026-03-10', 'Lining', 4, { drawn: 'part', drawnFor: 4, notes });
    const more = ledgerOf({
      ...base,
      usageRates,
      entries: [part],
      lots: [...paste, ...glue, lot('R', 'Paste', '2026-03-03', 80)],
      movements: written(both.movements),
    });
    const rest = draw(more, TODAY).movements.map(
      ({ lot: { name }, change }) => `${name} ${change.toString()}`,
    );
    expect(rest).toEqual(['R -50']);
  });

  test('written otherwise are a remark like others', () => {
    for (const notes of [
      'Used: two brushes',
      'Used: Paste=about 7 g',
      'Used: Paste=7 dollops',
      'used Paste=7 g',
    ]) {
      expect(taken(drawWith(notes))).toEqual(['E1 G 4 g']);
    }
  });

  test('that name no material, or no lot of it, are noticed', () => {
    const noticed = (notes: string) => onlyOf(noticesOn(TODAY, recordsWith(notes)), 'unknown-reference');
    expect(noticed('Used: Pasta=7 g').map(({ message, subject }) => [subject, message])).toEqual([
      [
        'E1',
        'Notes gives an amount used, but there is no material Pasta: correct it, or the usage rates alone are taken.',
      ],
    ]);
    expect(noticed('Used: Paste=7 g@G')[0]?.message).toContain('there is no lot G of Paste');
    expect(taken(drawWith('Used: Paste=7 g@G'))).toEqual(['E1 P 7 g']);
    expect(noticed('Used: Paste=7 g@P')).toEqual([]);
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
