import type { JSX } from 'preact';
import type { TabShape } from '../../files/tab-shape.ts';
import { blockOf } from '../grid/cell-position.ts';
import type { Workbench } from '../model/workbench.ts';

/** The line below the grid: what has just happened, and how large things are. */
export function StatusLine({ bench }: { readonly bench: Workbench }): JSX.Element {
  const { kind, text } = bench.announcement.value;
  const block = blockOf(bench.selection.value);
  const rows = block.lastRow - block.firstRow + 1;
  const columns = block.lastColumn - block.firstColumn + 1;
  return (
    <footer class="status">
      <p class={`status-news${kind === 'problem' ? ' status-problem' : ''}`}>
        <span role="status">{kind === 'news' ? text : ''}</span>
        <span role="alert">{kind === 'problem' ? text : ''}</span>
      </p>
      <p class="status-size" role="status">
        {rows * columns > 1 ? `${count(rows, 'row')} by ${count(columns, 'column')} chosen. ` : ''}
        {sizeOf(bench)}
      </p>
    </footer>
  );
}

function sizeOf(bench: Workbench): string {
  const { shape } = bench;
  if (!shape) return '';
  const chart = shape.hasChart ? 'A chart stands on this tab: see it in a spreadsheet program. ' : '';
  return chart + cellsOf(shape);
}

function cellsOf(shape: TabShape): string {
  const tables = shape.tables.map(({ name, area, headerRows, totalsRows }) => {
    const body = area.lastRow - area.firstRow + 1 - headerRows - totalsRows;
    return `${name}: ${count(body, 'row')}, ${count(area.lastColumn - area.firstColumn + 1, 'column')}`;
  });
  if (tables.length > 0) return tables.join(' · ');
  return `${shape.name}: ${count(shape.lastRow, 'row')}, ${count(shape.lastColumn, 'column')}, no table`;
}

function count(number: number, what: string): string {
  return `${number.toLocaleString('en-GB')} ${what}${number === 1 ? '' : 's'}`;
}
