import { defaultRangeExtractor, type Range } from '@tanstack/virtual-core';
import type { JSX } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { MAX_COLUMNS, MAX_ROWS } from '../../files/limits.ts';
import type { TabShape } from '../../files/tab-shape.ts';
import { cellText } from '../model/cell-text.ts';
import { clearChosen, copyChosen, deleteChosenRows, paste, stepBack, stepForward } from '../model/edits.ts';
import type { Workbench } from '../model/workbench.ts';
import type { CellEditing } from './cell-editing.ts';
import { CellEditor } from './cell-editor.tsx';
import { cellLabel } from './cell-label.ts';
import { blockOf, type CellPosition, isInBlock, isSamePosition, single } from './cell-position.ts';
import { cellRole, headerRowOver } from './cell-role.ts';
import { columnWidths } from './column-widths.ts';
import { GridCell } from './grid-cell.tsx';
import { GridHead } from './grid-head.tsx';
import { gridCommand } from './grid-keys.ts';
import type { GridExtent } from './grid-moves.ts';
import { pointedCell } from './pointed-cell.ts';
import { useVirtualizer } from './use-virtualizer.ts';

const ROW_HEIGHT = 28;
const ROW_NUMBER_WIDTH = 64;
/** Blank rows and columns behind what is filled, to type into. */
const ROWS_BEHIND = 50;
const COLUMNS_BEHIND = 6;
const FEWEST_COLUMNS = 26;

/** The cells of a tab: only those in view are drawn. Has to be made anew for another tab. */
export function Grid({
  bench,
  shape,
  editing,
}: {
  readonly bench: Workbench;
  readonly shape: TabShape;
  readonly editing: CellEditing;
}): JSX.Element {
  void bench.version.value;
  const scrolled = useRef<HTMLDivElement>(null);
  const { active } = bench.selection.value;
  const chosen = blockOf(bench.selection.value);
  const rowCount = Math.min(MAX_ROWS, Math.max(shape.lastRow, active.row) + ROWS_BEHIND);
  const columnCount = Math.min(
    MAX_COLUMNS,
    Math.max(FEWEST_COLUMNS, shape.lastColumn + COLUMNS_BEHIND, active.column),
  );
  const widths = useMemo(() => columnWidths(shape, columnCount), [shape, columnCount]);
  const withActive = (index: number) => (range: Range) => {
    const inView = defaultRangeExtractor(range);
    return inView.includes(index) ? inView : [...inView, index].toSorted((a, b) => a - b);
  };
  const rows = useVirtualizer({
    count: rowCount,
    getScrollElement: () => scrolled.current,
    estimateSize: () => ROW_HEIGHT,
    overscan: 8,
    paddingStart: ROW_HEIGHT,
    scrollPaddingStart: ROW_HEIGHT,
    rangeExtractor: withActive(active.row - 1),
  });
  const columns = useVirtualizer({
    count: columnCount,
    horizontal: true,
    getScrollElement: () => scrolled.current,
    estimateSize: (index) => widths[index] ?? ROW_NUMBER_WIDTH,
    overscan: 2,
    paddingStart: ROW_NUMBER_WIDTH,
    scrollPaddingStart: ROW_NUMBER_WIDTH,
    rangeExtractor: withActive(active.column - 1),
  });
  const page = Math.max(1, Math.floor((scrolled.current?.clientHeight ?? ROW_HEIGHT) / ROW_HEIGHT) - 2);
  const extent: GridExtent = {
    rows: rowCount,
    columns: columnCount,
    lastRow: shape.lastRow,
    lastColumn: shape.lastColumn,
    page,
    isFilled: ({ row, column }) => bench.source.value.isFilled(shape.name, row, column),
  };
  useLayoutEffect(() => {
    rows.scrollToIndex(active.row - 1);
    columns.scrollToIndex(active.column - 1);
  }, [active.row, active.column, bench.shows.value]);
  useEffect(() => columns.measure(), [widths]);

  const goTo = (to: CellPosition, extend: boolean): void => {
    bench.choose(extend ? { active: to, other: bench.selection.value.other } : single(to));
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const command = event.target === scrolled.current ? gridCommand(event, active, extent) : null;
    if (!command) return;
    event.preventDefault();
    switch (command.kind) {
      case 'go':
        goTo(command.to, command.extend);
        break;
      case 'edit':
        editing.begin(active, 'cell');
        break;
      case 'type':
        editing.begin(active, 'cell', command.text);
        break;
      case 'clear':
        clearChosen(bench);
        break;
      case 'delete rows':
        deleteChosenRows(bench);
        break;
      case 'undo':
        stepBack(bench);
        break;
      case 'redo':
        stepForward(bench);
        break;
      case 'choose all': {
        const last = { row: Math.max(1, shape.lastRow), column: Math.max(1, shape.lastColumn) };
        bench.choose({ active: { row: 1, column: 1 }, other: last });
      }
    }
  };
  const onClipboard = (event: ClipboardEvent): void => {
    if (event.target !== scrolled.current || !event.clipboardData) return;
    event.preventDefault();
    if (event.type === 'paste') {
      paste(bench, event.clipboardData.getData('text/plain'));
      return;
    }
    const text = copyChosen(bench);
    if (text === null) return;
    event.clipboardData.setData('text/plain', text);
    if (event.type === 'cut') clearChosen(bench);
  };
  const onPointerDown = (event: PointerEvent): void => {
    const cell = pointedCell(event.target);
    if (!cell || event.button !== 0) return;
    goTo(cell, event.shiftKey);
  };
  const onPointerMove = (event: PointerEvent): void => {
    const cell = event.buttons === 1 && event.pointerType === 'mouse' ? pointedCell(event.target) : null;
    if (cell && !editing.current.value && !isSamePosition(cell, active)) {
      bench.choose({ active: cell, other: bench.selection.value.other });
    }
  };

  const { dateSystem } = bench.source.value;
  const headerOf = (cell: CellPosition): string | null => {
    const row = headerRowOver(shape.tables, cell);
    return row === null ? null : cellText(bench.cell({ row, column: cell.column }), dateSystem).text;
  };
  const below = ({ row, column }: CellPosition) => bench.cell({ row: row + 1, column });
  const shownRows = rows.getVirtualItems();
  const shownColumns = columns.getVirtualItems();
  const topRow = Math.floor((rows.scrollOffset ?? 0) / ROW_HEIGHT) + 1;
  const width = columns.getTotalSize();
  return (
    <div
      ref={scrolled}
      class="grid"
      role="grid"
      tabIndex={0}
      aria-label={`Cells of the tab ${shape.name}`}
      aria-rowcount={rowCount + 1}
      aria-colcount={columnCount + 1}
      aria-multiselectable
      aria-activedescendant={cellId(active)}
      aria-describedby="grid-keys"
      onKeyDown={onKeyDown}
      onCopy={onClipboard}
      onCut={onClipboard}
      onPaste={onClipboard}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onDblClick={(event) => {
        if (pointedCell(event.target)) editing.begin(active, 'cell');
      }}
    >
      <div
        class="grid-all"
        role="presentation"
        style={{ width: `${width}px`, height: `${rows.getTotalSize()}px` }}
      >
        <GridHead
          width={width}
          columns={shownColumns}
          isChosen={(column) => column >= chosen.firstColumn && column <= chosen.lastColumn}
          nameOf={(column) => {
            const cell = { row: topRow, column };
            return headerRowOver(shape.tables, cell) === topRow ? null : headerOf(cell);
          }}
        />
        {shownRows.map(({ index, start }) => {
          const row = index + 1;
          const cells = new Map(bench.row(row).map((cell) => [cell.column, cell]));
          const isChosen = row >= chosen.firstRow && row <= chosen.lastRow;
          return (
            <div
              key={index}
              class="grid-row"
              role="row"
              aria-rowindex={row + 1}
              style={{ transform: `translateY(${start}px)`, width: `${width}px` }}
            >
              <div role="rowheader" aria-colindex={1} class={`row-number${isChosen ? ' head-chosen' : ''}`}>
                {row}
              </div>
              {shownColumns.map(({ index: place, start: left, size }) => {
                const position = { row, column: place + 1 };
                const cell = cells.get(position.column);
                const role = cellRole(shape.tables, position);
                const own = cellText(cell, dateSystem);
                // A header stands over its column's values.
                const shown =
                  role === 'header' ? { ...own, side: cellText(below(position), dateSystem).side } : own;
                return (
                  <GridCell
                    key={place}
                    id={cellId(position)}
                    column={position.column}
                    left={left}
                    width={size}
                    cell={cell}
                    shown={shown}
                    role={role}
                    label={cellLabel(position, role === 'header' ? null : headerOf(position), cell, shown)}
                    active={isSamePosition(position, active)}
                    chosen={isInBlock(chosen, position)}
                  />
                );
              })}
            </div>
          );
        })}
        <CellEditor
          editing={editing}
          extent={extent}
          left={columns.measurementsCache[active.column - 1]?.start ?? 0}
          top={(active.row - 1) * ROW_HEIGHT + ROW_HEIGHT}
          width={widths[active.column - 1] ?? 0}
          onLeave={(next) => {
            if (next) bench.choose(single(next));
            scrolled.current?.focus({ preventScroll: true });
          }}
        />
      </div>
    </div>
  );
}

function cellId({ row, column }: CellPosition): string {
  return `cell-${row}-${column}`;
}
