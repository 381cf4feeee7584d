import { projectionTab } from '../actions/projection-tab.ts';
import { type Refusal, refuse } from '../actions/writing-desk.ts';
import type { MaterialPlan } from '../core/planning/plan-answer.ts';
import type { TabBlueprint } from '../workbook/blueprint.ts';
import { freeTableName } from '../workbook/blueprint-names.ts';
import type { TabCell } from '../workbook/live-workbook.ts';
import type { TableSnapshot, WorkbookSnapshot } from '../workbook/port.ts';
import { NOT_OPEN } from './opened-workbook.ts';
import type { Books, Done } from './session-state.ts';

/** What a chart is drawn of: a material's stock from day to day, and the level at which to order again. */
export type ToDraw = Pick<MaterialPlan, 'material' | 'unit' | 'projection'> & {
  readonly level: Pick<MaterialPlan['level'], 'level'>;
};

/** A tab with a chart that is still to be added; its table has a name that no table of the workbook has. */
interface ChartToDraw {
  readonly ok: true;
  readonly tab: TabBlueprint;
  readonly table: string;
}

/** The tab for a chart, or why none is added to this workbook. */
export function chartToDraw(
  { material, unit, projection, level }: ToDraw,
  books: Books | null,
): ChartToDraw | Refusal {
  if (books === null) return NOT_OPEN;
  if (books.readingOnly !== null) return refuse(books.readingOnly);
  const tab = projectionTab(material, unit, projection, level.level);
  const table = freeTableName(
    tab.table.name,
    books.snapshot.tables.map(({ name }) => name),
  );
  return { ok: true, tab: { ...tab, table: { ...tab.table, name: table } }, table };
}

/** How drawing a chart ended, by what the workbook holds now. */
export function chartDrawn({ material }: ToDraw, chart: ChartToDraw, snapshot: WorkbookSnapshot): Done {
  const table = tableOf(chart, snapshot);
  if (table === undefined) {
    const message = `The tab with the chart of ${material} is gone again: somebody else took it away. Draw it anew.`;
    return { kind: 'refused', message };
  }
  const sentence = `Chart of ${material} on the tab ${table.tab}.`;
  return { kind: 'done', sentence, posting: null, drawing: null, remarks: [] };
}

/** Where a chart's figures begin; null where they are gone. */
export function cellOfChart(chart: ChartToDraw, books: Books | null): TabCell | null {
  const table = books === null ? undefined : tableOf(chart, books.snapshot);
  return table === undefined ? null : { tab: table.tab, row: table.firstRow, column: table.firstColumn };
}

function tableOf({ table }: ChartToDraw, { tables }: WorkbookSnapshot): TableSnapshot | undefined {
  return tables.find(({ name }) => name === table);
}
