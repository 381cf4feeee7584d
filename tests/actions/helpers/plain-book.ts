import type { CellValue, WorkbookSnapshot } from '../../../src/workbook/port.ts';

/**
 * A bookkeeper with a pencil: works out a studio from the bare rows of its workbook, apart from the program, one day
 * after the other. It knows mg, g, kg, ml, l, sheet and use; quantities are whole millionths, money whole cents.
 */

export type PlainRow = Readonly<Record<string, CellValue>>;

const STOCK = ['Tissue', 'Paste', 'Buffers', 'ReleasePaper', 'Housing', 'Sundries'];
/** A unit in thousandths of that in which lots are kept here. */
const THOUSANDTHS: Readonly<Record<string, bigint>> = {
  mg: 1n,
  g: 1000n,
  kg: 1_000_000n,
  ml: 1000n,
  l: 1_000_000n,
  sheet: 1000n,
};
const RAISING: ReadonlySet<CellValue> = new Set(['Count', 'Put back']);
const OPENING: ReadonlySet<CellValue> = new Set(['Use', 'Make']);

/** The filled rows of a table by header. */
export function rowsIn(snapshot: WorkbookSnapshot, name: string): PlainRow[] {
  const table = snapshot.tables.find((each) => each.name === name);
  if (table === undefined) return [];
  return Array.from({ length: table.rowCount }, (_, row) =>
    Object.fromEntries(table.columns.map(({ header, values }) => [header, values[row] ?? null])),
  ).filter((row) => Object.values(row).some((value) => value !== null));
}

function millionths(value: CellValue): bigint {
  return BigInt(Math.round(Number(value ?? 0) * 1e6));
}

export function cents(value: CellValue): bigint {
  return BigInt(Math.round(Number(value ?? 0) * 100));
}

export interface PlainBook {
  readonly lots: readonly PlainRow[];
  readonly movements: readonly PlainRow[];
  readonly materials: ReadonlyMap<CellValue, PlainRow>;
  readonly recipes: ReadonlyMap<CellValue, PlainRow>;
  readonly places: ReadonlyMap<CellValue, PlainRow>;
}

export function plainBook(snapshot: WorkbookSnapshot): PlainBook {
  const by = (table: string, header: string): ReadonlyMap<CellValue, PlainRow> =>
    new Map(rowsIn(snapshot, table).map((row) => [row[header] ?? null, row]));
  return {
    lots: STOCK.flatMap((table) => rowsIn(snapshot, table)),
    movements: rowsIn(snapshot, 'Movements'),
    materials: by('Materials', 'Material'),
    recipes: by('Recipes', 'Recipe'),
    places: by('Places', 'Place'),
  };
}

/** How many millionths of the lot's unit a movement adds; a use is a part of a sheet. */
function changeOf(
  book: PlainBook,
  lot: PlainRow,
  row: PlainRow,
): { readonly top: bigint; readonly under: bigint } {
  const uses = millionths(book.materials.get(lot['Material'] ?? null)?.['Uses per unit'] ?? 1);
  const amount = millionths(row['Quantity'] ?? null) * (RAISING.has(row['Kind'] ?? null) ? 1n : -1n);
  if (row['Unit'] === 'use' && lot['Unit'] === 'sheet') return { top: amount * 1_000_000n, under: uses };
  return { top: amount * (THOUSANDTHS[String(row['Unit'])] ?? 0n), under: 1000n };
}

/** What is left of a lot at the end of a day. */
export function plainLeft(book: PlainBook, lot: PlainRow, day: number): number {
  const received = Number(lot['Received']);
  if (day < received) return 0;
  let whole = 0n;
  const parts = new Map<bigint, bigint>();
  for (let on = received; on <= day; on += 1) {
    if (on === received) whole += millionths(lot['Quantity'] ?? null);
    for (const row of book.movements) {
      if (row['Lot'] !== lot['Lot'] || Math.max(Number(row['Date']), received) !== on) continue;
      const { top, under } = changeOf(book, lot, row);
      parts.set(under, (parts.get(under) ?? 0n) + top);
    }
  }
  let left = Number(whole) / 1e6;
  for (const [under, top] of parts) left += Number(top) / Number(under) / 1e6;
  // Less than a millionth of the lot is nothing.
  return Math.abs(left) < Number(lot['Quantity']) / 1e6 ? 0 : left;
}

/** The last day on which a lot may be used, told on a day; null where it keeps. */
export function plainGoodUntil(book: PlainBook, lot: PlainRow, day: number): number | null {
  const received = Number(lot['Received']);
  const material = book.materials.get(lot['Material'] ?? null) ?? {};
  const recipe = book.recipes.get(lot['Recipe'] ?? null);
  const place = book.places.get(lot['Place'] ?? null) ?? {};
  const limits: { from: number; until: number }[] = [];
  const add = (from: number, days: CellValue): void => {
    if (days !== null) limits.push({ from, until: from + Number(days) });
  };
  if (lot['Use by'] != null) limits.push({ from: received, until: Number(lot['Use by']) });
  add(received, material['Life sealed days'] ?? null);
  const opened = openedOn(book, lot, day);
  if (opened !== null) add(opened, material['Life opened days'] ?? null);
  if (recipe !== undefined) {
    const room = recipe['Life days'] ?? null;
    const cold = place['Cold'] === 'yes' ? (recipe['Life cold days'] ?? null) : null;
    const dark = place['Dark'] === 'yes' ? (recipe['Life dark days'] ?? null) : null;
    const special = [cold, dark].filter((days) => days !== null).map(Number);
    add(received, special.length === 0 ? room : Math.max(...special));
  }
  const tested = lot['Retested'] ?? null;
  const until = lot['Retested until'] ?? null;
  if (tested !== null && until !== null && Number(tested) <= day) {
    const later = limits.filter(({ from }) => from > Number(tested));
    return Math.min(Number(until), ...later.map((limit) => limit.until));
  }
  return limits.length === 0 ? null : Math.min(...limits.map((limit) => limit.until));
}

function openedOn(book: PlainBook, lot: PlainRow, day: number): number | null {
  const given = lot['Opened'] ?? null;
  if (given !== null) return Number(given) <= day ? Number(given) : null;
  const received = Number(lot['Received']);
  const counts = (row: PlainRow): number => Math.max(Number(row['Date']), received);
  const days = book.movements
    .filter(
      (row) =>
        row['Lot'] === lot['Lot'] &&
        OPENING.has(row['Kind'] ?? null) &&
        row['Reverses'] == null &&
        counts(row) <= day &&
        !book.movements.some((other) => other['Reverses'] === row['Movement'] && counts(other) <= day),
    )
    .map(counts);
  return days.length === 0 ? null : Math.min(...days);
}

/**
 * Where all the money is that bought lots cost: what the lots are still worth, and what jobs and the studio have been
 * charged. What went from lot to lot (a batch, a container of its own, and back) is in neither.
 */
export function plainMoney(book: PlainBook): {
  readonly bought: bigint;
  readonly found: bigint;
  /** How many movements have passed cost on from lot to lot. */
  readonly passedOn: number;
} {
  const isMadeHere = (lot: PlainRow): boolean =>
    book.movements.some((row) => row['Into'] === lot['Lot'] && row['Reverses'] == null);
  const bought = book.lots.filter((lot) => !isMadeHere(lot));
  // What went into a batch whose cost is not known, as something in it had none, is charged and gone.
  const costOf = new Map(book.lots.map((lot) => [lot['Lot'] ?? null, lot['Cost'] ?? null]));
  const lotToLot = (row: PlainRow): boolean =>
    costOf.get(row['Into'] ?? null) != null || /^not \w+ after all$/.test(String(row['Note']));
  const sum = (values: readonly bigint[]): bigint => values.reduce((total, value) => total + value, 0n);
  return {
    passedOn: book.movements.filter(lotToLot).length,
    bought: sum(bought.map((lot) => cents(lot['Cost'] ?? null))),
    found:
      sum(book.lots.map((lot) => cents(lot['Worth'] ?? lot['Cost'] ?? null))) +
      sum(book.movements.filter((row) => !lotToLot(row)).map((row) => cents(row['Cost'] ?? null))),
  };
}
