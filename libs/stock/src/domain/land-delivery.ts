import { type Money, moneyFromMicro, type Quantity, spreadOverLines } from '#lib/measure';

export const SPREAD_KEYS = ['value', 'quantity', 'weight'] as const;
export type SpreadKey = (typeof SPREAD_KEYS)[number];

export interface LineToLand {
  readonly packs: number;
  readonly packPrice: Money;
  /** What the line brings, in stock units. */
  readonly quantity: Quantity;
  /** Of the whole line, in millionths of a gram; nothing where it is not known. */
  readonly weight: Quantity;
  /** Free samples cost nothing: they bear no freight and get no discount. */
  readonly sample: boolean;
}

export interface DeliveryInput {
  readonly lines: readonly LineToLand[];
  readonly freight: Money;
  readonly duty: Money;
  readonly discount: Money;
  readonly spreadKey: SpreadKey;
  /** Smallest amount that is paid (a cent), in micro units. */
  readonly step: bigint;
}

export interface LandedDelivery {
  readonly ok: true;
  /** Of each line, freight and duty included, discount taken off. */
  readonly landed: readonly Money[];
  readonly goodsTotal: Money;
  readonly landedTotal: Money;
}

export interface NotLanded {
  readonly ok: false;
  readonly reason: 'discount too large' | 'nothing bears it';
  readonly field: 'freight' | 'duty' | 'discount';
}

/**
 * What each line of a delivery cost to get here: its goods, plus freight and duty, less discount. Freight
 * and duty are spread by the key, the discount by the value of the goods, so that it never makes a line
 * negative; each is rounded to the cent by largest remainder, so that the lines add up to the invoice.
 */
export function landDelivery(input: DeliveryInput): LandedDelivery | NotLanded {
  const goods = input.lines.map((line) => BigInt(line.packs) * line.packPrice);
  const goodsTotal = goods.reduce((a, b) => a + b, 0n);
  if (input.discount > goodsTotal) return { ok: false, ...TOO_LARGE };
  const paid = input.lines.flatMap((line, i) => (line.sample ? [] : [i]));
  const extra = (['freight', 'duty'] as const).find((field) => input[field] > 0n);
  if (paid.length === 0 && extra) return { ok: false, reason: 'nothing bears it', field: extra };
  const figures = paid.map((i) => ({
    value: moneyFromMicro(goods[i] ?? 0n),
    quantity: input.lines[i]?.quantity ?? (0n as Quantity),
    weight: input.lines[i]?.weight ?? (0n as Quantity),
  }));
  const spread = (amount: Money, key: SpreadKey) =>
    spreadOverLines(amount, figures, key, stepFor(amount, input.step));
  const freight = spread(input.freight, input.spreadKey);
  const duty = spread(input.duty, input.spreadKey);
  const discount = spread(input.discount, 'value');
  const landed = [...goods];
  paid.forEach((line, i) => {
    landed[line] = (goods[line] ?? 0n) + (freight[i] ?? 0n) + (duty[i] ?? 0n) - (discount[i] ?? 0n);
  });
  if (landed.some((cost) => cost < 0n)) return { ok: false, ...TOO_LARGE };
  return {
    ok: true,
    landed: landed.map(moneyFromMicro),
    goodsTotal: moneyFromMicro(goodsTotal),
    landedTotal: moneyFromMicro(landed.reduce((a, b) => a + b, 0n)),
  };
}

const TOO_LARGE = { reason: 'discount too large', field: 'discount' } as const;

/** Amounts finer than a cent are spread as finely as they were given. */
function stepFor(amount: bigint, step: bigint): bigint {
  return amount % step === 0n ? step : 1n;
}
