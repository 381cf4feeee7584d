import { area, MAX_COLUMNS, MAX_ROWS } from '../cell-area.ts';
import { followMovedCharts } from '../charts.ts';
import { HostError, invalidArgument } from '../host-error.ts';
import { isBlank, type Sheet } from '../memory-workbook.ts';
import { EVENT } from '../message-types.ts';
import { usedArea } from '../sheet-cells.ts';
import { oneOf, rangeFrom, text, truth, wholeNumber } from './arguments.ts';
import { type Argument, LiveObject, type ObjectKind, type RequestSession } from './object-kind.ts';
import { subscriptions } from './subscriptions.ts';
import { sheetName } from './worksheets.ts';

function used(sheet: Sheet, [valuesOnly]: readonly Argument[], session: RequestSession): LiveObject | null {
  const only = valuesOnly !== null && valuesOnly !== undefined && truth(valuesOnly);
  const whole = { row: 0, column: 0, rows: MAX_ROWS, columns: MAX_COLUMNS };
  const found = usedArea(
    sheet,
    whole,
    (cell) => !isBlank(cell) || (!only && (cell.format !== undefined || cell.numberFormat !== 'General')),
  );
  return found === null ? null : session.range({ sheet, area: found });
}

export const worksheetKind: ObjectKind<Sheet> = {
  id: ({ id }) => ({ Id: id }),
  scalars: {
    Id: ({ id }) => id,
    Name: ({ name }) => name,
    Position: (sheet, { editing }) => editing.workbook.sheets.indexOf(sheet),
    ShowGridlines: ({ showGridlines }) => showGridlines,
    TabColor: ({ tabColor }) => tabColor,
    Visibility: ({ visibility }) => visibility,
  },
  setters: {
    Name: (sheet, value, session) => {
      sheet.name = sheetName(value, session, sheet);
    },
    Position: (sheet, value, { editing }) => {
      const { workbook } = editing;
      const position = wholeNumber(value);
      if (position < 0 || position >= workbook.sheets.length) throw invalidArgument();
      const others = workbook.sheets.filter((each) => each !== sheet);
      workbook.sheets = [...others.slice(0, position), sheet, ...others.slice(position)];
    },
    // The library sets it under this name.
    Gridlines: (sheet, value) => {
      sheet.showGridlines = truth(value);
    },
    TabColor: (sheet, value) => {
      const colour = text(value);
      if (colour !== '' && !/^#?[\da-f]{6}$/i.test(colour)) throw invalidArgument();
      sheet.tabColor = colour === '' ? '' : `#${colour.replace('#', '').toUpperCase()}`;
    },
    Visibility: (sheet, value, { editing }) => {
      const wanted = oneOf(value, ['Visible', 'Hidden', 'VeryHidden']);
      const others = editing.workbook.sheets.some((each) => each !== sheet && each.visibility === 'Visible');
      if (wanted !== 'Visible' && !others)
        throw new HostError('InvalidOperation', 'One sheet has to be visible.');
      sheet.visibility = wanted;
    },
  },
  navigations: {
    Charts: (sheet) => new LiveObject('ChartCollection', sheet),
    FreezePanes: (sheet) => new LiveObject('WorksheetFreezePanes', sheet),
    Protection: (sheet) => new LiveObject('WorksheetProtection', sheet),
    Tables: (sheet) => new LiveObject('TableCollection', sheet),
  },
  methods: {
    ...subscriptions<Sheet>(({ id }) => id, {
      Activated: EVENT.worksheetActivated,
      DataChanged: EVENT.worksheetChanged,
      Deactivated: EVENT.worksheetDeactivated,
      SelectionChanged: EVENT.worksheetSelection,
    }),
    Activate: (sheet, _args, session) => {
      if (sheet.visibility !== 'Visible') {
        throw new HostError('InvalidOperation', 'A hidden sheet cannot be activated.');
      }
      session.activate(sheet);
      return null;
    },
    Calculate: () => null,
    GetCell: (sheet, [row, column], session) =>
      session.range({ sheet, area: area(wholeNumber(row), wholeNumber(column), 1, 1) }),
    GetRange: (sheet, [address], session) => {
      if (address === null || address === undefined) {
        return session.range({ sheet, area: area(0, 0, MAX_ROWS, MAX_COLUMNS) });
      }
      const found = rangeFrom(address, session.editing.workbook, sheet);
      if (found.sheet !== sheet) throw invalidArgument();
      return session.range(found);
    },
    GetRangeByIndexes: (sheet, [row, column, rows, columns], session) => {
      const of = area(wholeNumber(row), wholeNumber(column), wholeNumber(rows), wholeNumber(columns));
      return session.range({ sheet, area: of });
    },
    // Documented: a blank sheet gives its top left cell.
    GetUsedRange: (sheet, args, session) =>
      used(sheet, args, session) ?? session.range({ sheet, area: area(0, 0, 1, 1) }),
    GetUsedRangeOrNullObject: used,
  },
  edits: {
    Delete: (sheet, _args, session) => {
      const { workbook, tell } = session.editing;
      const next = workbook.sheets.find((each) => each !== sheet && each.visibility === 'Visible');
      if (!next) throw new HostError('InvalidOperation', 'One sheet has to be visible.');
      workbook.sheets = workbook.sheets.filter((each) => each !== sheet);
      workbook.tables = workbook.tables.filter((table) => table.sheet !== sheet);
      followMovedCharts(workbook, sheet, () => null);
      session.editing.moved(sheet, () => null);
      if (workbook.firstSheetId === sheet.id) workbook.firstSheetId = next.id;
      if (session.client.activeSheet === sheet) session.activate(next);
      tell({ kind: 'sheet-deleted', sheet });
      return null;
    },
  },
};

export const freezePanesKind: ObjectKind<Sheet> = {
  methods: {
    GetLocationOrNullObject: (sheet, _args, session) => {
      const { frozenRows, frozenColumns } = sheet;
      if (frozenRows === 0 && frozenColumns === 0) return null;
      const of = area(0, 0, frozenRows || MAX_ROWS, frozenColumns || MAX_COLUMNS);
      return session.range({ sheet, area: of });
    },
  },
  edits: {
    FreezeColumns: (sheet, [count]) => {
      sheet.frozenColumns = wholeNumber(count, 0);
      sheet.frozenRows = 0;
      return null;
    },
    FreezeRows: (sheet, [count]) => {
      sheet.frozenRows = wholeNumber(count, 0);
      sheet.frozenColumns = 0;
      return null;
    },
    Unfreeze: (sheet) => {
      sheet.frozenRows = 0;
      sheet.frozenColumns = 0;
      return null;
    },
  },
};

export const protectionKind: ObjectKind<Sheet> = { scalars: { Protected: ({ isProtected }) => isProtected } };
