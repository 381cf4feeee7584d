import type { LineReceived, OrderToReceive } from '../../actions/order-to-receive.ts';
import { type Day, isoDay, parseDay } from '../../core/day.ts';
import { type Exact, roundQuantity, ZERO } from '../../core/exact-number.ts';
import { type Expected, inLineUnit } from '../../core/on-order.ts';
import type { OpenOrder } from '../../core/open-orders.ts';
import { nameOf } from '../../core/records.ts';
import type { Material, Studio } from '../../core/studio.ts';
import { spokenNumber, spokenQuantity } from '../../core/wording.ts';
import { readNumber } from '../parts/number-text.ts';

/** What stands in the form for what came of an order, as it was typed. */
export interface ReceiveDraft {
  readonly order: string;
  /** YYYY-MM-DD, nothing while it is incomplete. */
  readonly received: string;
  readonly carriage: string;
  readonly by: string;
  readonly parts: readonly PartDraft[];
}

/** What came of a line with one supplier's lot and one printed date. */
export interface PartDraft {
  readonly key: string;
  readonly material: string;
  /** How the line is found again: its identifier, or the name of its material. */
  readonly line: string;
  readonly packWords: string;
  /** What is still to come, as it is first suggested; an empty text for a second lot of a line. */
  readonly expected: string;
  /** Blank or 0 where nothing of it came. */
  readonly packs: string;
  readonly supplierLot: string;
  /** YYYY-MM-DD, or nothing. */
  readonly useBy: string;
  readonly storedAt: string;
}

/** The fields of a part that hold text. */
export type PartText = 'packs' | 'supplierLot' | 'useBy' | 'storedAt';

/** All of an order that is still to come, received today. */
export function startReceiving({ order, toCome }: OpenOrder, studio: Studio, today: Day): ReceiveDraft {
  return {
    order: nameOf(order.order, order),
    received: isoDay(today),
    carriage: '',
    by: '',
    parts: toCome.map((each, place) => partOf(each, studio, String(place))),
  };
}

function partOf({ line, quantity }: Expected, studio: Studio, key: string): PartDraft {
  const { record, material } = line;
  const packs = spokenNumber(roundQuantity(inLineUnit(line, quantity).div(record.packQuantity)));
  return {
    key,
    material: material.name,
    line: record.line ?? material.name,
    packWords: spokenQuantity(record.packQuantity, record.unit),
    expected: packs,
    packs,
    supplierLot: '',
    useBy: '',
    storedAt: usualPlace(studio, material),
  };
}

/** Where the lot of a material stands that came last. */
function usualPlace({ lotsOfMaterial }: Studio, material: Material): string {
  const placed = (lotsOfMaterial.get(material) ?? []).filter(({ record }) => record.storedAt !== null);
  const last = placed.toSorted((a, b) => b.record.received - a.record.received)[0];
  return last?.record.storedAt ?? '';
}

/** The draft with another text in a field of a part. */
export function withPart(draft: ReceiveDraft, key: string, field: PartText, text: string): ReceiveDraft {
  return {
    ...draft,
    parts: draft.parts.map((part) => (part.key === key ? { ...part, [field]: text } : part)),
  };
}

/** The draft with another lot of the same line behind a part. */
export function withAnotherLot(draft: ReceiveDraft, key: string): ReceiveDraft {
  const place = draft.parts.findIndex((part) => part.key === key);
  const part = draft.parts[place];
  if (part === undefined) return draft;
  const count = draft.parts.filter(({ line }) => line === part.line).length;
  const another: PartDraft = {
    ...part,
    key: `${part.key.split('.')[0] ?? ''}.${count}`,
    expected: '',
    packs: '',
    supplierLot: '',
    useBy: '',
  };
  return { ...draft, parts: draft.parts.toSpliced(place + count, 0, another) };
}

export interface ReceiveProblem {
  /** `received`, `carriage`, or a part's field: `packs of 0`. */
  readonly field: string;
  readonly message: string;
}

/** The draft as it is received, or what is wrong with it. */
export function readReceiving(draft: ReceiveDraft): {
  readonly request: OrderToReceive | null;
  readonly problems: readonly ReceiveProblem[];
} {
  const problems: ReceiveProblem[] = [];
  const received = parseDay(draft.received);
  if (received === null) {
    problems.push({ field: 'received', message: 'Give the day on which it came.' });
  }
  const carriage = numberOf(draft.carriage, 'carriage', problems);
  const lines = draft.parts.flatMap((part) => lineOf(part, problems) ?? []);
  if (problems.length > 0 || received === null) return { request: null, problems };
  if (lines.length === 0) {
    const [first] = draft.parts;
    const message = 'Say how many packs came: nothing is told of any line.';
    return { request: null, problems: [{ field: `packs of ${first?.key ?? ''}`, message }] };
  }
  const by = draft.by.trim() === '' ? null : draft.by.trim();
  return { request: { order: draft.order, lines, received, carriage, by }, problems };
}

function lineOf(part: PartDraft, problems: ReceiveProblem[]): LineReceived | null {
  const { key, line, packs: typed, expected, supplierLot, useBy, storedAt } = part;
  const packs = numberOf(typed, `packs of ${key}`, problems);
  const isNone = packs === null || packs.equals(ZERO);
  if (useBy !== '' && parseDay(useBy) === null) {
    problems.push({ field: `useBy of ${key}`, message: 'Give a day of the calendar, or none.' });
  }
  if (isNone) return null;
  return {
    line,
    amount: typed.trim() === expected ? 'all to come' : { packs },
    supplierLot: supplierLot.trim() === '' ? null : supplierLot.trim(),
    useBy: parseDay(useBy),
    storedAt: storedAt.trim() === '' ? null : storedAt.trim(),
    goods: null,
  };
}

/** A number of 0 or more; null where the field is blank, or wrong: then that is told. */
function numberOf(text: string, field: string, problems: ReceiveProblem[]): Exact | null {
  const read = readNumber(text);
  if (read.kind === 'not a number') problems.push({ field, message: read.message });
  if (read.kind !== 'number') return null;
  if (read.number.compare(0) < 0) {
    problems.push({ field, message: `${text.trim()} is below 0: a number from 0 on is right.` });
    return null;
  }
  return read.number;
}
