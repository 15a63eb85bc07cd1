import { type Quantity, quantityFromMicro } from './decimals.js';
import { multiplyRatio } from './rounding.js';

interface Filling {
  readonly volumeMm3: Quantity;
  /** Volume lost when the paste sets, in percent: at least 0, less than 100. */
  readonly shrinkagePercent: Quantity;
  readonly densityGramsPerCm3: Quantity;
}

const HUNDRED_PERCENT = 100_000_000n;
// Density has six digits after the point, and a cubic centimetre is a thousand cubic millimetres.
const DENSITY_PER_MM3 = 1_000_000_000n;

/**
 * Grams of paste to place so that a cavity is full once it has set: volume / (1 - s) * density /
 * 1000, to six digits, half up. Elementary geometry; the paste left in the tip or tray is not in
 * it. Throws RangeError for a negative volume or density, or a shrinkage outside 0 to under 100.
 */
export function pastePlacedGrams(filling: Filling): Quantity {
  const { volumeMm3, shrinkagePercent, densityGramsPerCm3 } = filling;
  if (volumeMm3 < 0n) throw new RangeError('A volume is not negative.');
  if (densityGramsPerCm3 < 0n) throw new RangeError('A density is not negative.');
  if (shrinkagePercent < 0n || shrinkagePercent >= HUNDRED_PERCENT) {
    throw new RangeError('Shrinkage is at least 0 and less than 100 percent.');
  }
  const numerator = densityGramsPerCm3 * HUNDRED_PERCENT;
  const denominator = DENSITY_PER_MM3 * (HUNDRED_PERCENT - shrinkagePercent);
  return quantityFromMicro(multiplyRatio(volumeMm3, numerator, denominator, 'half-up'));
}

/**
 * Layers needed to fill a depth when each may be so thick: the ratio rounded up, at least one.
 * Throws RangeError for a negative depth or a thickness that is not more than zero.
 */
export function layersForDepth(depthMm: Quantity, layerThicknessMm: Quantity): number {
  if (depthMm < 0n) throw new RangeError('A depth is not negative.');
  if (layerThicknessMm <= 0n) throw new RangeError('A layer has a thickness.');
  return Math.max(1, Number(multiplyRatio(depthMm, 1n, layerThicknessMm, 'up')));
}
