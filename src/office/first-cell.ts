/**
 * The first cell of an address as the program gives it ("B3", "B3:C9,E1", "C:C", "4:7"); rows and columns count from 1.
 * @returns null for what is no address
 */
export function firstCell(address: string): { readonly row: number; readonly column: number } | null {
  const local = address.slice(address.lastIndexOf('!') + 1);
  const found = /^\$?(?<letters>[A-Z]{0,3})\$?(?<digits>\d*)(?=$|[:,;])/i.exec(local)?.groups;
  const letters = found?.['letters'] ?? '';
  const digits = found?.['digits'] ?? '';
  if (letters === '' && digits === '') return null;
  return { row: digits === '' ? 1 : Number(digits), column: letters === '' ? 1 : columnNumber(letters) };
}

function columnNumber(letters: string): number {
  return Array.from(letters.toUpperCase()).reduce(
    (number, letter) => number * 26 + letter.charCodeAt(0) - 64,
    0,
  );
}
