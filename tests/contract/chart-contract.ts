import { describe, expect, it } from 'vitest';
import type { Day } from '../../src/core/day.ts';
import { dayOfSerial } from '../../src/core/serial-date.ts';
import type { TabBlueprint, TableBlueprint } from '../../src/workbook/blueprint.ts';
import type { CellWrite, WorkbookSnapshot } from '../../src/workbook/port.ts';
import type { ContractTable } from './workbook-contract.ts';

/** A chart as a program shows it; addresses are written as Figures!B4:B6. */
export interface ShownChart {
  readonly tab: string;
  readonly title: string | undefined;
  /** The first and the last cell that it covers. */
  readonly covers: readonly [string, string];
  readonly series: readonly {
    readonly name: string | undefined;
    readonly values: string;
    readonly categories: string;
    /** Of its line, in points. */
    readonly weight: number | undefined;
  }[];
}

/** A workbook to which tabs can be added, as an adapter offers it. */
export interface ChartWorkbook {
  snapshot(): WorkbookSnapshot | Promise<WorkbookSnapshot>;
  /** Rejects where nothing was added. */
  addTabs(tabs: readonly TabBlueprint[]): void | Promise<void>;
  /** All its charts, by tab. */
  charts(): Promise<readonly ShownChart[]>;
  /** The same workbook, stored and read again from nothing. */
  reopen(): ChartWorkbook | Promise<ChartWorkbook>;
}

export type ChartFactory = (tables: readonly ContractTable[]) => ChartWorkbook | Promise<ChartWorkbook>;

const number = (value: number): CellWrite => ({ kind: 'number', number: value });
const day = (value: number): CellWrite => ({ kind: 'day', day: value as Day });

const LOTS: ContractTable = { name: 'Lots', headers: ['Lot'], rows: [[{ kind: 'text', text: 'L1' }]] };

function figures(
  name: string,
  table: string,
  title = 'Tissue, sheets',
): TabBlueprint & { readonly table: TableBlueprint } {
  return {
    name,
    lines: ['What will be there', 'In sheets'],
    table: {
      name: table,
      columns: [
        { header: 'Day', width: 12, format: 'day' },
        { header: 'Usable', width: 10, format: 'number' },
        { header: 'Arrives', width: 10, format: 'number' },
        { header: 'Missing', width: 10, format: 'number' },
      ],
      rows: [
        [day(20_000), number(12.5), number(0), number(0)],
        [day(20_001), number(0), number(3), number(1)],
        [day(20_002), number(2), number(0), number(0)],
      ],
      chart: { title, kind: 'line', categories: 'Day', series: ['Usable', 'Missing'] },
    },
  };
}

const shown = (tab: string, title = 'Tissue, sheets'): ShownChart => ({
  tab,
  title,
  covers: ['F5', 'O24'],
  series: [
    { name: 'Usable', values: `${tab}!B5:B7`, categories: `${tab}!A5:A7`, weight: 2 },
    { name: 'Missing', values: `${tab}!D5:D7`, categories: `${tab}!A5:A7`, weight: 1.5 },
  ],
});

/** What every adapter of the workbook gate does with a chart on a new tab. */
export function chartContract(name: string, make: ChartFactory): void {
  /** The workbook before and after storing. */
  const both = async (workbook: ChartWorkbook): Promise<ChartWorkbook[]> => [
    workbook,
    await workbook.reopen(),
  ];

  describe(`chart contract: ${name}`, () => {
    it('draws a chart beside the table from the columns named, and leaves other tables as they were', async () => {
      const workbook = await make([LOTS]);
      expect(await workbook.charts()).toEqual([]);
      const [before] = (await workbook.snapshot()).tables;
      await workbook.addTabs([figures('Figures', 'Projection_x')]);
      for (const each of await both(workbook)) {
        expect(await each.charts()).toEqual([shown('Figures')]);
        const { tables, dateSystem } = await each.snapshot();
        expect(JSON.stringify(tables[0])).toBe(JSON.stringify(before));
        expect(tables[1]).toMatchObject({ name: 'Projection_x', tab: 'Figures', firstRow: 5, rowCount: 3 });
        const [days, usable] = tables[1]?.columns ?? [];
        expect(days?.values.map((value) => dayOfSerial(value as number, dateSystem))).toEqual([
          20_000, 20_001, 20_002,
        ]);
        expect(days?.look(0)).toBe('date');
        expect(usable?.values).toEqual([12.5, 0, 2]);
      }
    });

    it('draws each chart from its own tab, whatever the tab is called in the end', async () => {
      const workbook = await make([LOTS]);
      await workbook.addTabs([figures('Figures', 'One'), figures('Figures', 'Two', 'Two')]);
      await workbook.addTabs([figures("Ann's <5 g> & more", 'Three', '<5 g> & "more"')]);
      for (const each of await both(workbook)) {
        expect(await each.charts()).toEqual([
          shown('Figures'),
          shown('Figures 2', 'Two'),
          shown("Ann's <5 g> & more", '<5 g> & "more"'),
        ]);
      }
    });

    it('leaves out a chart whose table is there already', async () => {
      const workbook = await make([LOTS]);
      await workbook.addTabs([figures('Figures', 'One')]);
      await workbook.addTabs([figures('Others', 'ONE'), { name: 'Words', lines: ['No table'] }]);
      for (const each of await both(workbook)) expect(await each.charts()).toEqual([shown('Figures')]);
    });

    it('adds nothing where a chart names a column that is not there', async () => {
      const workbook = await make([LOTS]);
      const before = JSON.stringify(await workbook.snapshot());
      const { table, ...tab } = figures('Figures', 'One');
      const chart = { title: 'x', kind: 'line' as const, categories: 'Day', series: ['Absent'] };
      const wrong = { ...tab, table: { ...table, chart } };
      await expect((async () => workbook.addTabs([wrong]))()).rejects.toThrow('Absent');
      for (const each of await both(workbook)) {
        expect(await each.charts()).toEqual([]);
        expect(JSON.stringify(await each.snapshot())).toBe(before);
      }
    });
  });
}
