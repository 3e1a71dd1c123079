// Rows of words as an aligned table for a terminal.
import stringWidth from 'string-width';

export const textTable = (rows: readonly (readonly string[])[]): string => {
  const widths: number[] = [];
  for (const row of rows)
    row.forEach((cell, column) => {
      widths[column] = Math.max(widths[column] ?? 0, stringWidth(cell));
    });
  return rows
    .map((row) =>
      row
        .map((cell, column) => cell + ' '.repeat((widths[column] ?? 0) - stringWidth(cell)))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
};
