import { type Money, money, parseDecimal, quantity } from '#lib/measure';
import { type Actor, currencyStep, type IsoDate } from '#lib/platform';
import type { NewFeeVersion } from '../db/fee-versions.js';
import { feeByPoints } from '../domain/tariff.js';
import { refusePricing } from '../pricing.refusals.js';
import { refuseFractions } from './coins.js';

/** A fee is an amount, or points, the value of a point and a factor. */
export interface FeeContent {
  readonly validFrom: IsoDate;
  readonly fee?: string | null;
  readonly points?: string | null;
  readonly pointValue?: string | null;
  readonly factor?: string | null;
}

export function feeVersionOf(actor: Actor, content: FeeContent): Omit<NewFeeVersion, 'feeId'> {
  const { validFrom } = content;
  const points = content.points ?? null;
  const pointValue = content.pointValue ?? null;
  const factor = content.factor ?? null;
  const parts = { points, pointValue, factor };
  if (content.fee != null) {
    const extra = Object.entries(parts).find(([, text]) => text !== null);
    if (extra) throw notStated(extra[0], 'does not go with a fee that is stated as an amount');
    refuseFractions(actor, { fee: content.fee });
    return { validFrom, fee: money(content.fee), ...parts };
  }
  if (points === null && pointValue === null && factor === null) {
    throw notStated('fee', 'must be stated: an amount, or points, pointValue and factor');
  }
  for (const [field, text] of Object.entries(parts)) {
    if (text === null)
      throw notStated(field, 'must be stated with the other two parts of a tariff');
  }
  const fee = tariffFee(points ?? '', pointValue ?? '', factor ?? '', currencyStep(actor.currency));
  return { validFrom, fee, ...parts };
}

const MOST = money('1000000000');

function tariffFee(points: string, pointValue: string, factor: string, step: bigint): Money {
  const value = parseDecimal(pointValue, 8);
  if (!value.ok) throw notStated('pointValue', 'is not a decimal');
  const parts = { points: quantity(points), pointValue: value.value, factor: quantity(factor) };
  const fee = feeByPoints(parts, step);
  if (fee > MOST) throw notStated('points', 'make a fee that is more than the book can hold');
  return fee;
}

function notStated(field: string, message: string) {
  return refusePricing('fee_not_stated', `${field} ${message}.`, [{ field, message }]);
}
