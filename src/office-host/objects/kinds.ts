import {
  chartLineFormatKind,
  chartSeriesCollectionKind,
  chartSeriesFormatKind,
  chartSeriesKind,
} from './chart-series.ts';
import { chartKind, chartsKind, chartTitleKind } from './charts.ts';
import { dataValidationKind } from './data-validation.ts';
import { nameKind, namesKind, settingKind, settingsKind } from './names-settings.ts';
import type { KindName, ObjectKind, Subjects } from './object-kind.ts';
import { rangeKind } from './range.ts';
import { rangeFillKind, rangeFontKind, rangeFormatKind } from './range-format.ts';
import { serviceKind } from './service.ts';
import { tableKind } from './table.ts';
import { tableColumnKind, tableColumnsKind } from './table-columns.ts';
import { tableRowKind, tableRowsKind } from './table-rows.ts';
import { tablesKind } from './tables.ts';
import {
  applicationKind,
  functionResultKind,
  functionsKind,
  workbookCreatedKind,
  workbookKind,
} from './workbook.ts';
import { freezePanesKind, protectionKind, worksheetKind } from './worksheet.ts';
import { worksheetsKind } from './worksheets.ts';

/** Every kind of object that this host knows. */
export const KINDS: { readonly [Name in KindName]: ObjectKind<Subjects[Name]> } = {
  Application: applicationKind,
  Chart: chartKind,
  ChartCollection: chartsKind,
  ChartLineFormat: chartLineFormatKind,
  ChartSeries: chartSeriesKind,
  ChartSeriesCollection: chartSeriesCollectionKind,
  ChartSeriesFormat: chartSeriesFormatKind,
  ChartTitle: chartTitleKind,
  DataValidation: dataValidationKind,
  FunctionResult: functionResultKind,
  Functions: functionsKind,
  NamedItem: nameKind,
  NamedItemCollection: namesKind,
  Range: rangeKind,
  RangeFill: rangeFillKind,
  RangeFont: rangeFontKind,
  RangeFormat: rangeFormatKind,
  Service: serviceKind,
  Setting: settingKind,
  SettingCollection: settingsKind,
  Table: tableKind,
  TableCollection: tablesKind,
  TableColumn: tableColumnKind,
  TableColumnCollection: tableColumnsKind,
  TableRow: tableRowKind,
  TableRowCollection: tableRowsKind,
  Workbook: workbookKind,
  WorkbookCreated: workbookCreatedKind,
  Worksheet: worksheetKind,
  WorksheetCollection: worksheetsKind,
  WorksheetFreezePanes: freezePanesKind,
  WorksheetProtection: protectionKind,
};
