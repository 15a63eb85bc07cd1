export { add, compare, isZero, max, min, negate, subtract, sum } from './arithmetic.js';
export {
  type Decimal6,
  MeasureError,
  type Money,
  money,
  moneyFromMicro,
  parseDecimal,
  type Quantity,
  quantity,
  quantityFromMicro,
  ZERO_MONEY,
  ZERO_QUANTITY,
} from './decimals.js';
export { formatMoney, formatQuantity } from './formatting.js';
export { spreadOverLines } from './freight-spread.js';
export { layerCost, layerGiveBack } from './layer-cost.js';
export { layersForDepth, pastePlacedGrams } from './paste.js';
export {
  minorStep,
  multiplyQuantity,
  multiplyRatio,
  type RoundingMode,
  roundTo,
} from './rounding.js';
export { roundKeepingSum, splitLargestRemainder } from './splitting.js';
export { isWholeUnit, STOCK_UNITS, type StockUnit } from './units.js';
