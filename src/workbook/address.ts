/** The letters of a column; 1 is A, 27 is AA. */
export function columnLetters(column: number): string {
  let letters = '';
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

const PLAIN_TAB_NAME = /^[\p{L}_][\p{L}\p{N}_.]*$/u;
/** Names that a spreadsheet would take for a cell unless they are quoted. */
const LIKE_A_CELL = /^(?:[A-Z]{1,3}\d+|R\d*C?\d*|C\d*)$/i;

/** The address of a cell as a spreadsheet writes it: Paste!D7, 'My stock'!D7. */
export function cellAddress(tab: string, row: number, column: number): string {
  const plain = PLAIN_TAB_NAME.test(tab) && !LIKE_A_CELL.test(tab);
  const name = plain ? tab : `'${tab.replaceAll("'", "''")}'`;
  return `${name}!${columnLetters(column)}${row}`;
}
