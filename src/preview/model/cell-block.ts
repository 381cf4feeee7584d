/** Blocks of cells as spreadsheets exchange them: rows by line, cells by tabulator, quotes around what holds either. */

export function parseBlock(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  const source = text.replace(/\r\n?/g, '\n');
  while (at < source.length) {
    const [cell, end] =
      source[at] === '"' ? (quotedCell(source, at) ?? plainCell(source, at)) : plainCell(source, at);
    row.push(cell);
    if (source[end] === '\t') {
      at = end + 1;
      if (at === source.length) row.push('');
      continue;
    }
    rows.push(row);
    row = [];
    at = end + 1;
  }
  if (row.length > 0) rows.push(row);
  return rows;
}

function plainCell(source: string, start: number): [string, number] {
  const length = source.slice(start).search(/[\t\n]/);
  const end = length < 0 ? source.length : start + length;
  return [source.slice(start, end), end];
}

/** A cell in quotes; null where the quotes are only part of a text ("A4" paper). */
function quotedCell(source: string, start: number): [string, number] | null {
  const match = /"((?:[^"]|"")*)"(?=[\t\n]|$)/y;
  match.lastIndex = start;
  const found = match.exec(source);
  return found ? [(found[1] ?? '').replaceAll('""', '"'), match.lastIndex] : null;
}

export function writeBlock(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => row.map(quoted).join('\t')).join('\n');
}

function quoted(cell: string): string {
  return /[\t\n\r]|^"/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
