import { planBatch } from '../../src/actions/make-batch.ts';
import { EMPTY_MAKE, type MakeDraft } from '../../src/pane/make/make-draft.ts';
import { type MakeWork, workOutBatch } from '../../src/pane/make/make-work.ts';
import type { Session } from '../../src/session/session.ts';
import { date, type Literal } from '../helpers/literal.ts';
import { booksIn, today } from '../helpers/opened-session.ts';
import { STUDIO } from '../helpers/studio.ts';

export const PASTE = 'Wheat starch paste';

/** The small studio with water in its paste, a size that is made of paste, and a bath that was used by two jobs. */
export const KITCHEN: Literal = {
  ...STUDIO,
  Materials: [
    ...STUDIO.Materials,
    { Material: 'Thin size', Kind: 'Paste', 'Stock unit': 'g' },
    { Material: 'Chalk powder', Kind: 'Buffer', 'Stock unit': 'g', Hazards: 'H000' },
    { Material: 'Chalk bath', Kind: 'Buffer', 'Stock unit': 'ml' },
  ],
  Recipes: [
    {
      Recipe: 'Paste, thick',
      Makes: PASTE,
      Yield: 200,
      Unit: 'g',
      'Life days': 5,
      'Life cold days': 7,
      'Ready after hours': 2,
      'Smallest batch': 50,
      Method: 'Cook and sieve.',
      Cautions: 'Hot plate.',
    },
    { Recipe: 'Size', Makes: 'Thin size', Yield: 400, Unit: 'g', 'Life days': 2 },
    { Recipe: 'Bath', Makes: 'Chalk bath', Yield: 1, Unit: 'l', 'Life days': 30 },
  ],
  RecipeParts: [
    { Recipe: 'Paste, thick', Material: 'Wheat starch', Quantity: 40, Unit: 'g' },
    { Recipe: 'Paste, thick', Material: 'Deionised water', Quantity: 200, Unit: 'ml' },
    { Recipe: 'Size', Material: PASTE, Quantity: 200, Unit: 'g' },
    { Recipe: 'Size', Material: 'Deionised water', Quantity: 200, Unit: 'ml' },
    { Recipe: 'Bath', Material: 'Chalk powder', Quantity: 2, Unit: 'g' },
  ],
  Buffers: [
    {
      Lot: 'C-1',
      Material: 'Chalk powder',
      Received: date('2026-01-05'),
      Quantity: 100,
      Unit: 'g',
      Cost: 5,
    },
    {
      Lot: 'B-1',
      Material: 'Chalk bath',
      Received: date('2026-04-01'),
      Quantity: 2,
      Unit: 'l',
      Cost: 4,
      Recipe: 'Bath',
      Place: 'Fridge',
    },
  ],
  Treatments: [...STUDIO.Treatments, { Treatment: 'Bathe', 'Extent unit': 'leaf' }],
  UsageRates: [
    ...STUDIO.UsageRates,
    { Treatment: 'Bathe', Material: 'Chalk bath', 'Quantity per extent': 100, Unit: 'ml' },
    { Treatment: 'Bathe', Material: 'Silicone release paper', 'Quantity per extent': 1, Unit: 'use' },
  ],
  Movements: [
    {
      Movement: 'M-1',
      Date: date('2026-04-02'),
      Kind: 'Use',
      Lot: 'B-1',
      Quantity: 600,
      Unit: 'ml',
      Job: '26-014',
    },
    {
      Movement: 'M-2',
      Date: date('2026-04-02'),
      Kind: 'Use',
      Lot: 'B-1',
      Quantity: 0.4,
      Unit: 'l',
      Job: '26-015',
      Item: 'A',
    },
  ],
};

/** The form as the pane would work it out. */
export function workIn(session: Session, draft: Partial<MakeDraft>): MakeWork {
  const { ledger, snapshot } = booksIn(session);
  return workOutBatch(
    { ...EMPTY_MAKE, ...draft },
    {
      ledger,
      today,
      planBatch: (request) => planBatch(snapshot, request, today),
      planTreatment: (request) => session.planTreatment(request),
    },
  );
}

export function problemsIn(work: MakeWork): (readonly [string, string])[] {
  return work.problems.map(({ field, message }) => [field, message] as const);
}
