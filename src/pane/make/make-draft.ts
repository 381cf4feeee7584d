import type { Exact } from '../../core/exact-number.ts';
import { roundQuantity } from '../../core/exact-number.ts';
import { keyOf } from '../../core/identifier.ts';
import type { LinesDraft } from '../log/draft.ts';
import type { MakePreset } from '../route.ts';

/** What stands in the form of the section Make, as it was typed: nothing of it is lost by an error. */
export interface MakeDraft {
  readonly recipe: string;
  /** Null for what the recipe yields. */
  readonly amount: string | null;
  /** Null for the recipe's unit. */
  readonly unit: string | null;
  /** YYYY-MM-DD, nothing while it is incomplete; null for today, whichever day that is. */
  readonly date: string | null;
  /** Null for the place where the last batch of the recipe went. */
  readonly place: string | null;
  /** What was weighed or measured in the end; blank for as much as was meant. */
  readonly yielded: string;
  readonly by: string;
  readonly notes: string;
  readonly pour: PourDraft;
  /** What she changed about the ingredients: see LogDraft. */
  readonly lines: LinesDraft['lines'];
}

/** What is poured at once, as it was typed. */
export interface PourDraft {
  readonly job: string;
  readonly item: string;
  readonly treatment: string;
  readonly extent: string;
  /** Blank for all of it. */
  readonly amount: string;
}

/** The fields that hold text of their own. */
export type MakeText = 'recipe' | 'amount' | 'unit' | 'date' | 'place' | 'yielded' | 'by' | 'notes';

export const NO_POUR: PourDraft = { job: '', item: '', treatment: '', extent: '', amount: '' };

export const EMPTY_MAKE: MakeDraft = {
  recipe: '',
  amount: null,
  unit: null,
  date: null,
  place: null,
  yielded: '',
  by: '',
  notes: '',
  pour: NO_POUR,
  lines: {},
};

/** The draft with another text in a field. Another recipe has another yield, unit, place and treatments. */
export function withMakeText(draft: MakeDraft, field: MakeText, text: string): MakeDraft {
  const changed = { ...draft, [field]: text };
  if (field !== 'recipe' || keyOf(text) === keyOf(draft.recipe)) return changed;
  const { job, item } = draft.pour;
  return {
    ...changed,
    amount: null,
    unit: null,
    place: null,
    yielded: '',
    pour: { ...NO_POUR, job, item },
  };
}

/** The draft with another text in a field of what is poured. Another job has other items. */
export function withPour(draft: MakeDraft, field: keyof PourDraft, text: string): MakeDraft {
  const pour = { ...draft.pour, [field]: text };
  const isOther = field === 'job' && keyOf(text) !== keyOf(draft.pour.job);
  return { ...draft, pour: isOther ? { ...pour, item: '' } : pour };
}

/** Whether any of it is to be poured at once. */
export function isPoured({ pour }: MakeDraft): boolean {
  return Object.values(pour).some((text: string) => text.trim() !== '');
}

/** The draft's lines, kept by its recipe. */
export function linesIn({ recipe, lines }: MakeDraft): LinesDraft {
  return { treatment: recipe, lines };
}

/** The draft after it was made: who did it stays. */
export function afterMaking({ by }: MakeDraft): MakeDraft {
  return { ...EMPTY_MAKE, by };
}

/** Whether filling in something else would overwrite what she typed herself. */
export function holdsMaking(draft: MakeDraft): boolean {
  return JSON.stringify(afterMaking(draft)) !== JSON.stringify({ ...draft, recipe: '' });
}

/** A draft that starts from a preset; who did it stays. */
export function withMakePreset(draft: MakeDraft, { recipe, amount, unit }: MakePreset): MakeDraft {
  return {
    ...afterMaking(draft),
    recipe,
    amount: amount === null ? null : writtenUp(amount),
    unit: unit?.name ?? null,
  };
}

/** A quantity as it would be typed, so that no less of it is made. */
function writtenUp(amount: Exact): string {
  return roundQuantity(amount.ceil(3)).toString();
}
