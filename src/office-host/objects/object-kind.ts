import type { ClientState, RangeSubject } from '../client-state.ts';
import type { Editing } from '../editing.ts';
import type { Chart, ChartSeries, DefinedName, Sheet, Table, TableColumn } from '../memory-workbook.ts';
import type { Json } from '../request.ts';
import type { CellScalar } from '../workbook-description.ts';

/** The kinds of objects that clients get hold of, by the names of the client library, and what stands behind each. */
export interface Subjects {
  Workbook: null;
  WorkbookCreated: string;
  Application: null;
  Functions: null;
  FunctionResult: { readonly value: CellScalar | null; readonly error: string | null };
  /** Services that the library calls when it starts; nothing of the workbook. */
  Service: string;
  NamedItemCollection: null;
  NamedItem: DefinedName;
  SettingCollection: null;
  Setting: { readonly key: string };
  WorksheetCollection: null;
  Worksheet: Sheet;
  WorksheetFreezePanes: Sheet;
  WorksheetProtection: Sheet;
  /** The tables of one sheet, or of all. */
  TableCollection: Sheet | null;
  Table: Table;
  TableColumnCollection: Table;
  TableColumn: { readonly table: Table; readonly id: TableColumn['id'] };
  TableRowCollection: Table;
  TableRow: { readonly table: Table; readonly index: number };
  Range: RangeSubject;
  RangeFormat: RangeSubject;
  RangeFill: RangeSubject;
  RangeFont: RangeSubject;
  DataValidation: RangeSubject;
  ChartCollection: Sheet;
  Chart: ChartSubject;
  ChartTitle: ChartSubject;
  ChartSeriesCollection: ChartSubject;
  ChartSeries: SeriesSubject;
  ChartSeriesFormat: SeriesSubject;
  ChartLineFormat: SeriesSubject;
}

/** A chart by its identifier, for charts are replaced when they change. */
export interface ChartSubject {
  readonly sheet: Sheet;
  readonly id: Chart['id'];
}

export interface SeriesSubject extends ChartSubject {
  readonly series: ChartSeries['id'];
}

export type KindName = keyof Subjects;

/** An object of the workbook that a client's request speaks of. */
export class LiveObject<Name extends KindName = KindName> {
  readonly kind: Name;
  readonly subject: Subjects[Name];
  /** The id under which the client holds on to it. */
  referenceId: string | null = null;

  constructor(kind: Name, subject: Subjects[Name]) {
    this.kind = kind;
    this.subject = subject;
  }
}

export type Argument = Json | LiveObject;

/** What objects need to answer within one request. */
export interface RequestSession {
  readonly editing: Editing;
  readonly client: ClientState;
  /** The value of a cell; a formula's as the evaluator has it, else as stored. */
  readonly valueAt: (sheet: Sheet, row: number, column: number) => CellScalar;
  readonly textAt: (sheet: Sheet, row: number, column: number) => string;
  readonly maxCells: number;
  /** Makes a range that follows its cells for the rest of the request. */
  readonly range: (subject: RangeSubject) => LiveObject<'Range'>;
  readonly select: (range: RangeSubject) => void;
  readonly activate: (sheet: Sheet) => void;
  /** Opens another workbook beside this one: its file, in base64. */
  readonly openWorkbook: (base64: string) => void;
}

type Answer = Json | LiveObject | undefined;

/** What one kind of object knows and can do. Members have the names that pass over the bridge. */
export interface ObjectKind<Subject> {
  /** What tells the object from others of its collection. */
  readonly id?: (subject: Subject) => Readonly<Record<string, Json>>;
  readonly scalars?: Readonly<Record<string, (subject: Subject, session: RequestSession) => Json>>;
  readonly setters?: Readonly<
    Record<string, (subject: Subject, value: Json, session: RequestSession) => void>
  >;
  readonly navigations?: Readonly<Record<string, (subject: Subject, session: RequestSession) => LiveObject>>;
  /** Methods that leave the document as it is. A null stands for the null object. */
  readonly methods?: Readonly<
    Record<string, (subject: Subject, args: readonly Argument[], session: RequestSession) => Answer>
  >;
  /** Methods that change the document. */
  readonly edits?: Readonly<
    Record<string, (subject: Subject, args: readonly Argument[], session: RequestSession) => Answer>
  >;
  readonly items?: (subject: Subject, session: RequestSession) => readonly LiveObject[];
  readonly index?: (subject: Subject, key: Argument, session: RequestSession) => LiveObject;
}
