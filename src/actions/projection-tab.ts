import { spokenDay } from '../core/day.ts';
import type { ProjectedDay, Projection } from '../core/projection/projection.ts';
import { unitNamed } from '../core/unit.ts';
import { unitFor } from '../core/wording.ts';
import type { ColumnBlueprint, TabBlueprint, TableBlueprint } from '../workbook/blueprint.ts';
import { dayCell, numberCell } from '../workbook/cell-write.ts';

const LONGEST_TAB_NAME = 31;
const LONGEST_TABLE_NAME = 60;
const ENDING = ' outlook';
/** What is less than this of a unit is nothing: planned figures are not exact. */
const LEAST = 1e-6;
const DECIMALS = 6;

const DAY = 'Day';
const ORDER_LEVEL = 'Order when down to';

type Figure = Exclude<keyof ProjectedDay, 'day' | 'planned' | 'forecast'>;

/** What the table says of each day, by its header; none of them is a column by which a stock table is known. */
const FIGURES: readonly (readonly [header: string, figure: Figure | 'order level'])[] = [
  ['Usable', 'usable'],
  [ORDER_LEVEL, 'order level'],
  ['Arrives', 'arrived'],
  ['Made here', 'made'],
  ['Goes off', 'wentOff'],
  ['Missing', 'short'],
];
/** What is drawn besides what is usable, wherever there is any of it; arrivals are seen as the line rises. */
const DRAWN: readonly Figure[] = ['wentOff', 'short'];

/**
 * A tab with a material's stock from day to day: figures that stay as they are, and a chart over them.
 * @param unit the name of the material's stock unit, in which all quantities are
 * @param orderLevel the stock at which to order again; 0 for none
 */
export function projectionTab(
  material: string,
  unit: string,
  { days }: Projection,
  orderLevel: number,
): TabBlueprint & { readonly table: TableBlueprint } {
  const units = unitFor('2', unitNamed(unit));
  const [first] = days;
  const asOf = first === undefined ? '' : `, as planned on ${spokenDay(first.day)}`;
  const isDrawn = (figure: (typeof FIGURES)[number][1]): boolean => {
    if (figure === 'order level') return orderLevel > LEAST;
    return figure === 'usable' || (DRAWN.includes(figure) && days.some((day) => day[figure] > LEAST));
  };
  const level = Number(orderLevel.toFixed(DECIMALS));
  return {
    name: tabNameFor(material),
    lines: [
      `${material}: what the next weeks will bring`,
      `Quantities in ${units}${asOf}. They stay as they are: draw the chart again for later figures.`,
    ],
    table: {
      name: `Projection_${material.replace(/[^\p{L}\p{N}_.]/gu, '_')}`.slice(0, LONGEST_TABLE_NAME),
      columns: [
        { header: DAY, width: 12, format: 'day' },
        ...FIGURES.map(([header]): ColumnBlueprint => ({ header, width: 12, format: 'number' })),
      ],
      rows: days.map((day) => [
        dayCell(day.day),
        ...FIGURES.map(([, figure]) => numberCell(figure === 'order level' ? level : day[figure])),
      ]),
      chart: {
        title: `${material}, ${units}`,
        kind: 'line',
        categories: DAY,
        series: FIGURES.filter(([, figure]) => isDrawn(figure)).map(([header]) => header),
      },
    },
  };
}

/** A tab's name holds at most 31 characters, and not all of them. */
function tabNameFor(material: string): string {
  const allowed = material
    .replace(/[\\/?*[\]:'\p{Cc}]/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  let name = '';
  for (const character of allowed) {
    if (name.length + character.length + ENDING.length > LONGEST_TAB_NAME) break;
    name += character;
  }
  return `${name.trimEnd()}${ENDING}`.trimStart();
}
