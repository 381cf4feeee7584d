import { areaAddress, MAX_ROWS, parseArea, splitAddress } from './cell-area.ts';
import type { AreaShift } from './editing.ts';
import type { Cell, MemoryWorkbook, Row, Sheet } from './memory-workbook.ts';
import type { ValidationDescription } from './workbook-description.ts';

/** Texts in quotes, structured references in brackets, and references to cells, with their sheet where one is named. */
const PARTS =
  /"(?:[^"]|"")*"|\[(?:[^[\]]|\[[^\]]*\])*\]|(?<![\w.$])((?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!)?(\$?)([A-Za-z]{1,3})(\$?)(\d{1,7})(?::(\$?)([A-Za-z]{1,3})(\$?)(\d{1,7}))?(?![\w(.!])/gu;

/** A formula after cells of a sheet have moved: references follow their cells, and are #REF! where those are gone. */
export function followCells(formula: string, ownSheet: string, movedSheet: string, shift: AreaShift): string {
  return formula.replace(PARTS, (part: string, ...groups: (string | undefined)[]) => {
    const [prefix, dollar1 = '', column, dollar2 = '', row, dollar3, column2, dollar4, row2] = groups;
    if (column === undefined || Number(row) > MAX_ROWS) return part;
    const sheet = prefix === undefined ? ownSheet : (splitAddress(`${prefix}A1`).sheet ?? ownSheet);
    if (sheet.toLowerCase() !== movedSheet.toLowerCase()) return part;
    const reference = part.slice(prefix?.length ?? 0);
    const before = parseArea(reference);
    const after = shift(before);
    if (after === before) return part;
    if (after === null) return `${prefix ?? ''}#REF!`;
    const [first = '', last = first] = areaAddress(after).split(':');
    const spelt = (address: string, ofColumn: string, ofRow: string): string =>
      address.replace(
        /^([A-Z]+)(\d+)$/,
        (_, letters: string, digits: string) => `${ofColumn}${letters}${ofRow}${digits}`,
      );
    const start = `${prefix ?? ''}${spelt(first, dollar1, dollar2)}`;
    const isRange = column2 !== undefined && row2 !== undefined;
    return isRange ? `${start}:${spelt(last, dollar3 ?? '', dollar4 ?? '')}` : start;
  });
}

function followInRow(row: Row, follow: (formula: string) => string): Row {
  let changed: (Cell | undefined)[] | null = null;
  row.forEach((cell, column) => {
    if (cell?.formula === undefined) return;
    const formula = follow(cell.formula);
    if (formula === cell.formula) return;
    changed ??= [...row];
    changed[column] = { ...cell, formula };
  });
  return changed ?? row;
}

function followInRule(
  rule: ValidationDescription['rule'],
  follow: (formula: string) => string,
): ValidationDescription['rule'] {
  return Object.fromEntries(
    Object.entries(rule).map(([kind, fields]) => [
      kind,
      Object.fromEntries(
        Object.entries(fields).map(([name, value]) => [
          name,
          typeof value === 'string' && value.startsWith('=') ? follow(value) : value,
        ]),
      ),
    ]),
  );
}

/** Makes all formulas of a workbook follow cells that have moved: in cells, calculated columns, names and validation. */
export function followMovedCells(workbook: MemoryWorkbook, moved: Sheet, shift: AreaShift): void {
  for (const sheet of workbook.sheets) {
    const follow = (formula: string): string => followCells(formula, sheet.name, moved.name, shift);
    sheet.rows = sheet.rows.map((row) => row && followInRow(row, follow));
    sheet.validations = sheet.validations.map((each) =>
      each.rule === null ? each : { ...each, rule: followInRule(each.rule, follow) },
    );
  }
  for (const table of workbook.tables) {
    table.columns = table.columns.map((column) =>
      column.formula === undefined
        ? column
        : { ...column, formula: followCells(column.formula, table.sheet.name, moved.name, shift) },
    );
  }
  workbook.names = workbook.names.map(({ name, formula }) => ({
    name,
    formula: followCells(formula, '', moved.name, shift),
  }));
}
