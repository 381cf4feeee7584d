import { drawEntries } from '../actions/draw-entries.ts';
import { finishDrawing } from '../actions/half-drawn.ts';
import { logTreatment } from '../actions/log-treatment.ts';
import { planTreatment, type TreatmentPlan } from '../actions/plan-treatment.ts';
import { postCount } from '../actions/post-count.ts';
import { type Quoted, quotePlan } from '../actions/quote-job.ts';
import { redrawEntry } from '../actions/redraw-entry.ts';
import type { TreatmentToLog } from '../actions/treatment-to-log.ts';
import { undoPosting } from '../actions/undo-posting.ts';
import { tablesUpgrade } from '../actions/upgrade-tables.ts';
import { writeAgain } from '../actions/write-again.ts';
import { type Refusal, refuse, type Written } from '../actions/writing-desk.ts';
import type { Day } from '../core/day.ts';
import type { Random } from '../core/identifier.ts';
import type { Entry, Lot } from '../core/studio.ts';
import { counted, spokenQuantity } from '../core/wording.ts';
import type { TabBlueprint } from '../workbook/blueprint.ts';
import type { LiveWorkbook, TabCell } from '../workbook/live-workbook.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import type { CopyWorkbook } from '../workbook/workbook-copy.ts';
import { cellOfChart, chartDrawn, chartToDraw, type ToDraw } from './chart-to-draw.ts';
import { drawnSentence, redrawnSentence } from './done-words.ts';
import {
  MOVED,
  NOT_OPEN,
  OpenedWorkbook,
  type OpenedWorkbookOptions,
  type Prepared,
} from './opened-workbook.ts';
import { lotNow, rowsNow } from './rows-now.ts';
import { samePlan } from './same-plan.ts';
import type { Done, SessionView } from './session-state.ts';
import { tabsToSetUp } from './tabs-to-set-up.ts';

export interface SessionOptions extends OpenedWorkbookOptions {
  readonly random: Random;
  /** Copies the workbook, for what makes a new one out of it. */
  readonly copy: CopyWorkbook;
  /** The tabs of the starter workbook; asked for only when tables are set up. */
  readonly starter: () => Promise<readonly TabBlueprint[]>;
}

/** What a person does with an open workbook: looks, plans, logs, draws, takes back, counts, quotes. */
export class Session {
  readonly #opened: OpenedWorkbook;
  readonly #workbook: LiveWorkbook;
  readonly #random: Random;
  readonly #copy: CopyWorkbook;
  readonly #starter: SessionOptions['starter'];

  constructor(options: SessionOptions) {
    this.#opened = new OpenedWorkbook(options);
    this.#workbook = options.workbook;
    this.#random = options.random;
    this.#copy = options.copy;
    this.#starter = options.starter;
  }

  get view(): SessionView {
    return this.#opened.view;
  }

  /** Calls back after every change of the view, until the function that it returns is called. */
  subscribe(listener: () => void): () => void {
    return this.#opened.subscribe(listener);
  }

  /** Reads the workbook and follows it from then on. */
  start(): Promise<void> {
    return this.#opened.readAgain();
  }

  stop(): Promise<void> {
    return this.#opened.stop();
  }

  /** Reads the workbook anew: after a failure, on a new day, or because the person asks. */
  readAgain(): Promise<void> {
    return this.#opened.readAgain();
  }

  /** What logging a treatment would take; nothing is written. */
  planTreatment(request: TreatmentToLog): TreatmentPlan | Refusal {
    const { books } = this.#opened;
    return books === null ? NOT_OPEN : planTreatment(books.snapshot, request, books.today);
  }

  /** What a job's plan costs; nothing is written. */
  quote(job: string): Quoted | Refusal {
    const { books } = this.#opened;
    return books === null ? NOT_OPEN : quotePlan(books.snapshot, job, false, books.today, this.#random);
  }

  /**
   * Adds an entry to the treatment log and draws it down.
   * @param shown the plan that the person saw; where it would be another one by now, nothing is written
   */
  log(request: TreatmentToLog, shown: TreatmentPlan): Promise<Done> {
    return this.#opened.perform('Logging', ({ snapshot, today }) => {
      const plan = planTreatment(snapshot, request, today);
      if (plan.ok && !samePlan(plan, shown)) return MOVED;
      return drawn(logTreatment(snapshot, request, today, this.#random));
    });
  }

  /** Draws entries of the treatment log that are not drawn, or in part only. */
  draw(entries: readonly Entry[] | 'all'): Promise<Done> {
    return this.#opened.perform('Drawing', (books) => {
      const rows = entries === 'all' ? null : new Set(rowsNow(entries, books));
      return drawn(drawEntries(books.snapshot, books.today, this.#random, null, rows));
    });
  }

  /** Reverses what was drawn for an entry and draws it for what it says now. */
  redraw(entry: Entry): Promise<Done> {
    return this.#opened.perform('Drawing', (books) => {
      const [row] = rowsNow([entry], books);
      if (row === undefined) return refuse(`Entry ${entry.name} is not in the treatment log any more.`);
      const written = redrawEntry(books.snapshot, row, books.today, this.#random);
      return written.ok ? prepare(written, redrawnSentence(written)) : written;
    });
  }

  /** Takes a posting back by reversing rows. */
  async undo(posting: string): Promise<Done> {
    const done = await this.#opened.perform('Taking back', ({ snapshot, today }) => {
      const written = undoPosting(snapshot, posting, today, this.#random);
      if (!written.ok) return written;
      const { movements } = written.drawing;
      const isReceipt = movements.every(({ reverses }) => reverses === null);
      const what = isReceipt
        ? `${counted(movements.length, 'lot')} that came in`
        : `${counted(movements.length, 'movement')}, each by a row that reverses it`;
      return prepare(written, `Taken back: ${what}.`);
    });
    if (done.kind === 'done' && this.#opened.half?.posting === posting) this.#opened.forgetHalf();
    return done;
  }

  /** Posts what was typed over a lot's Left as a Count. */
  postCount(lot: Lot): Promise<Done> {
    return this.#opened.perform('Posting the count', ({ snapshot, today, ledger }) => {
      const now = lotNow(lot, ledger.studio);
      const written = postCount(snapshot, now.record.place, today, this.#random);
      if (!written.ok) return written;
      const count = written.drawing.movements[0];
      const difference = count === undefined ? '' : `, ${spokenQuantity(count.quantity, count.unit)}`;
      return prepare(written, `Counted: lot ${now.name}${difference}.`);
    });
  }

  /**
   * Does what an action works out on the latest state of the workbook, and says how it ended.
   * @param busy what is being done, for the person
   * @param action gives MOVED where the person would be shown something else by now: then nothing is written
   * @param sentence what was done
   */
  carryOut<W extends Written>(
    busy: string,
    action: (snapshot: WorkbookSnapshot, today: Day, random: Random) => W | Refusal,
    sentence: (written: W) => string,
  ): Promise<Done> {
    return this.#opened.perform(busy, ({ snapshot, today }) => {
      const written = action(snapshot, today, this.#random);
      return written.ok ? prepare(written, sentence(written)) : written;
    });
  }

  /** Writes a job's quote down as it is now. */
  freeze(job: string): Promise<Done> {
    return this.#opened.perform('Writing the quote down', ({ snapshot, today }) => {
      const quoted = quotePlan(snapshot, job, true, today, this.#random);
      if (!quoted.ok) return quoted;
      const { frozen } = quoted;
      if (frozen === null) return refuse(`Nothing was written of the quote for ${job}.`);
      const sentence = `Written down: quote ${frozen.quote}, version ${frozen.version}, for ${quoted.quote.job}.`;
      return { ok: true, changes: frozen.changes, done: plainlyDone(sentence) };
    });
  }

  /** Writes the tables that are not here, with the starter's rows where none of them is. */
  setUp(): Promise<Done> {
    return this.#opened.inTurn('Setting up the tables', async (): Promise<Done> => {
      const tabs = tabsToSetUp(await this.#starter(), this.#opened.books?.snapshot ?? null);
      if (tabs.length === 0) return { kind: 'refused', message: 'Every table is here already.' };
      return this.#addTabs(tabs, tablesSetUp(tabs));
    });
  }

  /** Adds a tab with a chart of what becomes of a material's stock, and brings it into view. */
  drawChart(plan: ToDraw): Promise<Done> {
    return this.#opened.inTurn('Drawing the chart', async (): Promise<Done> => {
      const chart = chartToDraw(plan, this.#opened.books);
      if (!chart.ok) return { kind: 'refused', message: chart.message };
      const added = await this.#addTabs([chart.tab], (snapshot) => chartDrawn(plan, chart, snapshot));
      const cell = cellOfChart(chart, this.#opened.books);
      if (added.kind !== 'done' || cell === null) return added;
      const shown = await this.goTo(cell);
      return shown.kind === 'done' ? added : { ...added, remarks: [shown.message] };
    });
  }

  /** Carries the workbook over, as of a day, to a new one beside it. */
  carryOver(day: Day): Promise<Done> {
    return this.#opened.inTurn('Making the new workbook', async (): Promise<Done> => {
      const { books } = this.#opened;
      if (books === null) return { kind: 'refused', message: NOT_OPEN.message };
      const { carryToNewWorkbook } = await import('./carry-to-new-workbook.ts');
      return carryToNewWorkbook(this.#copy, books, day, this.#random);
    });
  }

  /** Brings tables of an earlier version up to date: new tables first, then columns and the version in one go. */
  async upgradeTables(): Promise<Done> {
    const busy = 'Bringing the tables up to date';
    const starter = await this.#starter();
    const upgrade = (snapshot: WorkbookSnapshot) => tablesUpgrade(snapshot, starter);
    const before = await this.#opened.inTurn(busy, async (): Promise<Done | null> => {
      const { books } = this.#opened;
      if (books === null) return { kind: 'refused', message: NOT_OPEN.message };
      const planned = upgrade(books.snapshot);
      return planned.ok && planned.tabs.length > 0
        ? this.#addTabs(planned.tabs, tablesSetUp(planned.tabs))
        : null;
    });
    if (before !== null && before.kind !== 'done') return before;
    return this.#opened.perform(busy, ({ snapshot }) => {
      const planned = upgrade(snapshot);
      if (!planned.ok) return planned;
      const columns = planned.added.reduce((sum, each) => sum + each.columns.length, 0);
      const tables = before === null ? '' : ', and a new table';
      const sentence = `Brought up to date: ${counted(columns, 'column')} added${tables}.`;
      return { ok: true, changes: planned.changes, done: plainlyDone(sentence) };
    });
  }

  async #addTabs(
    tabs: readonly TabBlueprint[],
    doneWith: (snapshot: WorkbookSnapshot) => Done,
  ): Promise<Done> {
    const outcome = await this.#workbook.addTabs(tabs);
    if (outcome.kind === 'failed') return { kind: 'refused', message: outcome.message };
    this.#opened.show(outcome.snapshot);
    if (outcome.kind === 'half') return { kind: 'refused', message: outcome.message };
    if (outcome.kind === 'stale') return { kind: 'look again', message: MOVED.message };
    return doneWith(outcome.snapshot);
  }

  /** Writes the rows again that somebody else's change took away. */
  async writeAgain(): Promise<Done> {
    const rows = this.#opened.gone;
    const done = await this.#opened.perform('Writing the rows again', ({ snapshot, today }) =>
      rowsWritten(writeAgain(snapshot, rows, today)),
    );
    if (done.kind === 'done') this.#opened.letGo();
    return done;
  }

  /** Leaves the rows gone that somebody else's change took away. */
  letGo(): void {
    this.#opened.letGo();
  }

  /** Completes a posting of which only a part was written; undo takes it back instead. */
  async finish(posting: string): Promise<Done> {
    const { half } = this.#opened;
    const isRemembered = half?.posting === posting;
    const done = await this.#opened.perform('Finishing what was begun', ({ snapshot, today }) =>
      isRemembered
        ? rowsWritten(writeAgain(snapshot, half.rows, today, half.marks))
        : drawn(finishDrawing(snapshot, posting, today, this.#random)),
    );
    if (done.kind === 'done' && isRemembered) this.#opened.forgetHalf();
    return done;
  }

  /** Brings a cell of the workbook into view. */
  async goTo(cell: TabCell): Promise<Done> {
    const outcome = await this.#workbook.goTo(cell);
    return outcome.kind === 'failed' ? { kind: 'refused', message: outcome.message } : plainlyDone('');
  }
}

function tablesSetUp(tabs: readonly TabBlueprint[]): () => Done {
  const tables = tabs.filter(({ table }) => table !== undefined).length;
  return () => plainlyDone(`Set up: ${counted(tables, 'table')}.`);
}

function plainlyDone(sentence: string): Extract<Done, { kind: 'done' }> {
  return { kind: 'done', sentence, posting: null, drawing: null, remarks: [] };
}

function prepare({ changes, posting, drawing, remarks }: Written, sentence: string): Prepared {
  return { ok: true, changes, done: { kind: 'done', sentence, posting, drawing, remarks } };
}

function drawn(written: Written | Refusal): Prepared | Refusal {
  return written.ok ? prepare(written, drawnSentence(written)) : written;
}

function rowsWritten(again: ReturnType<typeof writeAgain>): Prepared | Refusal {
  if (!again.ok) return again;
  const sentence =
    again.written === 0 ? 'Every row is there already.' : `Written again: ${counted(again.written, 'row')}.`;
  return { ok: true, changes: again.changes, done: plainlyDone(sentence) };
}
