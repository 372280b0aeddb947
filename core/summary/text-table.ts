/** A column of a text table: heading and side on which its cells stand. */
export interface Column {
  readonly head: string;
  readonly align: 'left' | 'right';
  /** Unit of the column; where any column has one, units stand in a line of their own. */
  readonly unit?: string;
}

/** Lays rows out in columns wide enough for each; two spaces between, none at a line's end. */
export function textTable(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  indent = '',
): string[] {
  const widths = columns.map((column, i) =>
    Math.max(column.head.length, column.unit?.length ?? 0, ...rows.map((row) => row[i]!.length)),
  );
  const line = (cells: readonly string[]) =>
    `${indent}${cells
      .map((cell, i) => (columns[i]!.align === 'left' ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!)))
      .join('  ')}`.trimEnd();
  const units = columns.some((column) => column.unit !== undefined)
    ? [line(columns.map((column) => column.unit ?? ''))]
    : [];
  return [line(columns.map((column) => column.head)), ...units, ...rows.map(line)];
}

/** Breaks a sentence into lines of at most `width` characters; later lines start with `hanging`, the first as it is. */
export function wrapText(text: string, width: number, hanging = ''): string[] {
  const lead = /^ */.exec(text)![0];
  const lines: string[] = [];
  let line = lead;
  let empty = true;
  for (const word of text.slice(lead.length).split(' ')) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = hanging;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line];
}
