import {
  layerCost,
  layerGiveBack,
  type Money,
  moneyFromMicro,
  type Quantity,
  quantityFromMicro,
} from '#lib/measure';
import type { Candidate, LayerState } from './candidate.js';

export interface LayerChange {
  readonly layer: LayerState;
  /** Value that left (or came back), never negative. */
  readonly cost: Money;
}

/** Takes a quantity out of a layer for good: used, wasted, returned or lost. */
export function takeFromLayer(state: LayerState, take: Quantity): LayerChange {
  const cost = layerCost({
    landedCost: state.landedCost,
    received: state.received,
    outBefore: state.outQuantity,
    outCostBefore: state.outCost,
    take,
  });
  return {
    cost,
    layer: {
      ...pick(state),
      outQuantity: quantityFromMicro(state.outQuantity + take),
      outCost: moneyFromMicro(state.outCost + cost),
    },
  };
}

/** Found again at a count. Undefined when that is more than the layer ever received. */
export function findAgain(state: LayerState, give: Quantity): LayerChange | undefined {
  if (give > state.outQuantity) return undefined;
  const cost = layerGiveBack({
    landedCost: state.landedCost,
    received: state.received,
    outBefore: state.outQuantity,
    outCostBefore: state.outCost,
    give,
  });
  return giveBack(state, give, cost);
}

/**
 * Takes a movement back with the value it had. Where goods were meanwhile found again at a count the
 * layer may have less value to get back; it never falls below nothing, and is nothing when all is back.
 */
export function takeBack(state: LayerState, give: Quantity, cost: Money): LayerChange | undefined {
  if (give > state.outQuantity) return undefined;
  const all = give === state.outQuantity;
  const back = all || cost > state.outCost ? state.outCost : cost;
  return giveBack(state, give, back);
}

function giveBack(state: LayerState, give: Quantity, cost: Money): LayerChange {
  return {
    cost,
    layer: {
      ...pick(state),
      outQuantity: quantityFromMicro(state.outQuantity - give),
      outCost: moneyFromMicro(state.outCost - cost),
    },
  };
}

function pick(state: LayerState): LayerState {
  const { layerId, received, landedCost, outQuantity, outCost } = state;
  return { layerId, received, landedCost, outQuantity, outCost };
}

/** A quantity of a single-dose or by-piece holding must be whole doses or pieces. */
export function isWholePart(c: Candidate, amount: Quantity, wholeUnit: boolean): boolean {
  if (wholeUnit && amount % 1_000_000n !== 0n) return false;
  return c.dispensing !== 'single-dose' || amount % c.content === 0n || amount === c.onHand;
}
