import { readXlsx } from 'hucre';
import { cellName } from '../../src/files/cell-reference.ts';
import type { ShownChart } from '../contract/chart-contract.ts';

/** The charts of a file, read by another library than the adapter's own. */
export async function chartsIn(bytes: Uint8Array): Promise<ShownChart[]> {
  const { sheets } = await readXlsx(bytes);
  return sheets.flatMap(({ name, charts = [] }) =>
    charts.map(({ title, anchor, series = [] }): ShownChart => {
      if (anchor?.to === undefined) throw new Error(`A chart on ${name} has no place`);
      const { from, to } = anchor;
      return {
        tab: name,
        title,
        // Counted from 0, and the end no longer belongs to it.
        covers: [cellName(from.row + 1, from.col + 1), cellName(to.row, to.col)],
        series: series.map((each) => ({
          name: each.name,
          values: plainAddress(each.valuesRef),
          categories: plainAddress(each.categoriesRef),
          weight: each.stroke?.width,
        })),
      };
    }),
  );
}

/** 'Ann''s tab'!$B$5:$B$7 as Ann's tab!B5:B7. */
function plainAddress(reference: string | undefined): string {
  const [, quoted, cells] = /^'((?:[^']|'')*)'!(.*)$/.exec(reference ?? '') ?? [];
  if (quoted === undefined || cells === undefined) throw new Error(`No address: ${reference}`);
  return `${quoted.replaceAll("''", "'")}!${cells.replaceAll('$', '')}`;
}
