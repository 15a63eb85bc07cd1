import {
  type Money,
  moneyFromMicro,
  multiplyRatio,
  type Quantity,
  quantityFromMicro,
} from '#lib/measure';
import type { LayerState } from './candidate.js';
import { type LayerChange, takeBack } from './holding-change.js';

export interface Revaluation {
  readonly layer: LayerState;
  /** Part of the difference that falls on what has left already: price variance. */
  readonly variance: bigint;
  /** Part that falls on what is left: the stock is worth so much more, or less. */
  readonly toStock: bigint;
}

/**
 * A layer turns out to have cost another amount than it was booked with. What is left is worth its part
 * of the new cost; what has left keeps the value with which it left, and its part of the difference is
 * variance. From then on, value that left and variance together are always round(C * q_out / Q) of the
 * new cost C: a layer that is used up has cost exactly what was paid. Undefined when less than nothing
 * would have been paid.
 */
export function revalueLayer(state: LayerState, difference: bigint): Revaluation | undefined {
  const landedCost = moneyFromMicro(state.landedCost + difference);
  if (landedCost < 0n) return undefined;
  const outCost = shareOf(landedCost, state.outQuantity, state.received);
  const variance = outCost - state.outCost;
  const { layerId, received, outQuantity } = state;
  return {
    layer: { layerId, received, landedCost, outQuantity, outCost },
    variance,
    toStock: difference - variance,
  };
}

export interface TakenBack extends LayerChange {
  /** What this changes of the variance booked before; nothing for a layer never revalued. */
  readonly variance: bigint;
}

/**
 * Takes a movement back with the value it had. In a layer that was revalued the goods are worth what was
 * paid in the end; what differs from the value they took along was variance, and is so no longer.
 * Undefined when that much has not left.
 */
export function takeBackRevalued(
  state: LayerState,
  give: Quantity,
  cost: Money,
  revalued: boolean,
): TakenBack | undefined {
  if (!revalued) {
    const change = takeBack(state, give, cost);
    return change && { ...change, variance: 0n };
  }
  if (give > state.outQuantity) return undefined;
  const outQuantity = quantityFromMicro(state.outQuantity - give);
  const outCost = shareOf(state.landedCost, outQuantity, state.received);
  const { layerId, received, landedCost } = state;
  return {
    cost,
    layer: { layerId, received, landedCost, outQuantity, outCost },
    variance: outCost - (state.outCost - cost),
  };
}

function shareOf(landed: Money, out: Quantity, received: Quantity): Money {
  return moneyFromMicro(multiplyRatio(landed, out, received, 'half-up'));
}
