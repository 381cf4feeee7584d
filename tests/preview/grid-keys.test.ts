import { describe, expect, it } from 'vitest';
import { gridCommand } from '../../src/preview/grid/grid-keys.ts';
import { edgeOfData, type GridExtent } from '../../src/preview/grid/grid-moves.ts';

/** Filled: A1:C3 but for B2, and A6. */
const FILLED = new Set(['1,1', '1,2', '1,3', '2,1', '2,3', '3,1', '3,2', '3,3', '6,1']);
const EXTENT: GridExtent = {
  rows: 50,
  columns: 20,
  lastRow: 6,
  lastColumn: 3,
  page: 10,
  isFilled: ({ row, column }) => FILLED.has(`${row},${column}`),
};

const press = (key: string, ...held: ('ctrl' | 'shift' | 'alt')[]) => ({
  key,
  ctrlKey: held.includes('ctrl'),
  shiftKey: held.includes('shift'),
  altKey: held.includes('alt'),
  metaKey: false,
});
const at = (row: number, column: number) => ({ row, column });
const go = (row: number, column: number, extend = false) => ({ kind: 'go', to: at(row, column), extend });

describe('keys of the grid', () => {
  it.each([
    [press('ArrowDown'), at(2, 2), go(3, 2)],
    [press('ArrowUp'), at(1, 2), go(1, 2)],
    [press('ArrowRight', 'shift'), at(2, 2), go(2, 3, true)],
    [press('ArrowDown', 'ctrl'), at(1, 1), go(3, 1)],
    [press('ArrowDown', 'ctrl'), at(3, 1), go(6, 1)],
    [press('Home'), at(4, 3), go(4, 1)],
    [press('Home', 'ctrl'), at(4, 3), go(1, 1)],
    [press('End'), at(4, 1), go(4, 3)],
    [press('End', 'ctrl', 'shift'), at(1, 1), go(6, 3, true)],
    [press('PageDown'), at(2, 1), go(12, 1)],
    [press('PageUp'), at(5, 1), go(1, 1)],
    [press('Tab'), at(1, 1), go(1, 2)],
    [press('Tab', 'shift'), at(1, 2), go(1, 1)],
    [press('Enter'), at(1, 1), { kind: 'edit' }],
    [press('F2'), at(1, 1), { kind: 'edit' }],
    [press('Delete'), at(1, 1), { kind: 'clear' }],
    [press('x'), at(1, 1), { kind: 'type', text: 'x' }],
    [press('é'), at(1, 1), { kind: 'type', text: 'é' }],
    [press('-', 'ctrl'), at(1, 1), { kind: 'delete rows' }],
    [press('z', 'ctrl'), at(1, 1), { kind: 'undo' }],
    [press('Z', 'ctrl', 'shift'), at(1, 1), { kind: 'redo' }],
    [press('y', 'ctrl'), at(1, 1), { kind: 'redo' }],
    [press('a', 'ctrl'), at(1, 1), { kind: 'choose all' }],
  ])('%j from %j', (key, from, command) => {
    expect(gridCommand(key, from, EXTENT)).toEqual(command);
  });

  it('leave to the browser what is not theirs, so that Tab gets out of the grid', () => {
    for (const key of [press('F5'), press('Escape'), press('c', 'ctrl'), press('x', 'alt'), press('F6')]) {
      expect(gridCommand(key, at(1, 1), EXTENT)).toBe(null);
    }
    expect(gridCommand(press('Tab', 'shift'), at(1, 1), EXTENT)).toBe(null);
    expect(gridCommand(press('Tab'), at(1, 20), EXTENT)).toBe(null);
  });
});

describe('the edge of what is filled', () => {
  it.each([
    [at(1, 2), 'down', at(3, 2)],
    [at(3, 2), 'up', at(1, 2)],
    [at(2, 1), 'right', at(2, 3)],
    [at(1, 1), 'right', at(1, 3)],
    [at(3, 1), 'left', at(3, 1)],
    [at(10, 1), 'up', at(6, 1)],
    [at(6, 1), 'right', at(6, 3)],
  ] as const)('from %j %s', (from, direction, to) => {
    expect(edgeOfData(from, direction, EXTENT)).toEqual(to);
  });
});
