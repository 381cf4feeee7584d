import { provisionalRandom } from '../../actions/plan-treatment.ts';
import type { Refusal, Written } from '../../actions/writing-desk.ts';
import { type Day, parseDay } from '../../core/day.ts';
import type { Exact } from '../../core/exact-number.ts';
import type { Random } from '../../core/identifier.ts';
import type { Books, Done } from '../../session/session-state.ts';
import type { WorkbookSnapshot } from '../../workbook/port.ts';
import type { PaneSession } from '../pane-session.ts';
import { readNumber } from '../parts/number-text.ts';

/** A field of the small form that a deed asks its questions in. */
export interface DeedField {
  readonly name: string;
  readonly label: string;
  readonly kind: 'number' | 'text' | 'day' | 'choice';
  /** What stands in it at first; a day as YYYY-MM-DD. */
  readonly start: string;
  readonly hint?: string;
  /** The unit behind a number. */
  readonly suffix?: string;
  readonly optional?: boolean;
  readonly options?: readonly { readonly value: string; readonly label: string }[];
}

/** What stands in the fields, by name. */
export type DeedTexts = Readonly<Record<string, string>>;

/** Something that can be done with a lot. */
export interface Deed {
  readonly name: string;
  /** On the button that opens the form; it ends with three dots. */
  readonly label: string;
  /** On the button that does it. */
  readonly submit: string;
  readonly fields: readonly DeedField[];
  /** What to know before it is done. */
  readonly notes: readonly string[];
  /** Makes something to carry out of what stands in the fields, or says what is wrong with them. */
  readonly read: (texts: DeedTexts) => Doing | Problems;
}

/** What is wrong with the fields, by name. */
export interface Problems {
  readonly ok: false;
  readonly problems: DeedTexts;
}

/** Something to carry out. */
export interface Doing {
  readonly ok: true;
  /** Why it would be refused as the workbook is now; null where it would be done. */
  readonly refusalIn: (books: Books) => string | null;
  readonly carryOut: (session: PaneSession) => Promise<Done>;
}

/**
 * An action to carry out.
 * @param busy what is being done, for the person
 * @param sentence what was done
 */
export function doing<W extends Written>(
  busy: string,
  action: (snapshot: WorkbookSnapshot, today: Day, random: Random) => W | Refusal,
  sentence: (written: W) => string,
): Doing {
  return {
    ok: true,
    refusalIn: ({ snapshot, today }) => {
      const tried = action(snapshot, today, provisionalRandom());
      return tried.ok ? null : tried.message;
    },
    carryOut: (session) => session.carryOut(busy, action, sentence),
  };
}

/** Reads fields one by one and gathers what is wrong with them. */
export class FieldReader {
  readonly #texts: DeedTexts;
  readonly #problems: Record<string, string> = {};

  constructor(texts: DeedTexts) {
    this.#texts = texts;
  }

  get problems(): Problems | null {
    return Object.keys(this.#problems).length === 0 ? null : { ok: false, problems: this.#problems };
  }

  text(name: string): string {
    return this.#texts[name]?.trim() ?? '';
  }

  /** A text that must be given. */
  needed(name: string, message: string): string {
    const text = this.text(name);
    if (text === '') this.#problems[name] = message;
    return text;
  }

  /** A number; null where the field is blank. */
  number(name: string): Exact | null {
    const read = readNumber(this.text(name));
    if (read.kind === 'not a number') this.#problems[name] = read.message;
    return read.kind === 'number' ? read.number : null;
  }

  /** A day; where none is given, a problem is noted and the one handed in stands for it. */
  day(name: string, instead: Day): Day {
    const day = parseDay(this.text(name));
    if (day === null) this.#problems[name] = 'Give a day of the calendar.';
    return day ?? instead;
  }
}
