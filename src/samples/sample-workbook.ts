import type { ColumnBlueprint, TabBlueprint, WorkbookBlueprint } from '../workbook/blueprint.ts';
import { columnBlueprint, fieldsInOrder } from './column-layout.ts';
import { cellOf, type SampleTable } from './sample-table.ts';
import { TABLE_LINES } from './table-lines.ts';

/** What a user added to a table: a column of her own behind the others. */
export interface OwnColumn {
  readonly table: string;
  readonly column: ColumnBlueprint;
}

/** A workbook of Jarleaf's tables in the order of their tabs, with what a user added to it. */
export interface SampleWorkbook {
  readonly title: string;
  readonly tables: readonly SampleTable[];
  readonly ownColumns?: readonly OwnColumn[];
  /** Columns that a user formatted or filled otherwise, by table and field; null for a column that she deleted. */
  readonly changedColumns?: Readonly<
    Record<string, Readonly<Record<string, Partial<ColumnBlueprint> | null>>>
  >;
  /** Totals rows by table: the headers of the columns that are summed. */
  readonly totals?: Readonly<Record<string, readonly string[]>>;
  readonly tabsBefore?: readonly TabBlueprint[];
  readonly tabsAfter?: readonly TabBlueprint[];
}

const EVERY_DAY = '3F5B57';
const SET_UP = 'A9B4B1';
/** The tables that are worked in daily; those behind are the set-up and what Jarleaf keeps. */
const DAILY = new Set([
  'TreatmentLog',
  'Tissue',
  'Paste',
  'Buffers',
  'ReleasePaper',
  'Housing',
  'Sundries',
  'Jobs',
  'Plan',
]);

/** The blueprint of a sample workbook: each table on a tab of its own name. */
export function blueprintOf(workbook: SampleWorkbook): WorkbookBlueprint {
  const { title, tables, tabsBefore, tabsAfter } = workbook;
  return {
    title,
    tabs: [...(tabsBefore ?? []), ...tables.map((table) => tabOf(table, workbook)), ...(tabsAfter ?? [])],
  };
}

function tabOf({ definition, rows }: SampleTable, workbook: SampleWorkbook): TabBlueprint {
  const { name } = definition;
  const own = (workbook.ownColumns ?? []).filter(({ table }) => table === name);
  const changed = workbook.changedColumns?.[name] ?? {};
  const fields = fieldsInOrder(definition).filter((field) => changed[field] !== null);
  const cells = rows.map((row) =>
    fields.map((field) => cellOf(row[field], definition.columns[field]?.preparation ?? 'text')),
  );
  const sums = workbook.totals?.[name];
  return {
    name,
    lines: TABLE_LINES[name] ?? [],
    colour: DAILY.has(name) ? EVERY_DAY : SET_UP,
    table: {
      name,
      columns: [
        ...fields.map((field, index) => ({
          ...columnBlueprint(
            definition,
            field,
            cells.map((row) => row[index] ?? null),
          ),
          ...changed[field],
        })),
        ...own.map(({ column }) => column),
      ],
      rows: cells,
      ...(sums === undefined ? {} : { totals: { label: 'Total', sums } }),
    },
  };
}
