import type { Change, RowChange } from './port.ts';

/**
 * Joins the appends to one table between which nothing else happens to that table, so that it grows once: rows
 * may have to be put into its tab for that.
 */
export function joinAppends(changes: readonly RowChange[]): RowChange[];
export function joinAppends(changes: readonly Change[]): Change[];
export function joinAppends(changes: readonly Change[]): Change[] {
  const joined: Change[] = [];
  const lastPlace = new Map<string, number>();
  for (const change of changes) {
    const place = lastPlace.get(change.table);
    const last = place === undefined ? undefined : joined[place];
    if (place !== undefined && change.kind === 'append' && last?.kind === 'append') {
      joined[place] = { ...last, rows: [...last.rows, ...change.rows] };
    } else lastPlace.set(change.table, joined.push(change) - 1);
  }
  return joined;
}
