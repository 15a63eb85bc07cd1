export interface NamedSeries {
  readonly name: string;
  /** NaN where the cell is empty. */
  readonly values: Float64Array;
}

/**
 * Reads series from CSV: a header whose first column counts the periods, then one column per series
 * and one row per period, a point as decimal mark, no quotes; an empty cell is a missing period.
 * Throws RangeError naming line and column.
 */
export function seriesFromCsv(text: string): NamedSeries[] {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  const [header, ...rows] = lines.map((line) => line.split(','));
  if (header === undefined || header.length < 2 || rows.length === 0) {
    throw new RangeError('the file needs a header with a period column, a series and a row');
  }
  const series = header.slice(1).map((name) => ({ name, values: new Float64Array(rows.length) }));
  for (const [t, row] of rows.entries()) {
    if (row.length !== header.length) {
      throw new RangeError(`line ${t + 2} has ${row.length} cells, the header ${header.length}`);
    }
    for (const [i, { name, values }] of series.entries()) {
      const cell = (row[i + 1] ?? '').trim();
      const value = cell === '' ? Number.NaN : Number(cell);
      if (cell !== '' && !(Number.isFinite(value) && value >= 0)) {
        throw new RangeError(`line ${t + 2}, series ${name}: not a number of at least 0: ${cell}`);
      }
      values[t] = value;
    }
  }
  return series;
}
