import type { RowIndex, SheetText } from './sheet-rows.ts';

/** A piece of text to stand in place of what is from `start` to `end`. */
export interface Splice {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The text with pieces of it replaced; the splices don't overlap. */
export function splice(text: string, splices: readonly Splice[]): string {
  let written = '';
  let at = 0;
  for (const each of splices.toSorted((a, b) => a.start - b.start)) {
    written += text.slice(at, each.start) + each.text;
    at = each.end;
  }
  return written + text.slice(at);
}

/** The sheet with pieces within its rows replaced, its row index moved along. */
export function replaceInData(sheet: SheetText, splices: readonly Splice[]): SheetText {
  const ascending = splices.toSorted((a, b) => a.start - b.start);
  let next = 0;
  let moved = 0;
  const rows: RowIndex = { numbers: sheet.rows.numbers, starts: [], ends: [] };
  for (let place = 0; place < rows.numbers.length; place++) {
    rows.starts.push((sheet.rows.starts[place] as number) + moved);
    const end = sheet.rows.ends[place] as number;
    for (; next < ascending.length && (ascending[next] as Splice).start < end; next++) {
      const { start, end: spliceEnd, text } = ascending[next] as Splice;
      moved += text.length - (spliceEnd - start);
    }
    rows.ends.push(end + moved);
  }
  return { ...sheet, data: splice(sheet.data, ascending), rows };
}
