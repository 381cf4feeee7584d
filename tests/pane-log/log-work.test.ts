import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quantityNumber, sum } from '../../src/core/exact-number.ts';
import { costIn } from '../../src/core/ledger.ts';
import { totalCost } from '../../src/core/lot-account.ts';
import type { Entry } from '../../src/core/studio.ts';
import { withLine } from '../../src/pane/log/draft.ts';
import type { LogWork } from '../../src/pane/log/log-work.ts';
import {
  addableMaterials,
  amountText,
  joinLine,
  type MaterialLine,
  splitLine,
  useFor,
} from '../../src/pane/log/material-lines.ts';
import { missingWords, takeWords } from '../../src/pane/log/plan-words.ts';
import { hazardsOf, hazardsOfEntries } from '../../src/pane/parts/hazard-words.ts';
import { booksOf, MEND, openSession, PASTE, problemsIn, workIn } from './helpers.ts';

function lineIn(work: LogWork, of: string): MaterialLine {
  const line = work.lines.find(({ draft }) => draft.of === of);
  if (line === undefined) throw new Error(`there is no line of ${of}`);
  return line;
}

function useIn(work: LogWork, of: string) {
  if (work.asked === null) throw new Error('nothing is asked yet');
  const use = useFor(work.asked.plan, lineIn(work, of));
  if (use === null) throw new Error(`none of ${of} is taken`);
  return use;
}

const takesIn = (work: LogWork, of: string) =>
  useIn(work, of).takes.map(({ lot, lotIs, quantity }) => [lot.name, quantityNumber(quantity), lotIs]);

describe('the lines', () => {
  test('by the rates: what each takes, from which lots, assumed', async () => {
    const { session } = await openSession();
    const work = workIn(session, MEND);
    expect(work.lines.map(({ material, byRates }) => [material.name, byRates?.valueOf()])).toEqual([
      ['Repair tissue 5', 3],
      [PASTE, 30],
      ['Silicone release paper', 6],
    ]);
    expect(takesIn(work, 'Repair tissue 5')).toEqual([
      ['T-1', 2, 'assumed'],
      ['T-2', 1, 'assumed'],
    ]);
    expect(work.asked?.request.asUsed).toEqual([]);
  });

  test('another amount stands in for the rates, which stay on view', async () => {
    const { session } = await openSession();
    const work = workIn(session, withLine(MEND, PASTE, { amount: '12.5' }));
    expect(takesIn(work, PASTE)).toEqual([['P-1', 12.5, 'assumed']]);
    expect(lineIn(work, PASTE).byRates?.valueOf()).toBe(30);
    expect(work.asked?.request.asUsed).toHaveLength(1);
  });

  test('a named lot is confirmed, with the amount by the rates', async () => {
    const { session } = await openSession();
    const work = workIn(session, withLine(MEND, PASTE, { lot: ' p-2 ' }));
    expect(takesIn(work, PASTE)).toEqual([['P-2', 30, 'confirmed']]);
  });

  test('a lot that has gone off can be named, and is shown as such', async () => {
    const { session } = await openSession();
    const work = workIn(session, withLine(MEND, PASTE, { lot: 'P-0' }));
    const use = useIn(work, PASTE);
    expect(takeWords(use, use.takes[0] ?? expect.unreachable())).toEqual({
      keeps: 'good until 6 Mar 2026',
      doubt: 'gone off after 6 Mar 2026',
    });
  });

  test('none used leaves the line on view and takes nothing of it', async () => {
    const { session } = await openSession();
    const work = workIn(session, withLine(MEND, PASTE, { amount: '0' }));
    expect(work.asked?.plan.uses.map(({ material }) => material.name)).not.toContain(PASTE);
    expect(lineIn(work, PASTE).byRates?.valueOf()).toBe(30);
    expect(problemsIn(work)).toEqual([]);
  });

  test('an alternative is taken with its own amount', async () => {
    const { session } = await openSession();
    const size = { ...MEND, treatment: 'Size', extent: '8' };
    expect(lineIn(workIn(session, size), PASTE).alternatives.map(({ material }) => material.name)).toEqual([
      PASTE,
      'Methylcellulose',
    ]);
    const work = workIn(session, withLine(size, PASTE, { instead: 'Methylcellulose' }));
    expect(work.asked?.plan.uses.map(({ material }) => material.name)).toEqual(['Methylcellulose']);
    expect(takesIn(work, PASTE)).toEqual([['M-1', 8, 'assumed']]);
    expect(amountText(lineIn(work, PASTE))).toBe('8');
  });

  test('split: what the first lot gives, the rest from the second, and back again', async () => {
    const { session } = await openSession();
    const long = { ...MEND, extent: '50' };
    const before = workIn(session, long);
    const split = splitLine(lineIn(before, PASTE), useIn(before, PASTE));
    expect(split).toEqual({ amount: '200', lot: 'P-1', second: { amount: '50', lot: 'P-2' } });
    const work = workIn(session, withLine(long, PASTE, split));
    expect(takesIn(work, PASTE)).toEqual([
      ['P-1', 200, 'confirmed'],
      ['P-2', 50, 'confirmed'],
    ]);
    expect(joinLine(lineIn(work, PASTE))).toEqual({ amount: null, second: null });
  });

  test('the two parts of a split may be one lot and the draw order', async () => {
    const { session } = await openSession();
    const work = workIn(
      session,
      withLine(MEND, PASTE, { amount: '10', lot: 'P-2', second: { amount: '15', lot: '' } }),
    );
    expect(takesIn(work, PASTE)).toEqual([
      ['P-2', 10, 'confirmed'],
      ['P-1', 15, 'assumed'],
    ]);
    expect(joinLine(lineIn(work, PASTE))).toEqual({ amount: '25', second: null });
  });

  test('a material that no rate names is taken too, once it says how much', async () => {
    const { session } = await openSession();
    const added = withLine(MEND, 'Thread', { amount: '' }, true);
    expect(problemsIn(workIn(session, added))).toEqual([
      ['amount of Thread', 'Say how much of Thread was used; 0 if none was.'],
    ]);
    const work = workIn(session, withLine(added, 'Thread', { amount: '1.5' }, true));
    expect(takesIn(work, 'Thread')).toEqual([['S-1', 1.5, 'assumed']]);
    expect(lineIn(work, 'Thread')).toMatchObject({ isAdded: true, byRates: null });
  });

  test('what can be added is counted and on no line yet, alternatives included', async () => {
    const { session } = await openSession();
    const { lines } = workIn(session, { ...MEND, treatment: 'Size' });
    expect(addableMaterials(lines, booksOf(session).ledger.studio).map(({ name }) => name)).toEqual([
      'Repair tissue 5',
      'Wheat starch',
      'Silicone release paper',
      'Thread',
    ]);
  });

  test.each([
    [{ amount: 'some' }, 'amount', /some can’t be read as a number/],
    [{ amount: '-1' }, 'amount', /0 or more/],
    [{ lot: 'W-1' }, 'lot', /Lot W-1 is a lot of Wheat starch, not of Wheat starch paste/],
    [{ lot: 'P-9' }, 'lot', /no lot of Wheat starch paste called P-9/],
    [{ amount: '1', second: { amount: '', lot: '' } }, 'second amount', /Say how much/],
    [{ amount: '1', second: { amount: '2', lot: 'T-1' } }, 'second lot', /not of Wheat starch paste/],
  ])('%j is told at its own field, and the rest is planned by the rates', async (change, part, message) => {
    const { session } = await openSession();
    const work = workIn(session, withLine(MEND, PASTE, change));
    expect(work.problems.map(({ field }) => field)).toEqual([`${part} of ${PASTE}`]);
    expect(work.problems[0]?.message).toMatch(message);
    expect(useIn(work, PASTE).quantity.valueOf()).toBe(30);
  });
});

describe('words', () => {
  test('what is missing is said with what is there, and where it was looked for', async () => {
    const { session } = await openSession();
    const long = { ...MEND, extent: '100' };
    const byRules = workIn(session, long);
    expect(missingWords(useIn(byRules, PASTE), lineIn(byRules, PASTE))).toBe(
      'Only 300 g of 500 g is there: the rest stays noticed until a lot is received, made or counted.',
    );
    const named = workIn(session, withLine(MEND, PASTE, { amount: '120', lot: 'P-2' }));
    expect(missingWords(useIn(named, PASTE), lineIn(named, PASTE))).toMatch(
      /^Only 100 g of 120 g is in P-2: /,
    );
    const both = { amount: '120', lot: 'P-2', second: { amount: '300', lot: '' } };
    const split = workIn(session, withLine(MEND, PASTE, both));
    expect(missingWords(useIn(split, PASTE), lineIn(split, PASTE))).toMatch(
      /^Only 300 g of 420 g is there: /,
    );
    const none = { ...useIn(byRules, PASTE), missing: useIn(byRules, PASTE).quantity };
    expect(missingWords(none, lineIn(byRules, PASTE))).toBe(
      'None of the 500 g is there: it stays noticed until a lot is received, made or counted.',
    );
    const enough = workIn(session, MEND);
    expect(missingWords(useIn(enough, PASTE), lineIn(enough, PASTE))).toBeNull();
  });

  test('hazards are repeated as the workbook names them', async () => {
    const { session } = await openSession();
    const work = workIn(
      session,
      withLine({ ...MEND, treatment: 'Size' }, PASTE, { instead: 'Methylcellulose' }),
    );
    const materials = (of: typeof work) => (of.asked?.plan.uses ?? []).map(({ material }) => material);
    expect(hazardsOf(materials(work))).toEqual([{ material: 'Methylcellulose', says: 'H000' }]);
    expect(hazardsOf(materials(workIn(session, MEND)))).toEqual([]);
  });

  test('the hazards of entries are those of all that their treatments take, each once', () => {
    const hazardous = { name: 'Limewater', record: { hazards: 'H318' }, recipe: null };
    const made = { name: 'Bath', record: { hazards: null }, recipe: { record: { cautions: 'goggles' } } };
    const plain = { name: 'Tissue', record: { hazards: null }, recipe: null };
    const entry = { treatment: { rates: [hazardous, made, plain].map((material) => ({ material })) } };
    const entries = [entry, entry] as unknown as readonly Entry[];
    expect(hazardsOfEntries(entries)).toEqual([
      { material: 'Limewater', says: 'H318' },
      { material: 'Bath', says: 'goggles' },
    ]);
  });
});

describe('what is shown is what is logged', () => {
  const amount = fc.option(fc.integer({ min: 0, max: 4000 }).map((hundredths) => String(hundredths / 100)));
  const lot = fc.constantFrom('', 'P-1', 'P-2', 'P-0');

  test('the same quantities of the same lots, at the same cost', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 1, max: 60 }),
        amount,
        lot,
        fc.option(fc.record({ amount: fc.constantFrom('0', '7.5', '150'), lot })),
        async (extent, first, named, second) => {
          const { session } = await openSession();
          // Two parts of one lot are two rows of it in the ledger and one take after the other in the plan.
          const split = second === null ? null : { ...second, lot: second.lot === named ? '' : second.lot };
          const draft = withLine({ ...MEND, extent: String(extent) }, PASTE, {
            amount: split === null ? first : (first ?? '1'),
            lot: named,
            second: split,
          });
          const { asked, problems } = workIn(session, draft);
          expect(problems).toEqual([]);
          if (asked === null) throw new Error('nothing is asked');
          const done = await session.log(asked.request, asked.plan);
          if (done.kind !== 'done') throw new Error(done.message);
          const movements = done.drawing?.movements ?? [];
          const shown = asked.plan.uses.flatMap(({ takes }) => takes);
          expect(movements.map((each) => [each.lot.name, each.lotIs, quantityNumber(each.quantity)])).toEqual(
            shown.map((take) => [take.lot.name, take.lotIs, quantityNumber(take.quantity)]),
          );
          const ledger = done.drawing?.ledger ?? expect.unreachable();
          const costs = movements.map((movement) => costIn(ledger, movement));
          expect(asked.plan.cost).toBe(totalCost(costs));
          for (const use of asked.plan.uses) {
            const taken = sum(use.takes.map(({ quantity }) => quantity));
            expect(quantityNumber(taken.add(use.missing))).toBe(quantityNumber(use.quantity));
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});
