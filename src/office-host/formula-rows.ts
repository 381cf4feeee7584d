/** Texts in quotes, structured references in brackets, and references to cells. */
const PARTS =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[(?:[^[\]]|\[[^\]]*\])*\]|(\$?)\b([A-Za-z]{1,3})(\$?)(\d{1,7})\b(?![\w(.])/g;

/** A formula as it reads when it is filled some rows down: relative rows move, the rest stands. */
export function formulaDown(formula: string, rows: number): string {
  if (rows === 0) return formula;
  return formula.replace(
    PARTS,
    (part: string, fixedColumn?: string, column?: string, fixedRow?: string, row?: string) =>
      column === undefined || row === undefined || fixedRow === '$'
        ? part
        : `${fixedColumn ?? ''}${column}${Number(row) + rows}`,
  );
}
