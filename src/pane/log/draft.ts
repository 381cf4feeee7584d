import { roundQuantity } from '../../core/exact-number.ts';
import { keyOf } from '../../core/identifier.ts';
import type { LogPreset } from '../route.ts';

/** What stands in the form of the section Log, as it was typed: nothing of it is lost by an error. */
export interface LogDraft {
  /** Null for the job that is offered: the last one logged that is on the bench. */
  readonly job: string | null;
  readonly item: string;
  readonly treatment: string;
  readonly extent: string;
  /** YYYY-MM-DD, nothing while it is incomplete; null for today, whichever day that is. */
  readonly date: string | null;
  readonly minutes: string;
  readonly by: string;
  readonly notes: string;
  /** What she changed about a material, by the keys of treatment and material (see lineKey): it is there again when she comes back to the treatment. */
  readonly lines: Readonly<Record<string, LineDraft>>;
}

/** A draft as far as its lines go: what they belong to, a treatment or a recipe, and what she changed about them. */
export type LinesDraft = Pick<LogDraft, 'treatment' | 'lines'>;

/** Changes lines, whatever else the draft holds. */
export type LinesChange = <Draft extends LinesDraft>(now: Draft) => Draft;

/** What she changed about what is taken of one material. */
export interface LineDraft {
  /** The material by the rates, or one that she added: the line stands under it, whatever alternative is taken. */
  readonly of: string;
  /** The alternative that is taken instead; null for the one by the rates. */
  readonly instead: string | null;
  /** Null for the amount by the rates. */
  readonly amount: string | null;
  /** The lot as she typed or scanned it; blank for the draw order. */
  readonly lot: string;
  /** What is taken of a second lot; null for none. */
  readonly second: { readonly amount: string; readonly lot: string } | null;
}

/** The fields that hold text of their own. */
export type TextField = 'job' | 'item' | 'treatment' | 'extent' | 'minutes' | 'by' | 'notes';

export const EMPTY_DRAFT: LogDraft = {
  job: null,
  item: '',
  treatment: '',
  extent: '',
  date: null,
  minutes: '',
  by: '',
  notes: '',
  lines: {},
};

const PLAIN_LINE: Omit<LineDraft, 'of'> = { instead: null, amount: null, lot: '', second: null };

/** The draft with another text in a field. Another job has other items, so the item goes with it. */
export function withText(draft: LogDraft, field: TextField, text: string): LogDraft {
  const changed = { ...draft, [field]: text };
  return field === 'job' && keyOf(text) !== keyOf(draft.job ?? '') ? { ...changed, item: '' } : changed;
}

/** The draft with the offered job settled: what she fills in from now on is meant for it, whatever is offered next. */
export function withJobSettled(draft: LogDraft, offered: string | null): LogDraft {
  return draft.job === null && offered !== null ? { ...draft, job: offered } : draft;
}

/** The draft with another date; nothing while it is incomplete. */
export function withDate(draft: LogDraft, date: string): LogDraft {
  return { ...draft, date };
}

/** By what a line is found: the treatment's and the material's key. */
export function lineKey(treatment: string, material: string): string {
  return `${keyOf(treatment)}\n${keyOf(material)}`;
}

/** The lines that she changed for the treatment that stands in the form, in the order in which she did. */
export function changedLines(draft: LinesDraft): LineDraft[] {
  const own = `${keyOf(draft.treatment)}\n`;
  return Object.entries(draft.lines).flatMap(([key, line]) => (key.startsWith(own) ? [line] : []));
}

/** A line of the treatment that stands in the form; unchanged where she changed nothing about it. */
export function lineOf(draft: LinesDraft, material: string): LineDraft {
  return draft.lines[lineKey(draft.treatment, material)] ?? { of: material, ...PLAIN_LINE };
}

/** The draft with a line changed; a line that says nothing any more is dropped, unless she added it. */
export function withLine<Draft extends LinesDraft>(
  draft: Draft,
  material: string,
  change: Partial<Omit<LineDraft, 'of'>>,
  isAdded = false,
): Draft {
  const key = lineKey(draft.treatment, material);
  const line = { ...lineOf(draft, material), ...change };
  const { [key]: _, ...others } = draft.lines;
  const lines = isPlain(line) && !isAdded ? others : { ...draft.lines, [key]: line };
  return { ...draft, lines };
}

function isPlain({ instead, amount, lot, second }: LineDraft): boolean {
  return instead === null && amount === null && lot === '' && second === null;
}

/** The draft without what she changed about a material, or without the one that she added. */
export function withoutLine<Draft extends LinesDraft>(draft: Draft, material: string): Draft {
  const { [lineKey(draft.treatment, material)]: _, ...lines } = draft.lines;
  return { ...draft, lines };
}

/** The draft after it was logged: job, item, date and who did it stay for the next treatment. */
export function afterLogging(draft: LogDraft): LogDraft {
  const { job, item, date, by } = draft;
  return { ...EMPTY_DRAFT, job, item, date, by };
}

/** Whether filling in a row of the plan would overwrite what she typed herself. */
export function holdsTyping({ extent, minutes, notes, lines }: LogDraft): boolean {
  return [extent, minutes, notes].some((text) => text.trim() !== '') || Object.keys(lines).length > 0;
}

/**
 * The draft with a row of the plan filled in, or with a job alone; date and who did it stay.
 * Where the preset has a treatment, what was typed for another one is gone.
 */
export function withPreset(draft: LogDraft, { job, item, treatment, extent }: LogPreset): LogDraft {
  const moved = job === null ? draft : { ...draft, job, item: item ?? '' };
  if (treatment === null) return moved;
  return {
    ...EMPTY_DRAFT,
    job: moved.job,
    item: moved.item,
    date: draft.date,
    by: draft.by,
    treatment,
    extent: extent === null ? '' : roundQuantity(extent).toString(),
  };
}
