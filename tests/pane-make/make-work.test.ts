import { describe, expect, test } from 'vitest';
import { decimal, quantityNumber } from '../../src/core/exact-number.ts';
import { accountIn } from '../../src/core/ledger.ts';
import { leftOn } from '../../src/core/lot-account.ts';
import { currencyOf } from '../../src/core/money.ts';
import { unitNamed } from '../../src/core/unit.ts';
import { withLine } from '../../src/pane/log/draft.ts';
import { useFor } from '../../src/pane/log/material-lines.ts';
import { missingWords } from '../../src/pane/log/plan-words.ts';
import { EMPTY_MAKE, linesIn, type MakeDraft, NO_POUR } from '../../src/pane/make/make-draft.ts';
import { makeIt } from '../../src/pane/make/make-it.ts';
import { recipeMeant, recipeOptions, unitOptions, usualPlace } from '../../src/pane/make/make-options.ts';
import { BATCH_WORDS, keepsWords, readyWords, unitCostWords } from '../../src/pane/make/make-words.ts';
import type { MakeWork } from '../../src/pane/make/make-work.ts';
import { booksIn, leftOf, logged, opened, today } from '../helpers/opened-session.ts';
import { KITCHEN, problemsIn, workIn } from './helpers.ts';

const THICK = { recipe: 'Paste, thick' };

function askedIn(work: MakeWork) {
  if (work.asked === null) throw new Error(work.refusal ?? 'nothing is asked yet');
  return work.asked;
}

function takesIn(work: MakeWork) {
  return askedIn(work).uses.map(({ material, takes }) => [
    material.name,
    takes.map(({ lot, lotIs, quantity }) => [lot.name, quantityNumber(quantity), lotIs]),
  ]);
}

function changed(draft: Partial<MakeDraft>, material: string, change: Parameters<typeof withLine>[2]) {
  const whole = { ...EMPTY_MAKE, ...draft };
  return { ...whole, lines: withLine(linesIn(whole), material, change).lines };
}

describe('a batch by its recipe', () => {
  test('as much as the recipe yields, from the lots in draw order, at their cost', async () => {
    const { session } = await opened(KITCHEN);
    const work = workIn(session, THICK);
    // 40 g of a kilogram for 12 EUR; water from the wall has no lot.
    expect(takesIn(work)).toEqual([['Wheat starch', [['W-1', 40, 'assumed']]]]);
    const { plan } = askedIn(work);
    expect(plan.cost).toBe(48n);
    expect(plan.parts.map(({ material }) => material.name)).toEqual(['Wheat starch', 'Deionised water']);
    expect(problemsIn(work)).toEqual([]);
  });

  test('another amount in another unit scales it', async () => {
    const { session } = await opened(KITCHEN);
    const work = workIn(session, { ...THICK, amount: '0.1', unit: 'kg' });
    expect(takesIn(work)).toEqual([['Wheat starch', [['W-1', 20, 'assumed']]]]);
    expect(askedIn(work).plan.cost).toBe(24n);
  });

  test('what was weighed in the end changes no ingredient, and the cost per unit', async () => {
    const { session } = await opened(KITCHEN);
    const { plan } = askedIn(workIn(session, { ...THICK, yielded: '160' }));
    expect(plan.cost).toBe(48n);
    expect(quantityNumber(plan.yielded)).toBe(160);
    const euro = currencyOf('EUR', null);
    // 0.48 ÷ 160 is 0.003 a gram.
    expect(unitCostWords(48n, plan.yielded, plan.unit, euro)).toBe('0.30 EUR per 100 g');
    expect(unitCostWords(480n, decimal('2'), unitNamed('sheet'), euro)).toBe('2.40 EUR per sheet');
    expect(unitCostWords(0n, decimal('2'), unitNamed('g'), euro)).toBe('0.00 EUR per g');
  });

  test('until when it is good follows the place, and when it is ready is said', async () => {
    const { session } = await opened(KITCHEN);
    const room = askedIn(workIn(session, THICK)).plan;
    const cold = askedIn(workIn(session, { ...THICK, place: 'Fridge' })).plan;
    expect(keepsWords(room)).toMatch(/^Good until 8 Apr 2026: made 3 Apr 2026, keeps 5 days/);
    expect(keepsWords(cold)).toMatch(/^Good until 10 Apr 2026: made 3 Apr 2026, keeps 7 days/);
    expect(readyWords(room)).toBe('Ready after 2 hours.');
  });

  test('another amount and a named lot stand in for the recipe', async () => {
    const { session } = await opened(KITCHEN);
    const work = workIn(session, changed(THICK, 'Wheat starch', { amount: '45', lot: 'w-1' }));
    expect(takesIn(work)).toEqual([['Wheat starch', [['W-1', 45, 'confirmed']]]]);
    expect(work.lines.map(({ byRates }) => byRates?.valueOf())).toEqual([40]);
    const wrong = workIn(session, changed(THICK, 'Wheat starch', { lot: 'P-1' }));
    expect(problemsIn(wrong)).toEqual([
      ['lot of Wheat starch', 'Lot P-1 is a lot of Wheat starch paste, not of Wheat starch.'],
    ]);
  });

  test('what is short is named, with what is made first', async () => {
    const { session } = await opened(KITCHEN);
    const work = workIn(session, { recipe: 'Size', amount: '600' });
    const { plan } = askedIn(work);
    const [part] = plan.parts;
    expect(part?.missing.valueOf()).toBe(100);
    expect(part?.makeFirst?.name).toBe('Paste, thick');
    const line = work.lines[0] ?? expect.unreachable();
    const use = useFor(askedIn(work), line) ?? expect.unreachable();
    expect(missingWords(use, line, BATCH_WORDS)).toBe(
      'Only 200 g of 300 g is there: the rest is left out, and the Notes of the lot say so.',
    );
  });

  test.each([
    [{ recipe: '' }, 'recipe', /Say what is to be made/],
    [{ recipe: 'Paste, thikc' }, 'recipe', /Did you mean Paste, thick\?/],
    [{ ...THICK, amount: '' }, 'amount', /a number, in g/],
    [{ ...THICK, amount: '1,5' }, 'amount', /with a point for the decimals/],
    [{ ...THICK, amount: '0' }, 'amount', /above 0/],
    [{ ...THICK, date: '' }, 'date', /no day that can be read/],
    [{ ...THICK, yielded: 'a pot' }, 'yielded', /can’t be read as a number/],
    [{ ...THICK, place: 'Frigde' }, 'place', /Did you mean Fridge\?/],
  ])('%j is told at its field', async (draft, field, message) => {
    const { session } = await opened(KITCHEN);
    const problems = problemsIn(workIn(session, draft));
    expect(problems.map(([name]) => name)).toEqual([field]);
    expect(problems[0]?.[1]).toMatch(message);
  });
});

describe('pouring', () => {
  const POUR = { ...NO_POUR, job: '26-014', treatment: 'Bathe', extent: '4' };

  test('what the treatment takes besides is shown, and none of what is poured', async () => {
    const { session } = await opened(KITCHEN);
    const work = workIn(session, { recipe: 'Bath', pour: POUR });
    expect(problemsIn(work)).toEqual([]);
    expect(work.besides?.uses.map(({ material }) => material.name)).toEqual(['Silicone release paper']);
    expect(askedIn(work).request.pour).toMatchObject({ job: '26-014', treatment: 'Bathe', amount: null });
  });

  test.each([
    [{ ...POUR, job: '' }, 'pour-job', /for which job/],
    [{ ...POUR, job: '26-0140' }, 'pour-job', /Did you mean 26-014/],
    [{ ...POUR, item: 'Z' }, 'pour-item', /no item/],
    [{ ...POUR, treatment: '' }, 'pour-treatment', /which treatment/],
    [{ ...POUR, treatment: 'Examine' }, 'pour-treatment', /Examine takes no Chalk bath/],
    [{ ...POUR, extent: '' }, 'pour-extent', /in leaf/],
    [{ ...POUR, amount: 'half' }, 'pour-amount', /can’t be read/],
  ])('%j is told at its field, and the batch is planned all the same', async (pour, field, message) => {
    const { session } = await opened(KITCHEN);
    const work = workIn(session, { recipe: 'Bath', pour });
    expect(problemsIn(work).map(([name]) => name)).toEqual([field]);
    expect(problemsIn(work)[0]?.[1]).toMatch(message);
    expect(askedIn(work).request.pour).toBeNull();
  });
});

describe('what may be chosen', () => {
  test('recipes say what they make, units convert, the place is that of the last batch', async () => {
    const { session } = await opened(KITCHEN);
    const { studio } = booksIn(session).ledger;
    expect(recipeOptions(studio).map(({ value, detail }) => [value, detail])).toEqual([
      ['Paste, thick', 'yields 200 g of Wheat starch paste'],
      ['Size', 'yields 400 g of Thin size'],
      ['Bath', 'yields 1 l of Chalk bath'],
    ]);
    const bath = studio.recipesByKey.get('bath') ?? expect.unreachable();
    const made = studio.materialsByKey.get('chalk bath') ?? expect.unreachable();
    const units = unitOptions(bath, made).map(({ value }) => value);
    expect(units[0]).toBe('l');
    expect(units).toContain('ml');
    // No density says how much a litre of it weighs.
    expect(units).not.toContain('g');
    expect(usualPlace(studio, bath)).toBe('Fridge');
  });

  test('the code on a jar and a material mean the recipe by which it is made', async () => {
    const { session } = await opened(KITCHEN);
    const { studio } = booksIn(session).ledger;
    const meant = (text: string) => recipeMeant(studio, text)?.name ?? null;
    expect(['size', 'p-1', 'wheat starch PASTE', 'W-1', ''].map(meant)).toEqual([
      'Size',
      'Paste, thick',
      'Paste, thick',
      null,
      null,
    ]);
  });
});

describe('making', () => {
  test('what was shown is what is written, under one posting, and the lot is named', async () => {
    const { session } = await opened(KITCHEN);
    const work = workIn(session, { ...THICK, yielded: '160' });
    const { done, lot } = await makeIt(session, { ...askedIn(work), besides: work.besides });
    if (done.kind !== 'done' || lot === null) throw new Error('nothing was made');
    expect(done.sentence).toBe(
      `Made: 160 g of Wheat starch paste, lot ${lot.name}, EUR 0.48, good until 8 Apr 2026.`,
    );
    expect(done.posting).not.toBeNull();
    expect(leftOf(session, 'W-1')).toBe(0.96);
    expect(leftOf(session, lot.name)).toBe(160);
    const undone = await session.undo(done.posting ?? '');
    expect(undone.kind).toBe('done');
    expect(leftOf(session, 'W-1')).toBe(1);
    expect(leftOf(session, lot.name)).toBe(0);
  });

  test('made and poured in one go', async () => {
    const { session } = await opened(KITCHEN);
    const work = workIn(session, {
      recipe: 'Bath',
      pour: { ...NO_POUR, job: '26-014', treatment: 'Bathe', extent: '4', amount: '0.7' },
    });
    const { done, lot } = await makeIt(session, { ...askedIn(work), besides: work.besides });
    if (done.kind !== 'done' || lot === null) throw new Error('nothing was made');
    expect(done.sentence).toMatch(/0\.7 l poured for 26-014: Bathe\.$/);
    const { ledger } = booksIn(session);
    const account = accountIn(ledger, ledger.studio.lotsByKey.get(lot.name.toLowerCase()) ?? lot);
    expect(quantityNumber(leftOn(account, today))).toBe(0.3);
    expect(account.postings.map(({ movement }) => [movement.kind, movement.job, movement.lotIs])).toEqual([
      ['Use', '26-014', 'confirmed'],
    ]);
  });

  test('where the figures have moved since they were shown, nothing is written and she looks again', async () => {
    const { session } = await opened(KITCHEN);
    const work = workIn(session, { recipe: 'Size' });
    await logged(session);
    const { done, lot } = await makeIt(session, { ...askedIn(work), besides: work.besides });
    expect(done.kind).toBe('look again');
    expect(lot).toBeNull();
    expect(booksIn(session).ledger.studio.lots).toHaveLength(7);
  });
});
