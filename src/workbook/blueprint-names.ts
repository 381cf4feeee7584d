const LONGEST = 31;

/** A name for a tab that none of those there has: the one wanted, or with a number behind it ("Paste 2"). */
export function freeTabName(wanted: string, taken: Iterable<string>): string {
  const names = new Set([...taken].map((name) => name.toLowerCase()));
  if (!names.has(wanted.toLowerCase())) return wanted;
  for (let number = 2; ; number++) {
    const end = ` ${number}`;
    const name = wanted.slice(0, LONGEST - end.length) + end;
    if (!names.has(name.toLowerCase())) return name;
  }
}

/** A name for a table that none of those there has: the one wanted, or with a number behind it (Figures_2). */
export function freeTableName(wanted: string, taken: Iterable<string>): string {
  const names = new Set([...taken].map((name) => name.toLowerCase()));
  for (let number = 1; ; number++) {
    const name = number === 1 ? wanted : `${wanted}_${number}`;
    if (!names.has(name.toLowerCase())) return name;
  }
}

/** The name that stands for a column from which cells choose; names hold letters, digits, _ and . only. */
export function listName(table: string, column: string): string {
  return `list_${table}_${column.replace(/[^\p{L}\p{N}_.]/gu, '_')}`;
}

/** A column of a table as formulas write it: Materials[Material]. */
export function columnReference(table: string, header: string): string {
  return `${table}[${header.replace(/['#[\]]/g, "'$&")}]`;
}
