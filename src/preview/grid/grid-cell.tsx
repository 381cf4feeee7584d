import type { JSX } from 'preact';
import type { ShownCell } from '../../files/tab-cells.ts';
import type { CellText } from '../model/cell-text.ts';
import type { CellRole } from './cell-role.ts';

export interface GridCellProps {
  readonly id: string;
  readonly column: number;
  readonly left: number;
  readonly width: number;
  readonly cell: ShownCell | undefined;
  readonly shown: CellText;
  readonly role: CellRole;
  readonly label: string;
  readonly active: boolean;
  readonly chosen: boolean;
}

/** Pixels that a digit takes at most, and both margins of a cell. */
const DIGIT = 8.4;
const MARGINS = 16;

/** Of a number that is cut off nobody can tell what it is, so it isn't shown in part. */
function fits({ cell, shown, width }: GridCellProps): boolean {
  return typeof cell?.value !== 'number' || shown.text.length * DIGIT + MARGINS <= width;
}

export function GridCell(props: GridCellProps): JSX.Element {
  const { shown, role, cell } = props;
  const classes = ['cell', `cell-${shown.side}`];
  if (role !== null) classes.push('cell-table', `cell-${role}`);
  if (props.chosen) classes.push('cell-chosen');
  if (props.active) classes.push('cell-active');
  if (cell?.formula != null) classes.push('cell-formula');
  if (shown.trouble !== null) classes.push('cell-trouble');
  return (
    <div
      id={props.id}
      role="gridcell"
      aria-colindex={props.column + 1}
      aria-selected={props.chosen}
      aria-label={props.label}
      class={classes.join(' ')}
      style={{ left: `${props.left}px`, width: `${props.width}px` }}
    >
      {fits(props) ? shown.text : '###'}
    </div>
  );
}
