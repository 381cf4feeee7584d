import type { DateSystem } from '../core/serial-date.ts';
import type { TabBlueprint } from '../workbook/blueprint.ts';
import { columnReference, listName } from '../workbook/blueprint-names.ts';
import type { WriteOutcome } from '../workbook/live-workbook.ts';
import { chartJobs } from './draw-chart.ts';
import { cellJobs, lateJobs, type TabJob } from './fill-tab.ts';
import { plainMessage } from './messages.ts';
import { choiceColumns, type NamesTaken, planTabs, type TabPlan } from './plan-tabs.ts';
import { type ReadingMemory, readDateSystem, readTables } from './read-tables.ts';
import { inTurn, roundTrips } from './round-trips.ts';
import type { WithWorkbook } from './with-workbook.ts';

const ADDING = 'Adding tabs to the workbook';

/** What was made so far, so that it can be taken back. */
interface Made {
  /** The identifiers of tabs, by name; null until they are known. */
  tabs: ReadonlyMap<string, string> | null;
  lists: readonly string[];
}

/**
 * Adds tabs behind those there, in a number of round trips that doesn't depend on their number.
 * @param onTab is told the identifier of each new tab as soon as it is known
 */
export async function addTabs(
  withWorkbook: WithWorkbook,
  memory: ReadingMemory,
  tabs: readonly TabBlueprint[],
  onTab: (id: string) => void,
): Promise<WriteOutcome> {
  const made: Made = { tabs: null, lists: [] };
  let plans: readonly TabPlan[] = [];
  try {
    const { taken, lists, dateSystem } = await lookAround(withWorkbook, memory, tabs);
    plans = planTabs(tabs, taken);
    if (plans.length > 0) {
      made.tabs = await makeSheets(withWorkbook, plans);
      for (const id of made.tabs.values()) onTab(id);
      const newLists = choiceColumns(
        plans.flatMap(({ tab, table }) => (table ? [{ ...tab, table }] : [])),
      ).filter(({ table, column }) => !lists.has(listName(table, column).toLowerCase()));
      made.lists = newLists.map(({ table, column }) => listName(table, column));
      const names: TabJob[] = newLists.map(({ table, column }) => ({
        bytes: 1000,
        queue: (context) => {
          context.workbook.names.add(listName(table, column), `=${columnReference(table, column)}`);
        },
      }));
      const jobs = [
        ...plans.flatMap((plan) => cellJobs(plan, dateSystem)),
        ...names,
        ...plans.flatMap(lateJobs),
        ...plans.flatMap(chartJobs),
      ];
      await inTurn(roundTrips(jobs), (trip) => doJobs(withWorkbook, trip));
    }
  } catch (error) {
    return takeBack(withWorkbook, memory, plans, made, plainMessage(error, ADDING));
  }
  try {
    return { kind: 'written', snapshot: await readTables(withWorkbook, memory) };
  } catch (error) {
    return takeBack(withWorkbook, memory, plans, made, plainMessage(error, 'Reading the workbook'));
  }
}

function lookAround(
  withWorkbook: WithWorkbook,
  memory: ReadingMemory,
  tabs: readonly TabBlueprint[],
): Promise<{ taken: NamesTaken; lists: ReadonlySet<string>; dateSystem: DateSystem }> {
  return withWorkbook(async (context) => {
    const { workbook } = context;
    const sheets = workbook.worksheets.load('items/name');
    const tables = workbook.tables.load('items/name');
    const names = workbook.names.load('items/name');
    const choices = choiceColumns(tabs).map(({ table, column }) => ({
      table,
      column,
      found: workbook.tables.getItemOrNullObject(table).columns.getItemOrNullObject(column).load('name'),
    }));
    const dateSystem = readDateSystem(context, memory);
    await context.sync();
    return {
      taken: {
        tabs: sheets.items.map(({ name }) => name),
        tables: tables.items.map(({ name }) => name),
        columns: choices.filter(({ found }) => !found.isNullObject),
      },
      lists: new Set(names.items.map(({ name }) => name.toLowerCase())),
      dateSystem: dateSystem(),
    };
  });
}

function makeSheets(withWorkbook: WithWorkbook, plans: readonly TabPlan[]): Promise<Map<string, string>> {
  return withWorkbook(async (context) => {
    const sheets = plans.map(({ name }) => context.workbook.worksheets.add(name).load('id,name'));
    await context.sync();
    return new Map(sheets.map(({ id, name }) => [name, id]));
  });
}

function doJobs(withWorkbook: WithWorkbook, jobs: readonly TabJob[]): Promise<void> {
  return withWorkbook(async (context) => {
    context.application.suspendApiCalculationUntilNextSync();
    for (const { queue } of jobs) queue(context);
    await context.sync();
  });
}

/** Takes the tabs made so far away again. */
async function takeBack(
  withWorkbook: WithWorkbook,
  memory: ReadingMemory,
  plans: readonly TabPlan[],
  made: Made,
  why: string,
): Promise<WriteOutcome> {
  if (plans.length === 0) return { kind: 'failed', message: why };
  try {
    await withWorkbook(async (context) => {
      const { worksheets, names } = context.workbook;
      const lists = made.lists.map((name) => names.getItemOrNullObject(name).load('name'));
      const sheets = plans.map(({ name }) => {
        const sheet = worksheets.getItemOrNullObject(made.tabs?.get(name) ?? name).load('name');
        // Where it isn't known which tabs are ours, one that holds anything is somebody else's.
        const used = made.tabs === null ? sheet.getUsedRangeOrNullObject(true).load('address') : null;
        return { sheet, used };
      });
      await context.sync();
      for (const list of lists) if (!list.isNullObject) list.delete();
      for (const { sheet, used } of sheets) {
        if (!sheet.isNullObject && (used === null || used.isNullObject)) sheet.delete();
      }
      await context.sync();
    });
    return { kind: 'failed', message: why };
  } catch (error) {
    const names = plans.map(({ name }) => name).join(', ');
    const message = `${why} Of the tabs ${names} some may have been added, and could not be taken away again: ${plainMessage(error, ADDING)}`;
    return readTables(withWorkbook, memory).then(
      (snapshot): WriteOutcome => ({ kind: 'half', snapshot, message }),
      (): WriteOutcome => ({
        kind: 'half',
        snapshot: { dateSystem: memory.dateSystem ?? 1900, tables: [] },
        message,
      }),
    );
  }
}
