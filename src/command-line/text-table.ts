import stringWidth from 'string-width';

/** A column of a printed table. */
export interface TextColumn {
  readonly header: string;
  readonly align: 'left' | 'right';
}

const GAP = '  ';

/** Lays rows out in aligned columns under a header and a rule; cells are one line each. */
export function textTable(columns: readonly TextColumn[], rows: readonly (readonly string[])[]): string[] {
  const widths = columns.map(({ header }, place) =>
    Math.max(stringWidth(header), ...rows.map((row) => stringWidth(row[place] ?? ''))),
  );
  const line = (cells: readonly string[]): string =>
    columns
      .map(({ align }, place) => padded(cells[place] ?? '', widths[place] ?? 0, align))
      .join(GAP)
      .trimEnd();
  return [
    line(columns.map(({ header }) => header)),
    widths.map((width) => '─'.repeat(width)).join(GAP),
    ...rows.map(line),
  ];
}

function padded(text: string, width: number, align: TextColumn['align']): string {
  const space = ' '.repeat(Math.max(width - stringWidth(text), 0));
  return align === 'left' ? text + space : space + text;
}
