import { splitLargestRemainder } from '#lib/measure';

/** One restoration: what was said of it, else what its template plans. */
export interface Timed {
  readonly stated: number | null;
  readonly planned: number;
}

export type SpreadMinutes =
  | { readonly ok: true; readonly minutes: readonly number[] }
  | { readonly ok: false; readonly message: string };

/**
 * The minutes of each restoration, when those of the whole visit are known: what was said of a
 * restoration stays, the rest is divided by what the templates plan, in whole minutes that add up to the
 * visit. Without minutes of the visit, each takes what its template plans.
 */
export function spreadMinutes(of: readonly Timed[], total: number | null): SpreadMinutes {
  if (total === null) return { ok: true, minutes: of.map((r) => r.stated ?? r.planned) };
  const said = of.reduce((sum, r) => sum + (r.stated ?? 0), 0);
  const open = of.filter((r) => r.stated === null);
  if (said > total || (open.length === 0 && said !== total)) {
    const message = `must be ${open.length === 0 ? '' : 'at least '}what its restorations say, ${said}`;
    return { ok: false, message };
  }
  const weights = open.map((r) => BigInt(r.planned));
  const shares = open.length === 0 ? [] : splitLargestRemainder(BigInt(total - said), weights);
  let next = 0;
  return { ok: true, minutes: of.map((r) => r.stated ?? Number(shares[next++] ?? 0n)) };
}
