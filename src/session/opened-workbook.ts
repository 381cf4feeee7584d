import { type RowToWrite, rowsAppended, rowsGone, rowsMissing } from '../actions/write-again.ts';
import { type Refusal, refuse } from '../actions/writing-desk.ts';
import type { Day } from '../core/day.ts';
import { keyOf } from '../core/identifier.ts';
import type { Changer, LiveWorkbook, TabCell } from '../workbook/live-workbook.ts';
import type { Change, WorkbookSnapshot } from '../workbook/port.ts';
import { chosenIn } from './chosen-row.ts';
import { stateOf } from './open-books.ts';
import { type HalfWritten, questionsOf } from './questions.ts';
import type { Books, Done, Question, SessionState, SessionView } from './session-state.ts';

export interface OpenedWorkbookOptions {
  readonly workbook: LiveWorkbook;
  /** The day on the person's calendar. */
  readonly today: () => Day;
  readonly wait: (milliseconds: number) => Promise<void>;
}

/** What something that a person asks for comes to: changes, and the words about them once they are written. */
export interface Prepared {
  readonly ok: true;
  readonly changes: readonly Change[];
  readonly done: Extract<Done, { kind: 'done' }>;
}

/** Works something out on what the workbook says now; asked again where the workbook moved before it was written. */
export type Work = (books: Books) => Prepared | Refusal;

/** A burst of changes (fifty rows pasted, a colleague at work) is read once. */
const QUIET_MILLISECONDS = 200;
/** How often something is worked out again because the workbook has changed under it. */
const TRIES = 3;

export const NOT_OPEN: Refusal = refuse('No workbook is open yet.');
/** Nothing was written, as the workbook has changed since the person looked. */
export const MOVED: Refusal = refuse(
  'The workbook was changed meanwhile, so nothing was written. The figures shown are fresh: look, and do it again.',
);

/**
 * An open workbook with what it says: it is read, written to, and followed while others work in it. What is shown is
 * one view, a new object at every change. One thing is done at a time, in the order of asking.
 */
export class OpenedWorkbook {
  readonly #options: OpenedWorkbookOptions;
  readonly #listeners = new Set<() => void>();
  #view: SessionView = {
    state: { kind: 'starting' },
    busy: null,
    chosen: null,
    questions: [],
    notFollowing: null,
  };
  #queue: Promise<unknown> = Promise.resolve();
  #stopListening: (() => Promise<void>) | null = null;
  #cell: TabCell | null = null;
  /** Who has changed the workbook since it was last read; null for nobody. */
  #changedBy: Changer | null = null;
  /** The postings that were written from here. */
  readonly #own = new Set<string>();
  #gone: readonly RowToWrite[] = [];
  #half: HalfWritten | null = null;

  constructor(options: OpenedWorkbookOptions) {
    this.#options = options;
  }

  get view(): SessionView {
    return this.#view;
  }

  get books(): Books | null {
    return this.#view.state.kind === 'open' ? this.#view.state.books : null;
  }

  /** The rows that somebody else's change took away. */
  get gone(): readonly RowToWrite[] {
    return this.#gone;
  }

  get half(): HalfWritten | null {
    return this.#half;
  }

  /** Calls back after every change of the view, until the function that it returns is called. */
  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  async stop(): Promise<void> {
    await this.#stopListening?.();
    this.#stopListening = null;
  }

  /** Reads the workbook anew, and follows it from then on. */
  async readAgain(): Promise<void> {
    await this.inTurn('Reading the workbook', () => this.#read(this.#takeChangedBy()));
    await this.#follow();
  }

  /** Forgets the rows that somebody else's change took away. */
  letGo(): void {
    this.#gone = [];
    this.#ask();
  }

  /** Forgets what was written in part: it has been completed, or taken back. */
  forgetHalf(): void {
    this.#half = null;
    this.#ask();
  }

  /**
   * Works something out on the latest state of the workbook and writes it.
   * @param busy what is being done, for the person
   */
  perform(busy: string, work: Work): Promise<Done> {
    return this.inTurn(busy, async () => {
      const isYesterdays = this.books !== null && this.books.today !== this.#options.today();
      if (this.#changedBy !== null || isYesterdays) await this.#read(this.#takeChangedBy());
      return this.#attempt(work, TRIES);
    });
  }

  /** Does one thing after the other, and says what is being done meanwhile. */
  inTurn<T>(busy: string | null, task: () => Promise<T>): Promise<T> {
    const turn = this.#queue.then(async () => {
      if (busy !== null) this.#update({ busy });
      try {
        return await task();
      } finally {
        if (busy !== null) this.#update({ busy: null });
      }
    });
    // A task that failed has told its own caller; the next one goes on.
    this.#queue = turn.catch(() => undefined);
    return turn;
  }

  /** Shows what a snapshot says. */
  show(snapshot: WorkbookSnapshot): void {
    const state = stateOf(snapshot, this.#options.today());
    this.#update({ state, chosen: this.#chosenIn(state), questions: this.#questionsIn(state) });
  }

  /** Follows the workbook, where that isn't done yet. */
  async #follow(): Promise<void> {
    if (this.#stopListening !== null) return;
    const listening = await this.#options.workbook.listen({
      changed: (by) => this.#noteChange(by),
      selected: (cell) => {
        this.#cell = cell;
        this.#update({ chosen: this.#chosenIn(this.#view.state) });
      },
    });
    if (listening.kind === 'listening') this.#stopListening = listening.stop;
    this.#update({ notFollowing: listening.kind === 'failed' ? listening.message : null });
  }

  async #attempt(work: Work, tries: number): Promise<Done> {
    const { books } = this;
    if (books === null) return { kind: 'refused', message: NOT_OPEN.message };
    const prepared = work(books);
    if (!prepared.ok) {
      return { kind: prepared === MOVED ? 'look again' : 'refused', message: prepared.message };
    }
    const { changes, done } = prepared;
    if (changes.length === 0) return done;
    const outcome = await this.#options.workbook.write(changes, books.snapshot);
    switch (outcome.kind) {
      case 'failed':
        return { kind: 'refused', message: outcome.message };
      case 'half':
        this.#half = halfOf(changes, done, outcome.message) ?? this.#half;
        this.show(outcome.snapshot);
        return { kind: 'refused', message: outcome.message };
      case 'stale':
        this.show(outcome.snapshot);
        return tries > 1 ? this.#attempt(work, tries - 1) : { kind: 'look again', message: MOVED.message };
      case 'written':
        if (done.posting !== null) this.#own.add(keyOf(done.posting));
        this.show(outcome.snapshot);
        return done;
    }
  }

  #noteChange(by: Changer): void {
    const isExpected = this.#changedBy !== null;
    this.#changedBy = by === 'other' || this.#changedBy === 'other' ? 'other' : 'person';
    if (isExpected) return;
    void this.#options.wait(QUIET_MILLISECONDS).then(() =>
      this.inTurn(null, async () => {
        if (this.#changedBy !== null) await this.#read(this.#takeChangedBy());
      }),
    );
  }

  #takeChangedBy(): Changer | null {
    const by = this.#changedBy;
    this.#changedBy = null;
    return by;
  }

  async #read(by: Changer | null): Promise<void> {
    const outcome = await this.#options.workbook.read();
    if (outcome.kind === 'failed') {
      this.#update({ state: { kind: 'failed', message: outcome.message }, chosen: null, questions: [] });
      return;
    }
    const before = this.books?.snapshot ?? null;
    // What the person took away herself is meant; what somebody else's change took away may be an accident.
    if (by === 'other' && before !== null) {
      const known = new Set(this.#gone.map(({ identifier }) => keyOf(identifier)));
      const gone = rowsGone(before, outcome.snapshot);
      this.#gone = [...this.#gone, ...gone.filter(({ identifier }) => !known.has(keyOf(identifier)))];
    }
    if (this.#gone.length > 0) this.#gone = rowsMissing(this.#gone, outcome.snapshot);
    this.show(outcome.snapshot);
  }

  #chosenIn(state: SessionState): SessionView['chosen'] {
    return state.kind === 'open' && this.#cell !== null ? chosenIn(state.books, this.#cell) : null;
  }

  #ask(): void {
    this.#update({ questions: this.#questionsIn(this.#view.state) });
  }

  #update(change: Partial<SessionView>): void {
    this.#view = { ...this.#view, ...change };
    for (const listener of this.#listeners) listener();
  }

  #questionsIn(state: SessionState): Question[] {
    return state.kind === 'open' ? questionsOf(state.books, this.#half, this.#own, this.#gone) : [];
  }
}

/** What is to be finished of a posting; null where nothing of it could be: then the message alone says what stands. */
function halfOf(changes: readonly Change[], done: Prepared['done'], message: string): HalfWritten | null {
  const rows = rowsAppended(changes);
  if (rows.length === 0) return null;
  return { posting: done.posting ?? '', message, rows, marks: done.drawing?.entries ?? [] };
}
