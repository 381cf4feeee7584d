import { describe, expect, it } from 'vitest';
import { CellEditing } from '../../src/preview/grid/cell-editing.ts';
import { single } from '../../src/preview/grid/cell-position.ts';
import { cellRole, headerRowOver } from '../../src/preview/grid/cell-role.ts';
import {
  clearChosen,
  copyChosen,
  deleteChosenRows,
  editorText,
  paste,
  stepBack,
  typeInto,
} from '../../src/preview/model/edits.ts';
import { Workbench } from '../../src/preview/model/workbench.ts';
import type { CellWrite } from '../../src/workbook/port.ts';
import { preview } from './preview-file.ts';

const text = (value: string): CellWrite => ({ kind: 'text', text: value });

function bench() {
  const { file } = preview({
    tabs: [
      { name: 'Notes', lines: ['Title', 'second line'] },
      {
        name: 'Stock',
        table: {
          name: 'Lots',
          columns: [
            { header: 'Lot', width: 10, format: 'text' },
            { header: 'Left', width: 10, format: 'number' },
          ],
          rows: [
            [text('L1'), { kind: 'number', number: 5 }],
            [text('L2'), { kind: 'number', number: 6 }],
            [text('L3'), { kind: 'number', number: 7 }],
          ],
        },
      },
    ],
  });
  const made = new Workbench(file);
  made.chooseTab('Stock');
  return made;
}

const at = (row: number, column: number) => ({ row, column });
const values = (made: Workbench, row: number) => made.row(row).map(({ value }) => value);
const choose = (made: Workbench, from: ReturnType<typeof at>, to: ReturnType<typeof at>) =>
  made.choose({ active: to, other: from });

describe('the workbench', () => {
  it('begins a tab at the first body cell of its table, and comes back to where the person was', () => {
    const made = bench();
    expect(made.selection.value.active).toEqual(at(2, 1));
    made.choose(single(at(3, 2)));
    made.chooseTab('Notes');
    expect(made.selection.value.active).toEqual(at(1, 1));
    made.chooseTab('Stock');
    expect(made.selection.value.active).toEqual(at(3, 2));
  });

  it('shows a cell that is asked for, on its tab', () => {
    const made = bench();
    const heard: object[] = [];
    made.onSelect((cell) => heard.push(cell));
    expect(made.show({ tab: 'Notes', row: 2, column: 1 })).toBe(true);
    expect(made.tab.value).toBe('Notes');
    expect(heard.at(-1)).toEqual({ tab: 'Notes', row: 2, column: 1 });
    expect(made.show({ tab: 'None', row: 2, column: 1 })).toBe(false);
  });

  it('draws again what the pane or a function of its changes', () => {
    const made = bench();
    typeInto(made, at(9, 1), '=JARLEAF.LEFT(B2)');
    expect(values(made, 9)).toEqual([{ shown: '=_xldudf_JARLEAF_LEFT(B2)' }]);
    expect(editorText(made, at(9, 1))).toBe('=JARLEAF.LEFT(B2)');
    let factor = 2;
    const changed = made.registerFunctions((_, args) => Number(args[0]) * factor);
    expect(values(made, 9)).toEqual([10]);
    factor = 3;
    const { version } = made;
    const before = version.value;
    changed();
    expect(version.value).toBeGreaterThan(before);
    expect(values(made, 9)).toEqual([15]);
    typeInto(made, at(2, 2), '1');
    expect(values(made, 9)).toEqual([3]);
  });

  it('tells of changes that were not saved, until another workbook is opened', () => {
    const made = bench();
    expect(made.unsaved.value).toBe(false);
    typeInto(made, at(2, 1), 'X');
    expect(made.unsaved.value).toBe(true);
    made.open(bench().source.value);
    expect(made.unsaved.value).toBe(false);
    expect(made.tab.value).toBe('Notes');
  });
});

describe('edits in the grid', () => {
  it('leave a cell that was not changed as it is', () => {
    const made = bench();
    typeInto(made, at(2, 2), '5');
    expect(made.source.value.canUndo).toBe(false);
  });

  it('are kept in the editor where they are refused, and the reason is said', () => {
    const made = bench();
    const editing = new CellEditing(made);
    editing.begin(at(1, 1), 'cell', 'Name');
    expect(editing.commit()).toBe(false);
    expect(editing.current.value?.text).toBe('Name');
    expect(made.announcement.value).toMatchObject({
      kind: 'problem',
      text: expect.stringContaining('A1 is a header'),
    });
    editing.cancel();
    expect(made.announcement.value.text).toBe('');
    expect(values(made, 1)).toEqual(['Lot', 'Left']);
  });

  it('copy, paste and clear blocks; pasted rows below a table make it longer', () => {
    const made = bench();
    choose(made, at(2, 1), at(3, 2));
    expect(copyChosen(made)).toBe('L1\t5\nL2\t6');
    made.choose(single(at(5, 1)));
    paste(made, 'L4\t8\nL5\t9\n');
    expect(made.shape?.tables[0]?.area.lastRow).toBe(6);
    expect(values(made, 6)).toEqual(['L5', 9]);
    choose(made, at(5, 2), at(6, 2));
    paste(made, '1');
    expect([values(made, 5)[1], values(made, 6)[1]]).toEqual([1, 1]);
    choose(made, at(5, 1), at(6, 1));
    clearChosen(made);
    expect(values(made, 5)[0]).toBe(null);
    stepBack(made);
    expect(values(made, 5)[0]).toBe('L4');
  });

  it('delete the chosen rows of a table, and nothing else', () => {
    const made = bench();
    choose(made, at(2, 1), at(3, 1));
    expect(deleteChosenRows(made).kind).toBe('done');
    expect(values(made, 2)).toEqual(['L3', 7]);
    expect(made.announcement.value.text).toBe('2 rows of Lots deleted. Undo brings them back.');
    for (const cell of [at(1, 1), at(9, 1)]) {
      made.choose(single(cell));
      expect(deleteChosenRows(made).kind).toBe('refused');
    }
  });
});

describe('the parts of a table', () => {
  const tables = [
    {
      name: 'T',
      area: { firstRow: 3, lastRow: 7, firstColumn: 2, lastColumn: 4 },
      headerRows: 1,
      totalsRows: 1,
    },
  ];

  it('are told apart, and what stands beside it is none', () => {
    const roles = [2, 3, 4, 5, 6, 7, 8].map((row) => cellRole(tables, at(row, 2)));
    expect(roles).toEqual([null, 'header', 'body', 'band', 'body', 'totals', null]);
    expect(cellRole(tables, at(4, 5))).toBe(null);
    expect(headerRowOver(tables, at(6, 4))).toBe(3);
    expect(headerRowOver(tables, at(6, 1))).toBe(null);
  });
});
