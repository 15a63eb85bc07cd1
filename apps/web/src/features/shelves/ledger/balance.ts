import { quantity } from '#lib/measure';
import type { Layer } from '../api/get-layer.js';

export const PARTS = ['onHand', 'used', 'wasted', 'returned', 'countDifference'] as const;
export type Part = (typeof PARTS)[number];

export interface PartOfBar {
  readonly part: Part;
  /** Of the whole bar, for drawing: 0 to 100. */
  readonly share: number;
}

/** The parts of what was received, as shares of a bar; what is nothing, or was found, has none. */
export function barOf(mass: Layer['mass']): PartOfBar[] {
  const sizes = PARTS.map((part) => ({ part, size: quantity(mass[part]) })).filter(
    ({ size }) => size > 0n,
  );
  const whole = sizes.reduce((total, { size }) => total + size, 0n);
  return sizes.map(({ part, size }) => ({ part, share: Number((size * 10_000n) / whole) / 100 }));
}

/** The parts that stand in the equation: always what is there and used, the others when there are any. */
export function partsOf(mass: Layer['mass']): Part[] {
  return PARTS.filter(
    (part) => part === 'onHand' || part === 'used' || quantity(mass[part]) !== 0n,
  );
}
