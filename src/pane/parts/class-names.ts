/** Class names in one text; those that don't apply are left out. */
export function classNames(...names: readonly (string | false | null | undefined)[]): string {
  return names.filter((name) => typeof name === 'string' && name !== '').join(' ');
}
