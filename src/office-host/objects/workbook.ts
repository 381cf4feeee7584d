import { parseDay } from '../../core/day.ts';
import { serialOfDay } from '../../core/serial-date.ts';
import { areaOfCell } from '../cell-area.ts';
import { selectionOf } from '../client-state.ts';
import { notImplemented } from '../host-error.ts';
import { areaOf, oneOf, text, wholeNumber } from './arguments.ts';
import { LiveObject, type ObjectKind, type Subjects } from './object-kind.ts';

export const workbookKind: ObjectKind<null> = {
  scalars: {
    Name: (_, { editing }) => editing.workbook.name,
    ReadOnly: (_, { editing }) => editing.workbook.readOnly,
  },
  navigations: {
    Application: () => new LiveObject('Application', null),
    Functions: () => new LiveObject('Functions', null),
    Names: () => new LiveObject('NamedItemCollection', null),
    Settings: () => new LiveObject('SettingCollection', null),
    Tables: () => new LiveObject('TableCollection', null),
    Worksheets: () => new LiveObject('WorksheetCollection', null),
  },
  methods: {
    _RemoveReference: (_, [id], { client }) => {
      client.references.delete(text(id));
      return null;
    },
    _RemoveAllReferences: (_, _args, { client }) => {
      client.references.clear();
      return null;
    },
    _GetRangeForEventByReferenceId: (_, [id], session) => {
      const range = session.client.eventReferences.get(text(id));
      if (!range) throw notImplemented('A range of an event that long ago');
      return session.range({ sheet: range.sheet, area: areaOf(range) });
    },
    _GetRangeOrNullObjectForEventByReferenceId: (_, [id], session) => {
      const range = session.client.eventReferences.get(text(id));
      return range?.area ? session.range({ sheet: range.sheet, area: range.area }) : null;
    },
    GetActiveCell: (_, _args, session) => {
      const { sheet, area } = selectionOf(session.client);
      return session.range({ sheet, area: areaOfCell(area.row, area.column) });
    },
    GetSelectedRange: (_, _args, session) => session.range(selectionOf(session.client)),
  },
};

export const applicationKind: ObjectKind<null> = {
  scalars: {
    CalculationMode: (_, { editing }) => editing.workbook.calculationMode,
    CalculationState: () => 'Done',
  },
  setters: {
    CalculationMode: (_, value, { editing }) => {
      editing.workbook.calculationMode = oneOf(value, ['Automatic', 'AutomaticExceptTables', 'Manual']);
    },
  },
  methods: {
    Calculate: (_, [type]) => {
      oneOf(type, ['Recalculate', 'Full', 'FullRebuild']);
      return null;
    },
    CreateWorkbook: (_, [base64]) => new LiveObject('WorkbookCreated', text(base64)),
    SuspendApiCalculationUntilNextSync: () => null,
    SuspendScreenUpdatingUntilNextSync: () => null,
  },
};

/** A workbook that is not open yet: its file, in base64. */
export const workbookCreatedKind: ObjectKind<string> = {
  methods: {
    Open: (base64, _args, session) => {
      session.openWorkbook(base64);
      return null;
    },
  },
};

/** Of the program's functions only DATE, by which the date system of the workbook can be told without a cell. */
export const functionsKind: ObjectKind<null> = {
  methods: {
    Date: (_, [year, month, day], { editing }) => {
      const parts = [wholeNumber(year), wholeNumber(month), wholeNumber(day)].map((part, index) =>
        String(part).padStart(index === 0 ? 4 : 2, '0'),
      );
      const parsed = parseDay(parts.join('-'));
      if (parsed === null || wholeNumber(year) < 1904)
        throw notImplemented('DATE outside the calendar since 1904');
      const value = serialOfDay(parsed, editing.workbook.dateSystem);
      return new LiveObject('FunctionResult', { value, error: null });
    },
  },
};

export const functionResultKind: ObjectKind<Subjects['FunctionResult']> = {
  scalars: { Error: ({ error }) => error, Value: ({ value }) => value },
};
