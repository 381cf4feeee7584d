import { keyOf } from '../core/identifier.ts';
import type { Row } from '../core/records.ts';
import type { Material, Studio } from '../core/studio.ts';
import type { TabCell } from '../workbook/live-workbook.ts';
import type { Books, Chosen } from './session-state.ts';

/**
 * What the row of a cell is about: its own lot, job, entry or material, or the one that it names.
 * @returns null outside Jarleaf's tables, and on a row that names nothing which is known
 */
export function chosenIn({ snapshot, reading, ledger }: Books, cell: TabCell): Chosen | null {
  const table = snapshot.tables.find(
    ({ tab, firstRow, firstColumn, rowCount, columns }) =>
      tab === cell.tab &&
      cell.row >= firstRow &&
      cell.row < firstRow + rowCount &&
      cell.column >= firstColumn &&
      cell.column < firstColumn + columns.length,
  );
  if (table === undefined) return null;
  const isThere = ({ place }: Row): boolean =>
    place.row === cell.row - table.firstRow && keyOf(place.table) === keyOf(table.name);
  const { studio } = ledger;
  const entry = studio.entries.find(({ record }) => isThere(record));
  if (entry !== undefined) return { kind: 'entry', entry };
  const plan = studio.plan.find(({ record }) => isThere(record));
  if (plan !== undefined) return { kind: 'plan', plan };
  const lot = studio.lots.find(({ record }) => isThere(record));
  if (lot !== undefined) return { kind: 'lot', lot };
  for (const rows of Object.values(reading.records) as readonly (readonly Row[])[]) {
    const row = rows.find(isThere);
    if (row !== undefined) return namedBy(row, studio);
  }
  return null;
}

/** What a row of another table names, the most particular first. */
function namedBy(row: Row, studio: Studio): Chosen | null {
  const name = (field: string): string | null => {
    const value = (row as unknown as Record<string, unknown>)[field];
    return typeof value === 'string' ? keyOf(value) : null;
  };
  const lot = studio.lotsByKey.get(name('lot') ?? '');
  if (lot !== undefined) return { kind: 'lot', lot };
  const material: Material | undefined =
    studio.materialsByKey.get(name('material') ?? '') ?? studio.materialsByKey.get(name('makes') ?? '');
  if (material !== undefined) return { kind: 'material', material };
  const job = studio.jobsByKey.get(name('job') ?? '');
  if (job !== undefined) return { kind: 'job', job };
  const made = studio.materials.find(
    ({ recipe }) => recipe !== null && keyOf(recipe.name) === name('recipe'),
  );
  return made === undefined ? null : { kind: 'material', material: made };
}
