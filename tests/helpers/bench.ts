import type { Random } from '../../src/core/identifier.ts';
import { openXlsx, type XlsxWorkbook } from '../../src/files/xlsx-workbook.ts';
import type { CellValue, Change } from '../../src/workbook/port.ts';
import type { Literal } from './literal.ts';
import { xlsxOf } from './xlsx.ts';

/** A generator of random numbers that gives the same ones every time (mulberry32, public domain). */
export function randomFrom(seed: number): Random {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A real workbook file that actions are carried out on, saved and opened again after each. */
export class Bench {
  bytes: Uint8Array;
  readonly random = randomFrom(1);

  constructor(literal: Literal) {
    this.bytes = xlsxOf(literal);
  }

  get workbook(): XlsxWorkbook {
    return openXlsx(this.bytes);
  }

  /** Carries changes out on the file; refusals of the action are errors here. */
  do<A extends { readonly ok: true; readonly changes: readonly Change[] }>(
    act: (
      snapshot: ReturnType<XlsxWorkbook['snapshot']>,
      random: Random,
    ) => A | { readonly ok: false; readonly message: string },
  ): A {
    const { workbook } = this;
    const answer = act(workbook.snapshot(), this.random);
    if (!answer.ok) throw new Error(answer.message);
    workbook.apply(answer.changes);
    this.bytes = workbook.save();
    return answer;
  }

  /** The filled rows of a table by header, blank cells left out. */
  rows(name: string): Record<string, CellValue>[] {
    const table = this.workbook.snapshot().tables.find((each) => each.name === name);
    if (table === undefined) throw new Error(`there is no table ${name}`);
    const rows = Array.from({ length: table.rowCount }, (_, row) =>
      Object.fromEntries(
        table.columns.flatMap(({ header, values }) => {
          const value = values[row] ?? null;
          return value === null ? [] : [[header, value]];
        }),
      ),
    );
    return rows.filter((row) => Object.keys(row).length > 0);
  }
}
