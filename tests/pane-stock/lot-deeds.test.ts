import { describe, expect, test } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { quantityNumber } from '../../src/core/exact-number.ts';
import { booksIn, leftOf, opened, today } from '../helpers/opened-session.ts';
import { STUDIO } from '../helpers/studio.ts';
import { deedOn, deedsOn, doDeed, figuresOf, SHELVES } from './helpers.ts';

describe('what can be done with a lot', () => {
  test('is only what fits it', async () => {
    const { session } = await opened(SHELVES);
    expect(deedsOn(session, 'T-2')).toEqual(['Set right by a count…']);
    expect(deedsOn(session, 'G-1')).toEqual(['Open it…', 'Set right by a count…']);
    expect(deedsOn(session, 'B-1')).toEqual(['Open it…', 'Retested…', 'Set right by a count…']);
    expect(deedsOn(session, 'R-1')).toEqual([
      'Take a sheet out of use…',
      'Wet: out of action…',
      'Set right by a count…',
    ]);
    expect(deedsOn(session, 'R-2')).toContain('Dried or washed…');
    expect(deedsOn(session, 'P-0')[0]).toBe('Throw away the rest…');
  });

  test('a container that is opened becomes a lot of its own; its quantity is proposed by the pack', async () => {
    const { session } = await opened(SHELVES);
    const quantity = deedOn(session, 'G-1', 'open').fields.find(({ name }) => name === 'quantity');
    expect(quantity?.start).toBe('50');
    const done = await doDeed(session, 'G-1', 'open');
    expect(done.posting).not.toBeNull();
    expect(leftOf(session, 'G-1')).toBe(100);
    const child = booksIn(session).ledger.studio.lots.find(({ record }) => record.opened !== null);
    expect(done.sentence).toBe(`Opened: 50 g of lot G-1, which is lot ${child?.name} now.`);
    expect(child?.record.opened).toBe(today);
    // Another container can be opened after it.
    expect(deedsOn(session, 'G-1')[0]).toBe('Open it…');
    const undone = await session.undo(done.posting ?? '');
    expect(undone.kind).toBe('done');
    expect(leftOf(session, 'G-1')).toBe(150);
  });

  test('without a quantity the whole lot is open', async () => {
    const { session } = await opened(SHELVES);
    const done = await doDeed(session, 'B-1', 'open', { quantity: '', date: '2026-04-01' });
    expect(done.sentence).toBe('Opened: lot B-1, on 1 Apr 2026.');
    expect(done.posting).toBeNull();
    expect(deedsOn(session, 'B-1')).not.toContain('Open it…');
  });

  test('a test is written down with who made it and what was measured', async () => {
    const { session } = await opened(SHELVES);
    const read = deedOn(session, 'B-1', 'retest').read({ on: '2026-04-03', until: '', by: ' ', ph: 'high' });
    expect(read).toEqual({
      ok: false,
      problems: {
        until: 'Give a day of the calendar.',
        by: 'Say who tested it.',
        ph: 'high can’t be read as a number: a plain number is right, such as 12.5.',
      },
    });
    await doDeed(session, 'B-1', 'retest', { until: '2026-06-30', by: 'A. K.', ph: '8.2' });
    const { lot, goodUntil } = figuresOf(session, 'B-1');
    expect(goodUntil === null ? null : isoDay(goodUntil)).toBe('2026-06-30');
    expect([lot.record.retestedBy, lot.record.ph?.valueOf()]).toEqual(['A. K.', 8.2]);
  });

  test('what would be refused is said before anything is written', async () => {
    const { session } = await opened(SHELVES);
    const read = deedOn(session, 'B-1', 'retest').read({
      on: '2026-04-03',
      until: '2026-04-01',
      by: 'A',
      ph: '',
    });
    expect(read.ok && read.refusalIn(booksIn(session))).toMatch(/is before that/);
  });

  test('a sheet that is taken out of use leaves its rest as waste: half where nobody knows', async () => {
    const { session } = await opened(SHELVES);
    expect((await doDeed(session, 'R-1', 'retire', { presses: '8' })).sentence).toBe(
      'Out of use: a sheet of lot R-1, with 2 uses left in it.',
    );
    expect(leftOf(session, 'R-1')).toBe(4.8);
    const unknown = await doDeed(session, 'R-1', 'retire');
    expect(unknown.remarks.join(' ')).toMatch(/half of its uses/);
    expect(leftOf(session, 'R-1')).toBe(4.3);
  });

  test('wet sheets are set aside and come back with uses', async () => {
    const { session } = await opened(SHELVES);
    await doDeed(session, 'R-2', 'wet');
    expect(figuresOf(session, 'R-2').state).toBe('Set aside');
    expect(leftOf(session, 'R-2')).toBe(3.4);
    const done = await doDeed(session, 'R-2', 'back', { how: 'washed', uses: '5' });
    expect(done.sentence).toBe('Back in use: lot R-2, washed, 5 uses put back.');
    expect(figuresOf(session, 'R-2').state).toBe('Usable');
    expect(leftOf(session, 'R-2')).toBe(3.9);
  });

  test('a count is posted by the weight of the jar, with its worth', async () => {
    const { session } = await opened(SHELVES);
    // 150 g cost 30 EUR; 252.4 g with the jar of 112.4 g are 140 g: 10 g less, 2 EUR.
    const done = await doDeed(session, 'G-1', 'count', { gross: '252.4' });
    expect(done.sentence).toBe('Counted: lot G-1, 140 g: 10 g less than expected, worth 2.00 EUR.');
    expect(leftOf(session, 'G-1')).toBe(140);
    const same = await doDeed(session, 'G-1', 'count', { quantity: '140' });
    expect(same.sentence).toBe('Counted: lot G-1, 140 g: as expected.');
    const nothing = deedOn(session, 'G-1', 'count').read({ gross: '', quantity: '' });
    expect(nothing).toEqual({ ok: false, problems: { gross: 'Give what is left of it.' } });
  });

  test('what has gone off is thrown away with its worth told, and can be taken back', async () => {
    const { session } = await opened(SHELVES);
    const done = await doDeed(session, 'P-0', 'discard');
    expect(done.sentence).toBe('Thrown away: lot P-0, worth 0.60 EUR.');
    expect(leftOf(session, 'P-0')).toBe(0);
    await session.undo(done.posting ?? '');
    expect(leftOf(session, 'P-0')).toBe(50);
  });

  test('nothing fits a lot that is still to come, or is discarded', async () => {
    const future = { ...STUDIO.Tissue[1], Received: STUDIO.Tissue[0]['Use by'] };
    const { session } = await opened({
      ...STUDIO,
      Tissue: [{ ...STUDIO.Tissue[0], State: 'Discarded' }, future],
    });
    expect(deedsOn(session, 'T-1')).toEqual([]);
    expect(deedsOn(session, 'T-2')).toEqual([]);
    expect(quantityNumber(figuresOf(session, 'T-1').left)).toBe(2);
  });
});
