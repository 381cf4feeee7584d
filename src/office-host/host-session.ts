import { areaAddress } from './cell-area.ts';
import type { InputRules } from './cell-input.ts';
import { type DisplayText, shownText } from './cell-text.ts';
import { type ClientState, moveRanges, type RangeSubject } from './client-state.ts';
import type { Editing, WorkbookChange } from './editing.ts';
import { activationEvents, type EventEntry, selectionEvents } from './events.ts';
import { notImplemented } from './host-error.ts';
import { cellAt, type MemoryWorkbook, type Sheet } from './memory-workbook.ts';
import { areaOf } from './objects/arguments.ts';
import { LiveObject, type RequestSession } from './objects/object-kind.ts';
import type { CellScalar } from './workbook-description.ts';

/** A cell whose formula is to be worked out. */
export interface FormulaCell {
  readonly sheet: string;
  /** Counted from 0. */
  readonly row: number;
  readonly column: number;
  /** The value of another cell, counted from 0; of the same sheet where none is named. */
  readonly valueAt: (row: number, column: number, sheet?: string) => CellScalar;
}

/** Gives the value of a formula, or undefined where the stored one stands. */
export type Evaluate = (formula: string, cell: FormulaCell) => CellScalar | undefined;

export interface SessionRules {
  readonly workbook: MemoryWorkbook;
  readonly input: InputRules;
  readonly evaluate: Evaluate | undefined;
  readonly display: DisplayText | undefined;
  readonly maxCells: number;
  readonly clients: () => Iterable<ClientState>;
  readonly send: (client: ClientState, events: readonly EventEntry[]) => void;
  readonly nextEventId: () => number;
  readonly openWorkbook: ((base64: string) => void) | undefined;
}

/** A session, and what it did to the workbook. */
export interface HostSession extends RequestSession {
  readonly changes: WorkbookChange[];
}

/** The value of a cell; a formula's by the evaluator, if there is one and it knows it. */
export function cellValue(rules: SessionRules, sheet: Sheet, row: number, column: number): CellScalar {
  const cell = cellAt(sheet, row, column);
  if (cell.formula === undefined || !rules.evaluate) return cell.value;
  const given = rules.evaluate(cell.formula, {
    sheet: sheet.name,
    row,
    column,
    valueAt: (otherRow, otherColumn, name) => {
      const other = name === undefined ? sheet : rules.workbook.sheets.find((each) => each.name === name);
      return other ? cellValue(rules, other, otherRow, otherColumn) : '#REF!';
    },
  });
  return given ?? cell.value;
}

/** Begins what a client, or its person, does in one go. */
export function beginSession(rules: SessionRules, client: ClientState): HostSession {
  const changes: WorkbookChange[] = [];
  const ranges: RangeSubject[] = [];
  const editing: Editing = {
    workbook: rules.workbook,
    rules: rules.input,
    tell: (change) => {
      changes.push(change);
    },
    moved: (sheet, shift) => {
      // A range that a client holds on to may be one of this request: it moves once.
      const held = [...rules.clients()].flatMap((each) => [
        ...each.references.values(),
        ...each.eventReferences.values(),
      ]);
      moveRanges(new Set([...ranges, ...held]), sheet, shift);
    },
  };
  const activate = (sheet: Sheet): void => {
    const from = client.activeSheet;
    if (from === sheet) return;
    client.activeSheet = sheet;
    rules.send(client, activationEvents(client, from, sheet, rules.nextEventId));
  };
  return {
    editing,
    client,
    changes,
    maxCells: rules.maxCells,
    valueAt: (sheet, row, column) => cellValue(rules, sheet, row, column),
    textAt: (sheet, row, column) => {
      const { numberFormat } = cellAt(sheet, row, column);
      return shownText(
        cellValue(rules, sheet, row, column),
        numberFormat,
        rules.workbook.dateSystem,
        rules.display,
      );
    },
    range: (subject) => {
      const own = { ...subject };
      ranges.push(own);
      return new LiveObject('Range', own);
    },
    activate,
    openWorkbook: (base64) => {
      if (rules.openWorkbook === undefined) throw notImplemented('WorkbookCreated.Open');
      rules.openWorkbook(base64);
    },
    select: (range) => {
      const of = areaOf(range);
      client.selections.set(range.sheet.id, of);
      activate(range.sheet);
      rules.send(client, selectionEvents(client, areaAddress(of), rules.nextEventId));
    },
  };
}
