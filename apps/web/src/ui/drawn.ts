import { money } from '#lib/measure';

/** A decimal in millionths, to add and compare exactly. */
export function micro(decimal: string): bigint {
  return money(decimal);
}

/** How far a part reaches along the whole, 0 to 1. Only for drawing: it is no longer exact. */
export function drawnShare(part: bigint, whole: bigint): number {
  return whole === 0n ? 0 : Number((part * 1_000_000n) / whole) / 1_000_000;
}
