import { normal as normalByVariance } from '../forecast/continuous.js';
import { certain, type Distribution } from '../forecast/distribution.js';
import { normalDensity, normalTail } from '../forecast/special-functions.js';

/** The normal distribution by its standard deviation; with a spread of 0, all of it at the mean. */
export function normal(mean: number, sd: number): Distribution {
  if (!(sd >= 0)) throw new RangeError('sd: a standard deviation is not negative.');
  return sd === 0 ? certain(mean) : normalByVariance(mean, sd * sd);
}

/** G(k) = E[(Z - k)+] = pdf(k) - k P(Z > k), the unit normal loss. */
export function normalLoss(k: number): number {
  return Math.max(normalDensity(k) - k * normalTail(k), 0);
}

/** The k with G(k) = loss, by bisection; RangeError unless the loss is more than zero. */
export function inverseNormalLoss(loss: number): number {
  if (!(loss > 0)) throw new RangeError('A loss is more than zero.');
  let low = -loss - 1;
  let high = 40;
  for (let i = 0; i < 200 && high - low > 1e-14 * Math.max(1, Math.abs(low)); i += 1) {
    const middle = (low + high) / 2;
    if (normalLoss(middle) > loss) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
