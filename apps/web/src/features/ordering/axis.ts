/** Round marks (1, 2, 5, 10, …) from 0 to just beyond the largest value. Only for drawing. */
export function marksTo(largest: number, most = 4): readonly number[] {
  if (!(largest > 0)) return [0, 1];
  const rough = largest / most;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((factor) => factor * power >= rough - 1e-12) ?? 10) * power;
  const count = Math.ceil(largest / step - 1e-9);
  return Array.from({ length: count + 1 }, (_, i) => Number((i * step).toPrecision(12)));
}
