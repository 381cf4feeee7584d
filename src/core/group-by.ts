/** Gathers values under a key each, in the order in which they come. */
export function groupBy<T, K>(values: readonly T[], keyOfValue: (value: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const value of values) {
    const key = keyOfValue(value);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [value]);
    else group.push(value);
  }
  return groups;
}
