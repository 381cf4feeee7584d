import type { TabBlueprint } from '../workbook/blueprint.ts';
import type { OwnColumn } from './sample-workbook.ts';

/** What the studio added to its workbook for itself: formulas that Jarleaf has nothing to do with. */

const ROW = 'Tissue[[#This Row],';

export const OWN_COLUMNS: readonly OwnColumn[] = [
  {
    table: 'Tissue',
    column: {
      header: 'Price of a unit',
      width: 12,
      format: 'money',
      formula: `IF(${ROW}[Cost]]="","",${ROW}[Cost]]/${ROW}[Quantity]])`,
    },
  },
  { table: 'Jobs', column: { header: 'Photographs', width: 16, format: 'text' } },
];

const SPENT = 'SUMIFS(Movements[Cost],Movements[Job],MyOverview[[#This Row],[Job]])';
const MINUTES = 'SUMIFS(TreatmentLog[Minutes],TreatmentLog[Job],MyOverview[[#This Row],[Job]])';

export const OWN_TAB: TabBlueprint = {
  name: 'My overview',
  lines: ['My overview', 'What the jobs on the bench have taken so far.'],
  colour: 'B98B3E',
  table: {
    name: 'MyOverview',
    columns: [
      { header: 'Job', width: 12, format: 'text' },
      { header: 'Materials so far', width: 14, format: 'money', formula: SPENT },
      { header: 'Hours so far', width: 12, format: 'number', formula: `ROUND(${MINUTES}/60,1)` },
    ],
    rows: ['J-2031', 'J-2032', 'J-2033', 'J-2034'].map((text) => [{ kind: 'text', text }]),
  },
};
