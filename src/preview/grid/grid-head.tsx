import type { VirtualItem } from '@tanstack/virtual-core';
import type { JSX } from 'preact';
import { columnLetters } from '../../files/cell-reference.ts';

/** The row above the cells: the letters of the columns, and their names where the table's header is out of view. */
export function GridHead({
  width,
  columns,
  isChosen,
  nameOf,
}: {
  readonly width: number;
  readonly columns: readonly VirtualItem[];
  readonly isChosen: (column: number) => boolean;
  readonly nameOf: (column: number) => string | null;
}): JSX.Element {
  return (
    <div class="grid-head" role="row" aria-rowindex={1} style={{ width: `${width}px` }}>
      <div class="grid-corner" role="columnheader" aria-colindex={1}>
        <span class="for-readers">Row</span>
      </div>
      {columns.map(({ index, start, size }) => {
        const name = nameOf(index + 1);
        return (
          <div
            key={index}
            role="columnheader"
            aria-colindex={index + 2}
            class={`column-head${isChosen(index + 1) ? ' head-chosen' : ''}`}
            style={{ left: `${start}px`, width: `${size}px` }}
            title={name ?? undefined}
          >
            <span class="column-letter">{columnLetters(index + 1)}</span>
            {name ? <span class="column-name">{name}</span> : null}
          </div>
        );
      })}
    </div>
  );
}
