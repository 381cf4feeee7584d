import { findNamed, type TreatmentToLog } from '../../actions/treatment-to-log.ts';
import { type Day, parseDay } from '../../core/day.ts';
import { type Exact, ONE } from '../../core/exact-number.ts';
import { keyOf } from '../../core/identifier.ts';
import { STUDIO_JOB, type Studio, type Treatment } from '../../core/studio.ts';
import { readNumber } from '../parts/number-text.ts';
import type { LogDraft } from './draft.ts';

/** A field of the form besides those of the materials' lines. */
export type HeadField = NameField | 'extent' | 'date' | 'minutes';

/** What is wrong with a field, and what would be right. */
export interface Problem<Field extends string = string> {
  readonly field: Field;
  readonly message: string;
  /** Nothing stands there: that is told only once she wants to log. */
  readonly isBlank: boolean;
}

/** The form but for its lines. */
export interface ReadHead {
  /** The treatment by its rates; null until job, item, treatment, extent and date are told. */
  readonly request: TreatmentToLog | null;
  readonly treatment: Treatment | null;
  readonly problems: readonly Problem<HeadField>[];
}

/** Reads the form but for its lines: what is to be logged by the rates, and what is wrong. */
export function readHead(draft: LogDraft, studio: Studio, today: Day): ReadHead {
  const treatment = studio.treatmentsByKey.get(keyOf(draft.treatment)) ?? null;
  const job = (draft.job ?? '').trim();
  const names = { job, item: orNull(draft.item), treatment: draft.treatment.trim() };
  const extent = numberIn('extent', draft.extent, extentMissing(treatment), false);
  const minutes = numberIn('minutes', draft.minutes, null, true);
  const date = draft.date === null ? today : parseDay(draft.date);
  const problems = [
    ...nameProblems(names, studio, today),
    ...extent.problems,
    ...(date === null ? [noDay(draft.date ?? '')] : []),
    ...minutes.problems,
  ];
  const isTold = problems.every(({ field }) => field === 'minutes');
  const request =
    !isTold || extent.number === null || date === null
      ? null
      : {
          ...names,
          extent: extent.number,
          date,
          minutes: minutes.number,
          by: orNull(draft.by),
          notes: orNull(draft.notes),
          asUsed: [],
        };
  return { request, treatment, problems };
}

function orNull(text: string): string | null {
  return text.trim() === '' ? null : text.trim();
}

function wrong<Field extends string>(field: Field, message: string): Problem<Field> {
  return { field, message, isBlank: false };
}

function noDay(date: string): Problem<'date'> {
  return {
    field: 'date',
    message: 'Say on which day it was done: this is no day that can be read.',
    isBlank: date === '',
  };
}

/** What is said where nothing says how much was done. */
export function extentMissing(treatment: Treatment | null): string {
  const unit = treatment === null ? '' : `: a number, in ${treatment.record.extentUnit}`;
  return `Say how much was done${unit}.`;
}

/** Reads a number; `missing` says what is wrong with none, null where none is right. */
export function numberIn<Field extends string>(
  field: Field,
  text: string,
  missing: string | null,
  mayBeZero: boolean,
): { readonly number: Exact | null; readonly problems: readonly Problem<Field>[] } {
  const read = readNumber(text);
  if (read.kind === 'blank') {
    return { number: null, problems: missing === null ? [] : [{ field, message: missing, isBlank: true }] };
  }
  if (read.kind === 'not a number') return { number: null, problems: [wrong(field, read.message)] };
  const sign = read.number.compare(0);
  if (sign > 0 || (mayBeZero && sign === 0)) return { number: read.number, problems: [] };
  const bound = mayBeZero ? '0 or more' : 'above 0';
  return {
    number: null,
    problems: [wrong(field, `${text.trim()} stands here: a number ${bound} is right.`)],
  };
}

type NameField = 'job' | 'item' | 'treatment';

interface Names {
  readonly job: string;
  readonly item: string | null;
  readonly treatment: string;
}

/** What is wrong with job, item and treatment. */
export function nameProblems(names: Names, studio: Studio, today: Day): Problem<NameField>[] {
  const problems: Problem<NameField>[] = [];
  const isJob = keyOf(names.job) === keyOf(STUDIO_JOB) || studio.jobsByKey.has(keyOf(names.job));
  const isTreatment = studio.treatmentsByKey.has(keyOf(names.treatment));
  const refused = (field: NameField, { job, item, treatment }: Names): void => {
    const found = findNamed(studio, { ...NO_FIGURES, date: today, job, item, treatment });
    if (!found.ok) problems.push(wrong(field, found.message));
  };
  if (names.job === '') {
    problems.push({
      field: 'job',
      message: 'Say for which job it was done: type or scan it.',
      isBlank: true,
    });
  } else if (!isJob) {
    refused('job', names);
  }
  if (names.treatment === '') {
    problems.push({ field: 'treatment', message: 'Say which treatment was done.', isBlank: true });
  } else if (!isTreatment) {
    refused('treatment', { job: STUDIO_JOB, item: null, treatment: names.treatment });
  }
  if (isJob && isTreatment) refused('item', names);
  return problems;
}

const NO_FIGURES = { extent: ONE, minutes: null, by: null, notes: null, asUsed: [] };
