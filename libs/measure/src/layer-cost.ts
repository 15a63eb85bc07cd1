import { type Money, moneyFromMicro, type Quantity } from './decimals.js';
import { multiplyRatio } from './rounding.js';

/** A delivered quantity of one lot with what it cost to get here, and what has left it so far. */
interface LayerBefore {
  /** What the whole layer cost, freight and discount included; not negative. */
  readonly landedCost: Money;
  /** What was received, in stock units; more than zero. */
  readonly received: Quantity;
  /** What has left the layer and not come back. */
  readonly outBefore: Quantity;
  /** The value that left with it. */
  readonly outCostBefore: Money;
}

/**
 * The cost of taking `take` out of a layer. It is measured against all that has left, so that the
 * rounding of single takes never adds up: a layer that is used up has cost exactly what was paid.
 * Never negative. Throws RangeError unless 0 < take <= what is left.
 */
export function layerCost(input: LayerBefore & { readonly take: Quantity }): Money {
  const { outBefore, outCostBefore, received, take } = input;
  refuseBadLayer(input);
  if (take <= 0n) throw new RangeError('What is taken must be more than zero.');
  if (outBefore + take > received) throw new RangeError('The layer holds less than is taken.');
  const target = costOf(input, outBefore + take);
  return moneyFromMicro(target > outCostBefore ? target - outCostBefore : 0n);
}

/**
 * The value that returns to a layer when `give` turns up again without a movement to take back
 * (more was counted than booked). Between zero and the value that had left. Throws RangeError
 * unless 0 < give <= what had left.
 */
export function layerGiveBack(input: LayerBefore & { readonly give: Quantity }): Money {
  const { outBefore, outCostBefore, give } = input;
  refuseBadLayer(input);
  if (give <= 0n) throw new RangeError('What is given back must be more than zero.');
  if (give > outBefore) throw new RangeError('More is given back than had left the layer.');
  const target = costOf(input, outBefore - give);
  return moneyFromMicro(target < outCostBefore ? outCostBefore - target : 0n);
}

function costOf(layer: LayerBefore, out: bigint): bigint {
  return multiplyRatio(layer.landedCost, out, layer.received, 'half-up');
}

function refuseBadLayer(layer: LayerBefore): void {
  if (layer.received <= 0n) throw new RangeError('A layer has received more than zero.');
  if (layer.landedCost < 0n) throw new RangeError('The cost of a layer is not negative.');
  if (layer.outBefore < 0n) throw new RangeError('What has left a layer is not negative.');
}
