import type { PlacedNotice } from '../actions/check-workbook.ts';
import type { Upgradable } from '../actions/upgrade-tables.ts';
import type { Day } from '../core/day.ts';
import type { Drawing } from '../core/draw.ts';
import type { Ledger } from '../core/ledger.ts';
import type { JobRecord } from '../core/records.ts';
import type { Settings } from '../core/settings.ts';
import type { Stock } from '../core/stock.ts';
import type { Entry, Lot, Material, PlanRow } from '../core/studio.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import type { WorkbookReading } from '../workbook/read-workbook.ts';

/** Everything that a workbook says on a day. */
export interface Books {
  readonly snapshot: WorkbookSnapshot;
  readonly today: Day;
  readonly reading: WorkbookReading;
  readonly settings: Settings;
  readonly ledger: Ledger;
  readonly stock: Stock;
  /** Most pressing first. */
  readonly notices: readonly PlacedNotice[];
  /** Why nothing is written to this workbook (its tables are newer, or their version can't be told); null where it may be. */
  readonly readingOnly: string | null;
  /** The tables that logging and drawing need and that are not here. */
  readonly absent: readonly string[];
  /** What tables of an earlier version lack of the present one; null where nothing is. */
  readonly upgradable: Upgradable | null;
}

/** What the pane is about to show. */
export type SessionState =
  | { readonly kind: 'starting' }
  /** The workbook can't be read; the message says what is in the way. */
  | { readonly kind: 'failed'; readonly message: string }
  /** None of Jarleaf's tables is here: they can be set up. */
  | { readonly kind: 'no tables' }
  | { readonly kind: 'open'; readonly books: Books };

/** What the person has chosen in the sheet, by the row that the cell belongs to. */
export type Chosen =
  | { readonly kind: 'material'; readonly material: Material }
  | { readonly kind: 'lot'; readonly lot: Lot }
  | { readonly kind: 'job'; readonly job: JobRecord }
  | { readonly kind: 'entry'; readonly entry: Entry }
  /** A row of the plan: a treatment that could be logged now. */
  | { readonly kind: 'plan'; readonly plan: PlanRow };

/** Something that needs the person's answer, besides the notices. */
export type Question =
  /** Rows that were here before somebody else's change and are no longer: they can be written again. */
  | { readonly kind: 'rows gone'; readonly movements: number; readonly entries: number }
  /** A lot that this session drew on was drawn on by somebody else at the same time, and is overdrawn now. */
  | { readonly kind: 'clash'; readonly lot: Lot; readonly entry: Entry }
  /** A posting of which only a part was written. */
  | { readonly kind: 'half'; readonly posting: string; readonly message: string };

/** All that the pane shows; a new object whenever anything changes. */
export interface SessionView {
  readonly state: SessionState;
  /** What is being done now, such as "Reading the workbook"; null while nothing is. */
  readonly busy: string | null;
  readonly chosen: Chosen | null;
  readonly questions: readonly Question[];
  /** Why changes in the sheet don't reach the pane by themselves; null where they do. */
  readonly notFollowing: string | null;
}

/** How something that the person asked for ended. */
export type Done =
  | {
      readonly kind: 'done';
      /** One sentence: what was done. */
      readonly sentence: string;
      /** Under which posting, for taking it back; null where no movement was written. */
      readonly posting: string | null;
      readonly drawing: Drawing | null;
      readonly remarks: readonly string[];
    }
  /** The workbook has changed since the figures were shown: nothing was written, and the view is fresh now. */
  | { readonly kind: 'look again'; readonly message: string }
  /** Nothing was written; the message says why and what to do. */
  | { readonly kind: 'refused'; readonly message: string };
