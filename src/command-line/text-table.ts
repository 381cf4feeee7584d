import stringWidth from 'string-width';
import wrapAnsi from 'wrap-ansi';
import { oneLine } from './terminal.ts';

/** A column of a printed table. */
export interface TextColumn {
  readonly header: string;
  readonly align: 'left' | 'right';
}

const GAP = '  ';
/** A column of text is made narrower down to this, and no further. */
const NARROWEST = 12;

/**
 * Lays rows out in aligned columns under a header and a rule. A column in which nothing stands is left out. Where
 * the table is wider than the terminal, its widest columns of text are narrowed, and their cells run over several lines.
 */
export function textTable(
  columns: readonly TextColumn[],
  rows: readonly (readonly string[])[],
  width: number,
): string[] {
  const cells = rows.map((row) => columns.map((_, place) => oneLine(row[place] ?? '')));
  const filled = columns.flatMap((column, place) => {
    const texts = cells.map((row) => row[place] ?? '');
    if (texts.every((text) => text === '')) return [];
    return [
      {
        ...column,
        texts,
        width: Math.max(stringWidth(column.header), ...texts.map((text) => stringWidth(text))),
      },
    ];
  });
  const widths = narrowed(filled, width);
  const line = (texts: readonly string[]): string =>
    filled
      .map(({ align }, place) => padded(texts[place] ?? '', widths[place] ?? 0, align))
      .join(GAP)
      .trimEnd();
  const lines = (texts: readonly string[]): string[] => {
    const wrapped = texts.map((text, place) =>
      wrapAnsi(text, widths[place] ?? 0, { hard: true }).split('\n'),
    );
    const height = Math.max(...wrapped.map((each) => each.length));
    return Array.from({ length: height }, (_, number) => line(wrapped.map((each) => each[number] ?? '')));
  };
  return [
    line(filled.map(({ header }) => header)),
    widths.map((each) => '─'.repeat(each)).join(GAP),
    ...cells.flatMap((_, row) => lines(filled.map(({ texts }) => texts[row] ?? ''))),
  ];
}

/** The widths of the columns, those of text narrowed from the widest on until all fit, as far as they can be. */
function narrowed(
  columns: readonly { readonly align: string; readonly width: number; readonly header: string }[],
  width: number,
) {
  const widths = columns.map((column) => column.width);
  const total = (): number => widths.reduce((sum, each) => sum + each, 0) + GAP.length * (widths.length - 1);
  while (total() > width) {
    const wide = columns.flatMap(({ align, header }, place) => {
      const own = widths[place] ?? 0;
      return align === 'left' && own > Math.max(NARROWEST, stringWidth(header)) ? [{ place, own }] : [];
    });
    const widest = wide.toSorted((a, b) => b.own - a.own)[0];
    if (widest === undefined) break;
    widths[widest.place] = widest.own - 1;
  }
  return widths;
}

function padded(text: string, width: number, align: TextColumn['align']): string {
  const space = ' '.repeat(Math.max(width - stringWidth(text), 0));
  return align === 'left' ? text + space : space + text;
}
