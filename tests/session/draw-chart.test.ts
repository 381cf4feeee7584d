import { expect, test } from 'vitest';
import type { Projection } from '../../src/core/projection/projection.ts';
import { booksIn, opened, today } from '../helpers/opened-session.ts';
import { STUDIO } from '../helpers/studio.ts';

const day = { day: today, usable: 5, planned: 0, forecast: 0, arrived: 0, made: 0, wentOff: 0, short: 0 };
const projection: Projection = {
  days: [day],
  firstShort: null,
  missed: [],
  goesOff: [],
  worthGoingOff: 0,
};
const PLAN = { material: 'Tissue', unit: 'sheet', projection, level: { level: 2 } };

test('a chart is added on a tab of its own, said to be there, and shown', async () => {
  const { workbook, session } = await opened();
  const done = await session.drawChart(PLAN);
  expect(done).toEqual({
    kind: 'done',
    sentence: 'Chart of Tissue on the tab Tissue outlook.',
    posting: null,
    drawing: null,
    remarks: [],
  });
  expect(workbook.tabs.map(({ table }) => [table?.name, table?.chart?.title])).toEqual([
    ['Projection_Tissue', 'Tissue, sheets'],
  ]);
  expect(workbook.shown).toEqual([expect.objectContaining({ tab: 'Tissue outlook' })]);
  expect(booksIn(session).snapshot).toBe(workbook.snapshot);
  expect(workbook.writes).toEqual([]);
});

test('a second one of the same material is another one, under names of its own', async () => {
  const { workbook, session } = await opened();
  await session.drawChart(PLAN);
  expect(await session.drawChart(PLAN)).toMatchObject({ kind: 'done' });
  expect(workbook.tabs.map(({ table }) => table?.name)).toEqual(['Projection_Tissue', 'Projection_Tissue_2']);
});

test('nothing is added to a workbook that is only read', async () => {
  const { workbook, session } = await opened({
    ...STUDIO,
    Settings: [{ Setting: 'tables version', Value: 99 }],
  });
  expect(await session.drawChart(PLAN)).toEqual({ kind: 'refused', message: booksIn(session).readingOnly });
  expect(workbook.tabs).toEqual([]);
});

test('what the program refuses is told, and a tab that is gone at once is not said to be there', async () => {
  const { workbook, session } = await opened();
  const { snapshot } = workbook;
  workbook.addTabs = () => Promise.resolve({ kind: 'failed', message: 'The workbook is read-only.' });
  expect(await session.drawChart(PLAN)).toEqual({ kind: 'refused', message: 'The workbook is read-only.' });
  workbook.addTabs = () => Promise.resolve({ kind: 'written', snapshot });
  expect(await session.drawChart(PLAN)).toMatchObject({ kind: 'refused' });
  expect(workbook.shown).toEqual([]);
});

test('a tab that cannot be brought into view is there all the same', async () => {
  const { workbook, session } = await opened();
  workbook.goTo = () => Promise.resolve({ kind: 'failed', message: 'The tab is hidden.' });
  expect(await session.drawChart(PLAN)).toMatchObject({ kind: 'done', remarks: ['The tab is hidden.'] });
});
