import { checkWorkbook } from '../../actions/check-workbook.ts';
import { isUpToDate, tablesUpgrade } from '../../actions/upgrade-tables.ts';
import { starterBlueprint } from '../../samples/starter-blueprint.ts';
import { TABLES_VERSION } from '../../workbook/read-settings.ts';
import { noticesJson } from '../answers-json.ts';
import type { Command } from '../context.ts';
import { printJson, printLines, refused, savedTo } from '../finish.ts';
import { listed } from '../terminal.ts';

export const upgrade: Command = async ({ call, file, today, terminal }) => {
  const { workbook } = file;
  const upToDate = isUpToDate(workbook.snapshot());
  const planned = upToDate ? null : tablesUpgrade(workbook.snapshot(), starterBlueprint().tabs);
  if (planned?.ok === false) return refused(planned, terminal);
  if (planned !== null) {
    workbook.apply(planned.changes);
    workbook.addTabs(planned.tabs);
  }
  const target = call.text('out');
  const isSaved = planned !== null || target !== null;
  const { notices } = checkWorkbook(workbook.snapshot(), today);
  if (isSaved) await file.saveTo(target ?? undefined);
  const version = planned === null ? TABLES_VERSION : planned.version;
  const added = planned?.added ?? [];
  const tables = (planned?.tabs ?? []).flatMap(({ table }) => table?.name ?? []);
  if (call.flag('json')) {
    printJson({ version, added, tables, notices: noticesJson(notices) }, terminal);
    return 0;
  }
  const nothing = upToDate ? [`The tables are of version ${TABLES_VERSION} already.`] : [];
  const lines = [
    ...added.map(({ table, columns }) => `${table}: ${columns.join(', ')}.`),
    ...tables.map((table) => `New: the table ${table}.`),
    ...(version === null ? ['There is no table Settings, in which the version could be written down.'] : []),
  ];
  printLines([...nothing, ...lines.flatMap((line) => listed(line, terminal))], terminal);
  if (planned !== null) terminal.print(`The tables are of version ${TABLES_VERSION} now.`);
  if (isSaved) terminal.print(savedTo(call));
  return 0;
};
