// Rows of words as an aligned table for a terminal: first column left, the others right.

export const textTable = (rows: readonly (readonly string[])[]): string => {
  const widths: number[] = [];
  for (const row of rows)
    row.forEach((cell, column) => {
      widths[column] = Math.max(widths[column] ?? 0, cell.length);
    });
  const place = (cell: string, column: number): string =>
    column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0);
  return rows.map((row) => row.map(place).join('  ').trimEnd()).join('\n');
};
