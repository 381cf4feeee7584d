import { HostError } from './host-error.ts';

/** The versions of the requirement sets that a host declares, such as { ExcelApi: '1.14' }. */
export type RequirementSets = Readonly<Record<string, string>>;

/** The set to which a member belongs where that isn't the first, ExcelApi 1.1: a version of ExcelApi, or set and version. */
export const SINCE: Readonly<Record<string, string>> = {
  'Application.CalculationState': '1.9',
  'Application.CreateWorkbook': '1.8',
  'Application.SuspendApiCalculationUntilNextSync': '1.6',
  'Application.SuspendScreenUpdatingUntilNextSync': '1.9',
  'Chart.ChartType': '1.7',
  'Chart.Id': '1.7',
  'ChartCollection.GetCount': '1.4',
  'ChartCollection.GetItemOrNullObject': '1.4',
  'ChartLineFormat.LineStyle': '1.7',
  'ChartLineFormat.Weight': '1.7',
  'ChartSeries.SetValues': '1.7',
  'ChartSeries.SetXAxisValues': '1.7',
  'ChartSeriesCollection.Add': '1.7',
  'ChartSeriesCollection.GetCount': '1.4',
  'NamedItem.Delete': '1.4',
  'NamedItem.Formula': '1.7',
  'NamedItem.GetRangeOrNullObject': '1.4',
  'NamedItemCollection.Add': '1.4',
  'NamedItemCollection.GetCount': '1.4',
  'NamedItemCollection.GetItemOrNullObject': '1.4',
  'Range.Calculate': '1.6',
  'Range.CopyFrom': '1.9',
  'Range.DataValidation': '1.8',
  'Range.GetAbsoluteResizedRange': '1.7',
  'Range.GetColumnsAfter': '1.3',
  'Range.GetColumnsBefore': '1.3',
  'Range.GetIntersectionOrNullObject': '1.4',
  'Range.GetResizedRange': '1.3',
  'Range.GetRowsAbove': '1.3',
  'Range.GetRowsBelow': '1.3',
  'Range.GetUsedRangeOrNullObject': '1.4',
  'Range.IsEntireColumn': '1.7',
  'Range.IsEntireRow': '1.7',
  'Range._ValidateArraySize': '1.3',
  'RangeFormat.AutofitColumns': '1.2',
  'RangeFormat.AutofitRows': '1.2',
  'RangeFormat.ColumnWidth': '1.2',
  'Table.ConvertToRange': '1.2',
  'Table.HighlightFirstColumn': '1.3',
  'Table.HighlightLastColumn': '1.3',
  'Table.Resize': '1.13',
  'Table.ShowBandedColumns': '1.3',
  'Table.ShowBandedRows': '1.3',
  'Table.ShowFilterButton': '1.3',
  'Table.Worksheet': '1.2',
  'Table._RegisterDataChangedEvent': '1.7',
  'Table._UnregisterDataChangedEvent': '1.7',
  'TableCollection.GetCount': '1.4',
  'TableCollection.GetItemOrNullObject': '1.4',
  'TableCollection._RegisterAddedEvent': '1.9',
  'TableCollection._RegisterDataChangedEvent': '1.7',
  'TableCollection._RegisterDeletedEvent': '1.9',
  'TableCollection._UnregisterAddedEvent': '1.9',
  'TableCollection._UnregisterDataChangedEvent': '1.7',
  'TableCollection._UnregisterDeletedEvent': '1.9',
  'TableColumnCollection.GetCount': '1.4',
  'TableColumnCollection.GetItemOrNullObject': '1.4',
  'TableRowCollection.DeleteRows': 'ExcelApiOnline 1.1',
  'TableRowCollection.DeleteRowsAt': 'ExcelApiOnline 1.1',
  'TableRowCollection.GetCount': '1.4',
  'Workbook.Functions': '1.2',
  'Workbook.GetActiveCell': '1.7',
  'Workbook.Name': '1.7',
  'Workbook.ReadOnly': '1.8',
  'Workbook.Settings': '1.4',
  'Worksheet.Calculate': '1.6',
  'Worksheet.FreezePanes': '1.7',
  'Worksheet.Gridlines': '1.8',
  'Worksheet.GetRangeByIndexes': '1.7',
  'Worksheet.GetUsedRangeOrNullObject': '1.4',
  'Worksheet.Protection': '1.2',
  'Worksheet.ShowGridlines': '1.8',
  'Worksheet.TabColor': '1.7',
  'Worksheet._RegisterActivatedEvent': '1.7',
  'Worksheet._RegisterDataChangedEvent': '1.7',
  'Worksheet._RegisterDeactivatedEvent': '1.7',
  'Worksheet._RegisterSelectionChangedEvent': '1.7',
  'Worksheet._UnregisterActivatedEvent': '1.7',
  'Worksheet._UnregisterDataChangedEvent': '1.7',
  'Worksheet._UnregisterDeactivatedEvent': '1.7',
  'Worksheet._UnregisterSelectionChangedEvent': '1.7',
  'WorksheetCollection.GetCount': '1.4',
  'WorksheetCollection.GetFirst': '1.5',
  'WorksheetCollection.GetItemOrNullObject': '1.4',
  'WorksheetCollection.GetLast': '1.5',
  'WorksheetCollection._RegisterActivatedEvent': '1.7',
  'WorksheetCollection._RegisterAddedEvent': '1.7',
  'WorksheetCollection._RegisterDataChangedEvent': '1.9',
  'WorksheetCollection._RegisterDeactivatedEvent': '1.7',
  'WorksheetCollection._RegisterDeletedEvent': '1.7',
  'WorksheetCollection._RegisterSelectionChangedEvent': '1.9',
  'WorksheetCollection._UnregisterActivatedEvent': '1.7',
  'WorksheetCollection._UnregisterAddedEvent': '1.7',
  'WorksheetCollection._UnregisterDataChangedEvent': '1.9',
  'WorksheetCollection._UnregisterDeactivatedEvent': '1.7',
  'WorksheetCollection._UnregisterDeletedEvent': '1.7',
  'WorksheetCollection._UnregisterSelectionChangedEvent': '1.9',
};

const number = (version: string): readonly [number, number] => {
  const [major = '0', minor = '0'] = version.split('.');
  return [Number(major), Number(minor)];
};

/** Whether a set is declared in at least a version. */
export function supports(sets: RequirementSets, set: string, version: string): boolean {
  const [major, minor] = number(sets[set] ?? '0.0');
  const [wantedMajor, wantedMinor] = number(version);
  return major > wantedMajor || (major === wantedMajor && minor >= wantedMinor);
}

const setOf = (member: string): readonly [string, string] => {
  const since = SINCE[member] ?? '1.1';
  const [set = '', version = ''] = since.includes(' ') ? since.split(' ') : ['ExcelApi', since];
  return [set, version];
};

/** Whether a member, such as Table.Resize, belongs to a set that the host declares. */
export const isOffered = (sets: RequirementSets, member: string): boolean => supports(sets, ...setOf(member));

/** Refuses a member that is newer than the sets that the host declares, as an older program does. */
export function requireMember(sets: RequirementSets, member: string): void {
  if (isOffered(sets, member)) return;
  const [set, version] = setOf(member);
  throw new HostError(
    'ApiNotFound',
    `The API you are trying to use could not be found: ${member} needs ${set} ${version}.`,
  );
}
