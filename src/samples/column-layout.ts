import {
  JOB_STAGES,
  LOT_CERTAINTIES,
  LOT_STATES,
  MATERIAL_KINDS,
  MOVEMENT_KINDS,
  SHARINGS,
  STAYS,
} from '../core/records.ts';
import { UNIT_NAMES } from '../core/unit.ts';
import type { ColumnBlueprint } from '../workbook/blueprint.ts';
import { RECORD_TABLES } from '../workbook/known-tables.ts';
import type { CellWrite } from '../workbook/port.ts';
import { type Column, identifierColumn, type TableDefinition } from '../workbook/table-definition.ts';
import { movementsTable, stockTable } from '../workbook/tables-stock.ts';

/** How the columns of a table are laid out in a workbook that Jarleaf makes. */

/** Amounts of money, by record field. */
const MONEY = new Set([
  'cost',
  'worth',
  'packPrice',
  'minimumOrder',
  'carriage',
  'carriageFreeOver',
  'declaredValue',
  'consumables',
  'markup',
  'benchTime',
  'other',
  'tax',
  'total',
  'each',
  'amount',
]);

/** Sentences that must be read whole, by table; in tables that grow from day to day a row stays one line. */
const LONG_TEXT: Readonly<Record<string, readonly string[]>> = {
  Materials: ['notes'],
  Treatments: ['notes'],
  Recipes: ['method', 'cautions'],
};

/** The fixed words of a column, by record field; a table of its own words comes first. */
const WORDS: Readonly<Record<string, readonly string[]>> = {
  unit: UNIT_NAMES,
  stockUnit: UNIT_NAMES,
  state: LOT_STATES,
  lotIs: LOT_CERTAINTIES,
  stage: JOB_STAGES,
  fixedPer: SHARINGS,
  setupPer: SHARINGS,
  stays: STAYS,
  counted: ['yes', 'no'],
  whole: ['yes', 'no'],
  cold: ['yes', 'no'],
  dark: ['yes', 'no'],
  limitedByParts: ['yes', 'no'],
};
const WORDS_OF_TABLE: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  Materials: { kind: MATERIAL_KINDS },
  Movements: { kind: MOVEMENT_KINDS },
  Orders: { state: ['Ordered', 'Received', 'Cancelled'] },
  Quotes: { state: ['Given', 'Accepted', 'Declined'] },
};
/** Where the words are usual ones and others may be typed. */
const OPEN_WORDS = new Set(['Orders', 'Quotes']);

const NOTES: Readonly<Record<string, string>> = {
  left: 'What is left today, written by Jarleaf. Weighed or counted it? Type over it: check then says which Count to enter in Movements.',
  leftAsWritten:
    'Written by Jarleaf, to tell a figure that you typed over Left from its own. Leave it alone.',
  goodUntil:
    'The last day by the dates and lives that you set, written by Jarleaf. Look, smell and test before use.',
  worth: 'What is left of its cost, written by Jarleaf.',
  drawn: 'yes once its materials are taken from stock, part after a shortfall. Written by Jarleaf.',
  drawnFor: 'The extent that it was drawn for. Written by Jarleaf.',
  extent: "How much of it, in the treatment's own extent unit (see Treatments): a number alone.",
  usesPerUnit: 'How often one stock unit can be used: a release paper sheet of 20 presses has 20 uses.',
  sheetHeight: 'For a roll: its length.',
  grammage: 'g/m²',
  tare: 'What the empty jar weighs, in grams: then a lot can be counted by weighing it in its jar.',
  gross: 'What stood on the balance, jar and all, in grams.',
  leftThen: 'What was left by the movements when it was counted, written by Jarleaf.',
  leftDayBefore: 'What was left by the movements the day before it was counted, written by Jarleaf.',
};
const COST_OF_MOVEMENT = 'What the movement costs by its lot, written by Jarleaf.';

/** Names in a column that stand for a row of another table under another header. */
const REFERS: Readonly<Record<string, string>> = { makes: 'Materials' };

/** Stock tables show first what is looked at daily; other tables have the order of their definitions. */
const LOT_FIRST = [
  'lot',
  'material',
  'received',
  'quantity',
  'unit',
  'left',
  'goodUntil',
  'storedAt',
  'state',
  'opened',
  'useBy',
  'cost',
  'worth',
];
const LOT_LAST = ['leftAsWritten'];

type AnyColumn = Column<unknown>;

/** The record fields of a table in the order in which its columns stand. */
export function fieldsInOrder(definition: TableDefinition): readonly string[] {
  const fields = Object.keys(definition.columns);
  if (!isStock(definition)) return fields;
  const named = [...LOT_FIRST, ...LOT_LAST];
  return [...LOT_FIRST, ...fields.filter((field) => !named.includes(field)), ...LOT_LAST];
}

function isStock(definition: TableDefinition): boolean {
  return Object.keys(stockTable('').columns).every((field) => field in definition.columns);
}

/** The column of a field, wide enough for its header and for what stands in it. */
export function columnBlueprint(
  definition: TableDefinition,
  field: string,
  cells: readonly (CellWrite | null)[],
): ColumnBlueprint {
  const column: AnyColumn | undefined = definition.columns[field];
  if (column === undefined) throw new Error(`${definition.name} has no column for ${field}`);
  const words = WORDS_OF_TABLE[definition.name]?.[field] ?? WORDS[field];
  const source = column.identifier ? undefined : referredTable(definition, field, column);
  const note = field === 'cost' && definition === movementsTable ? COST_OF_MOVEMENT : NOTES[field];
  const isLong = LONG_TEXT[definition.name]?.includes(field) ?? false;
  return {
    header: column.header,
    width: widthOf(column, cells),
    format: MONEY.has(field) ? 'money' : isLong ? 'long text' : column.preparation,
    ...(words === undefined ? {} : { choices: words, strict: !OPEN_WORDS.has(definition.name) }),
    ...(words !== undefined || source === undefined ? {} : { choices: source }),
    ...(note === undefined ? {} : { note }),
    ...(column.written ? { muted: true } : {}),
  };
}

/** The table whose rows a column names: the one of which its header is the identifier. */
function referredTable(
  definition: TableDefinition,
  field: string,
  { header }: AnyColumn,
): { readonly table: string; readonly column: string } | undefined {
  const byName = REFERS[field];
  for (const other of Object.values(RECORD_TABLES) as TableDefinition[]) {
    const identifier = identifierColumn(other);
    if (identifier === null || other === definition) continue;
    const isMeant =
      byName === undefined ? identifier.header === header && header !== 'Line' : other.name === byName;
    if (isMeant) return { table: other.name, column: identifier.header };
  }
  return undefined;
}

const NARROWEST = 9;
const DAY_WIDTH = 12;
const BLANK_TEXT_WIDTH = 14;
/** Identifiers that are made here have nine letters, most of them wide. */
const IDENTIFIER_WIDTH = 13;
const WIDEST = 48;
/** For the filter button in the header. */
const BUTTON = 4;

/** In characters: the header may take two lines, what is longer than the widest column runs on. */
function widthOf(
  { header, preparation, identifier }: AnyColumn,
  cells: readonly (CellWrite | null)[],
): number {
  const words = header.split(' ').map((word) => word.length);
  const headerNeeds = Math.max(...words, Math.ceil(header.length / 2) + 1) + BUTTON;
  const longest = Math.max(0, ...cells.map(lengthOf));
  const usual =
    preparation === 'day'
      ? DAY_WIDTH
      : preparation === 'text' && longest === 0
        ? BLANK_TEXT_WIDTH
        : identifier
          ? IDENTIFIER_WIDTH
          : NARROWEST;
  return Math.max(headerNeeds, usual, Math.min(longest + 2, WIDEST));
}

function lengthOf(cell: CellWrite | null): number {
  if (cell === null || cell.kind === 'blank' || cell.kind === 'day') return 0;
  return cell.kind === 'text' ? cell.text.length : String(cell.number).length + 1;
}
