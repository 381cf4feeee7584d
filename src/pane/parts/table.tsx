import type { ComponentChildren } from 'preact';
import { classNames } from './class-names.ts';

export interface TableColumn {
  readonly header: string;
  /** Numbers stand at the end. */
  readonly align?: 'start' | 'end';
  /** Takes what width is left. */
  readonly wide?: boolean;
}

export interface TableRow {
  readonly key: string;
  /** One per column; the first is the row's heading. */
  readonly cells: readonly ComponentChildren[];
  readonly muted?: boolean;
}

export interface TableProps {
  /** Says what the table holds; read out, and shown unless hidden. */
  readonly caption: string;
  readonly captionHidden?: boolean;
  /** At most four fit 320 px: put what belongs together into one cell, on two lines. */
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
  readonly foot?: readonly TableRow[];
}

/** Rows and columns, as a real table: no scrolling sideways, text wraps. */
export function Table({ caption, captionHidden = false, columns, rows, foot = [] }: TableProps) {
  const row = ({ key, cells, muted = false }: TableRow) => (
    <tr key={key} class={classNames(muted && 'table-muted')}>
      {cells.map((cell, place) =>
        place === 0 ? (
          <th scope="row" class={cellClass(columns[place])}>
            {cell}
          </th>
        ) : (
          <td class={cellClass(columns[place])}>{cell}</td>
        ),
      )}
    </tr>
  );
  return (
    <table class="table">
      <caption class={classNames(captionHidden && 'visually-hidden')}>{caption}</caption>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column.header} scope="col" class={cellClass(column)}>
              {column.header}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>{rows.map(row)}</tbody>
      {foot.length > 0 && <tfoot>{foot.map(row)}</tfoot>}
    </table>
  );
}

function cellClass(column: TableColumn | undefined): string {
  return classNames(column?.align === 'end' && 'cell-end', column?.wide === true && 'cell-wide');
}
