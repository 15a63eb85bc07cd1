import { addDays, daysBetween, type IsoDate } from '#lib/platform';

interface ValidFrom {
  readonly validFrom: IsoDate;
}

export interface Segment<T extends ValidFrom> {
  readonly first: IsoDate;
  readonly last: IsoDate;
  readonly days: bigint;
  /** Null: before the first rate. */
  readonly rate: T | null;
}

/** Takes a period apart by the rates that are valid in it; `rates` by date, the earliest first. */
export function segmentsOf<T extends ValidFrom>(
  rates: readonly T[],
  from: IsoDate,
  to: IsoDate,
): Segment<T>[] {
  const starts = rates.filter((rate) => rate.validFrom > from && rate.validFrom <= to);
  const before = rates.filter((rate) => rate.validFrom <= from).at(-1) ?? null;
  const parts = [{ first: from, rate: before }];
  for (const rate of starts) parts.push({ first: rate.validFrom, rate });
  if (from > to) return [];
  return parts.map(({ first, rate }, i) => {
    const next = parts[i + 1]?.first;
    const last = next === undefined ? to : addDays(next, -1);
    return { first, last, rate, days: BigInt(daysBetween(first, last) + 1) };
  });
}
