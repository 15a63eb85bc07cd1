import { type Money, moneyFromMicro, type Quantity, splitLargestRemainder } from '#lib/measure';
import type { LayerState } from './candidate.js';
import { landDelivery, type NotLanded, type SpreadKey } from './land-delivery.js';
import { revalueLayer } from './revalue-layer.js';

/** A layer of a delivery, with what a new price depends on. */
export interface PricedLayer extends LayerState {
  readonly lineNumber: number;
  readonly packs: number;
  readonly packPrice: Money;
  readonly weight: Quantity;
  readonly sample: boolean;
  /** The layer whose goods these are, under another lot. */
  readonly continuesId: string | null;
  readonly kit: { readonly line: number; readonly share: bigint; readonly packPrice: Money } | null;
  /** Received less what went back by corrections. */
  readonly net: Quantity;
}

export interface Extras {
  readonly freight: Money;
  readonly duty: Money;
  readonly discount: Money;
}

export interface NewPrices extends Extras {
  /** Per pack (of a kit: per kit), by the number of the line; others stay as they are. */
  readonly packPrices: ReadonlyMap<number, Money>;
  /** As they were until now. */
  readonly before: Extras;
  readonly spreadKey: SpreadKey;
  readonly step: bigint;
}

export interface Repriced {
  readonly ok: true;
  /** By how much the goods, and all of the delivery, cost more. */
  readonly goodsDifference: bigint;
  readonly difference: bigint;
  readonly layers: readonly {
    readonly layerId: string;
    readonly difference: bigint;
    readonly variance: bigint;
    readonly packPrice: Money;
    readonly kitPackPrice: Money | null;
  }[];
}

/**
 * A delivery at other prices. Each line is landed at the old prices and at the new ones; the difference
 * falls on the goods of the line, under whichever lots they are now, by quantity. Every layer is
 * answered, also those that stay as they are.
 */
export function repriceLines(
  layers: readonly PricedLayer[],
  prices: NewPrices,
): Repriced | NotLanded {
  const roots = layers.filter((layer) => layer.continuesId === null);
  const packPrices = new Map(roots.map((root) => [root.layerId, priceOf(root, layers, prices)]));
  const lineOf = (root: PricedLayer, packPrice: Money) => {
    const { packs, received: quantity, weight, sample } = root;
    return { packs, packPrice, quantity, weight, sample };
  };
  const { spreadKey, step } = prices;
  const was = landDelivery({
    ...{ spreadKey, step, ...prices.before },
    lines: roots.map((root) => lineOf(root, root.packPrice)),
  });
  if (!was.ok) return was;
  const is = landDelivery({
    ...prices,
    lines: roots.map((root) => lineOf(root, packPrices.get(root.layerId)?.own ?? root.packPrice)),
  });
  if (!is.ok) return is;
  const changed = roots.map((root, i) => {
    const members = layers.filter((layer) => rootOf(layer, layers).layerId === root.layerId);
    const difference = (is.landed[i] ?? 0n) - (was.landed[i] ?? 0n);
    return revalue(members, difference, packPrices.get(root.layerId));
  });
  if (changed.some((one) => one === undefined)) {
    return { ok: false, reason: 'discount too large', field: 'discount' };
  }
  return {
    ok: true,
    goodsDifference: is.goodsTotal - was.goodsTotal,
    difference: is.landedTotal - was.landedTotal,
    layers: changed.flatMap((one) => one ?? []),
  };
}

interface PackPrice {
  readonly own: Money;
  readonly kit: Money | null;
}

/** Undefined when a layer would have cost less than nothing. */
function revalue(
  members: readonly PricedLayer[],
  difference: bigint,
  price: PackPrice | undefined,
): Repriced['layers'] | undefined {
  const parts = splitLargestRemainder(
    difference,
    members.map((one) => one.net),
  );
  const revalued = members.map((member, i) => {
    const change = revalueLayer(member, parts[i] ?? 0n);
    return change && { member, difference: parts[i] ?? 0n, variance: change.variance };
  });
  if (revalued.some((one) => one === undefined)) return undefined;
  return revalued.flatMap((one) =>
    one === undefined
      ? []
      : [
          {
            layerId: one.member.layerId,
            difference: one.difference,
            // Where nothing changes, rounding of earlier days stays as it is.
            variance: one.difference === 0n ? 0n : one.variance,
            packPrice: price?.own ?? one.member.packPrice,
            kitPackPrice: price?.kit ?? null,
          },
        ],
  );
}

function rootOf(layer: PricedLayer, layers: readonly PricedLayer[]): PricedLayer {
  const before = layers.find((one) => one.layerId === layer.continuesId);
  return before ? rootOf(before, layers) : layer;
}

/** The new price of a pack: of a part of a kit its share of the kit's, as when it was received. */
function priceOf(root: PricedLayer, layers: readonly PricedLayer[], prices: NewPrices): PackPrice {
  const { kit } = root;
  if (kit === null) {
    return { own: prices.packPrices.get(root.lineNumber) ?? root.packPrice, kit: null };
  }
  const whole = prices.packPrices.get(kit.line);
  if (whole === undefined) return { own: root.packPrice, kit: kit.packPrice };
  const parts = layers.filter((one) => one.continuesId === null && one.kit?.line === kit.line);
  const split = splitLargestRemainder(
    whole,
    parts.map((part) => part.kit?.share ?? 0n),
    whole % prices.step === 0n ? prices.step : 1n,
  );
  const own = split[parts.findIndex((part) => part.layerId === root.layerId)] ?? 0n;
  return { own: moneyFromMicro(own), kit: whole };
}
