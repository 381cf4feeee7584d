import { describe, expect, test } from 'vitest';
import type { MaterialRecord, Row } from '../../src/core/records.ts';
import { base, lotWith, paste, said, TODAY } from './helpers/one-lot.ts';
import { movement } from './helpers/stock-records.ts';
import { brief, noticesOn, on, qty } from './helpers/studio-of.ts';
import { entry, offer, rate } from './helpers/work-records.ts';

test('nothing is said where nothing is amiss', () => {
  expect(brief(noticesOn(TODAY, base))).toEqual([]);
});

describe('a rate, a lot, an offer', () => {
  test('in a unit that leads nowhere is said, once, unless the material is not counted', () => {
    const usageRates = [rate('Lining', 'Paste', 1, { unit: 'm' })];
    expect(brief(noticesOn(TODAY, { ...base, usageRates })).map((text) => text.split(' ')[0])).toEqual([
      'no-conversion',
    ]);
    expect(said('no-conversion', { usageRates, materials: [paste({ counted: false })] })).toEqual([]);
    expect(said('no-conversion', lotWith({ unit: 'sheet' }))[0]?.slice(0, 3)).toEqual(['stop', 'A', 'Unit']);
    expect(said('no-conversion', { offers: [offer('Paste', 1, 1, { unit: 'ml' })] })).toHaveLength(1);
  });
});

describe('a log entry', () => {
  test('that is not drawn is said, one after today or left out is not', () => {
    const entries = [
      entry('E1', '2026-03-05', 'Lining', '1.5', { item: '2' }),
      entry('E2', '2026-04-02', 'Lining', 1),
      entry('E3', '2026-03-05', 'Unheard of', 1),
    ];
    expect(said('not-drawn', { entries })).toEqual([
      ['warn', 'E1', 'Entry', 'Lining of 5 Mar 2026 for J1, item 2 (1.5 leaf) is not drawn yet.'],
    ]);
  });

  test('that is drawn in part is said with what is missing', () => {
    const usageRates = [rate('Lining', 'Paste', 2), rate('Lining', 'Paste', 0, { fixed: 4 })];
    const entries = [entry('E1', '2026-03-05', 'Lining', 5, { drawn: 'part', drawnFor: 5 })];
    const part = (quantity: number) =>
      said('not-drawn', {
        usageRates,
        entries,
        movements: [movement('M1', '2026-03-05', 'Use', 'A', quantity, { entry: 'E1' })],
      });
    const about = 'Lining of 5 Mar 2026 for J1 is drawn in part only';
    expect(part(10)).toEqual([['warn', 'E1', 'Drawn', `${about}; still missing: 4 g of Paste.`]]);
    expect(part(14)).toEqual([['warn', 'E1', 'Drawn', `${about}; nothing is missing any more.`]]);
  });

  test('whose Extent differs from what it was drawn for is said', () => {
    const entries = [entry('E1', '2026-03-05', 'Lining', 5, { drawn: 'yes', drawnFor: 4 })];
    const movements = [movement('M1', '2026-03-05', 'Use', 'A', 8, { entry: 'E1' })];
    expect(said('entry-changed', { entries, movements })).toEqual([
      [
        'warn',
        'E1',
        'Extent',
        'Lining of 5 Mar 2026 for J1 was drawn for 4 leaf, and Extent now says 5 leaf: ' +
          'reverse what was drawn and draw it again.',
      ],
    ]);
    const reversed = [
      ...movements,
      movement('M2', '2026-03-05', 'Use', 'A', -8, { entry: 'E1', reverses: 'M1' }),
    ];
    expect(said('entry-changed', { entries, movements: reversed })).toEqual([]);
  });
});

describe('a material', () => {
  const one = (more: Partial<Omit<MaterialRecord, keyof Row>>) => ({ materials: [paste(more)] });

  test('of which more is kept than should be is a hazard', () => {
    expect(said('hazard', one({ keepAtMost: qty(10) }))).toEqual([]);
    expect(said('hazard', one({ keepAtMost: qty('9.5') }))).toEqual([
      [
        'warn',
        'Paste',
        'Keep at most',
        'Paste: 10 g is kept, more than the 9.5 g that should be kept at most. ' +
          'Follow the safety data sheet and the local rules for storing it.',
      ],
    ]);
  });

  test('is low at its reorder point, also where more is planned than there is', () => {
    expect(said('low', one({ keepAtLeast: qty(10) }))).toHaveLength(1);
    expect(said('low', one({ keepAtLeast: qty(12) }))).toEqual([
      [
        'warn',
        'Paste',
        'Material',
        'Paste: 10 g left over, with what is on order and after what is planned; order when down to 12 g. Suggested order: 2 g.',
      ],
    ]);
    const entries = [entry('E1', '2026-02-05', 'Lining', 20)];
    expect(said('low', { ...one({ keepAtLeast: qty(12) }), entries })[0]?.[3]).toBe(
      'Paste: short by 30 g after what is planned and what the log has not drawn; order when down to 12 g. Suggested order: 42 g.',
    );
  });

  test('whose safety data sheet was last checked longer ago than sds years is said; never checked is not', () => {
    expect(said('sds-old', one({ sdsChecked: null }))).toEqual([]);
    expect(said('sds-old', one({ sdsChecked: on('2023-04-01') }))).toEqual([]);
    expect(said('sds-old', one({ sdsChecked: on('2023-03-31') }))).toEqual([
      [
        'note',
        'Paste',
        'SDS checked',
        'Paste: the safety data sheet was last checked on 31 Mar 2023, more than 3 years ago.',
      ],
    ]);
    const offers = [offer('Paste', 1, 1, { sds: '2024-01-01' })];
    expect(said('sds-old', { ...one({ sdsChecked: on('2023-03-31') }), offers })).toEqual([]);
  });

  test('a price that was not checked for a year is said', () => {
    const priced = (checked: string) => said('offer-old', { offers: [offer('Paste', 1, 1, { checked })] });
    expect(priced('2025-04-01')).toEqual([]);
    expect(priced('2025-03-31')).toEqual([
      ['note', 'Paste', 'Checked on', 'Paste: the price of S1 was last checked on 31 Mar 2025.'],
    ]);
  });
});
