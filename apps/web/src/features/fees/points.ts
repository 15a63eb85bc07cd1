import { formatMoney, type Money, moneyFromMicro, multiplyRatio, parseDecimal } from '#lib/measure';

/** A fee by a tariff as it is made: the exact product, and what is left after rounding it once. */
export interface PointsFee {
  /** All digits: '38.4189855…' */
  readonly exact: string;
  readonly fee: Money;
  readonly rounded: boolean;
}

const POINT_SCALE = 8;
/** Digits after the point of points (6) x factor (6) x value of a point (8). */
const PRODUCT_SCALE = 20;

/** Points x value of a point x factor, rounded half up to the smallest coin; undefined: not numbers. */
export function feeByPoints(
  typed: { readonly points: string; readonly pointValue: string; readonly factor: string },
  step: bigint,
): PointsFee | undefined {
  const points = parseDecimal(typed.points, 6);
  const value = parseDecimal(typed.pointValue, POINT_SCALE);
  const factor = parseDecimal(typed.factor, 6);
  if (!points.ok || !value.ok || !factor.ok) return undefined;
  const product = points.value * factor.value * value.value;
  if (product <= 0n) return undefined;
  const coin = step * 10n ** BigInt(PRODUCT_SCALE - 6);
  const fee = moneyFromMicro(multiplyRatio(product, 1n, coin, 'half-up') * step);
  return { exact: plain(product), fee, rounded: product % coin !== 0n };
}

/** Every digit that is there, at least as many as money has. */
function plain(product: bigint): string {
  const digits = product.toString().padStart(PRODUCT_SCALE + 1, '0');
  const fraction = digits.slice(-PRODUCT_SCALE).replace(/0+$/, '');
  const whole = digits.slice(0, -PRODUCT_SCALE);
  return fraction === '' ? whole : `${whole}.${fraction}`;
}

/** What comes out when it is rounded after the points already: the usual mistake. */
export function roundedTooEarly(
  typed: { readonly points: string; readonly pointValue: string; readonly factor: string },
  step: bigint,
): Money | undefined {
  const first = feeByPoints({ ...typed, factor: '1' }, step);
  if (!first) return undefined;
  const one = { points: formatMoney(first.fee), pointValue: '1', factor: typed.factor };
  return feeByPoints(one, step)?.fee;
}
