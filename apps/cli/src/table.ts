/** Rows as aligned text, two blanks between the columns. */
export function table(rows: readonly (readonly string[])[]): string {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, cell.length);
    });
  }
  const line = (row: readonly string[]) =>
    row.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join('  ');
  return rows.map((row) => `  ${line(row)}`.trimEnd()).join('\n');
}
