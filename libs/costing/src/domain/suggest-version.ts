import {
  formatQuantity,
  isWholeUnit,
  multiplyRatio,
  type Quantity,
  quantityFromMicro,
  roundTo,
} from '#lib/measure';

/** What a template line plans, and what became of all that was planned from it. */
export interface LineEvidence {
  readonly placed: Quantity;
  readonly dispensed: Quantity;
  /** Stock unit; null when the line takes whatever shade was chosen. */
  readonly unit: string | null;
  /** How many usage lines came from it, and their sums. */
  readonly uses: number;
  readonly planned: Quantity;
  readonly usedPlaced: Quantity;
  readonly usedDispensed: Quantity;
}

export interface LineSuggestion {
  /** Mean per unit of the driver; null without evidence. */
  readonly used: { readonly placed: Quantity; readonly dispensed: Quantity } | null;
  /** What a new version should say; the template's own amounts where that is near enough. */
  readonly placed: Quantity;
  readonly dispensed: Quantity;
  readonly changed: boolean;
}

const FEWEST_USES = 5;
const NEAR_ENOUGH = 20n; // one in so many: 5 %
const STEP = 1000n; // 0.001
const ONE = 1_000_000n;

/**
 * Scales a template line by what was really used for each unit that it planned. Fewer than five
 * uses, or a difference below 5 %, change nothing.
 */
export function suggestLine(line: LineEvidence): LineSuggestion {
  const kept = { placed: line.placed, dispensed: line.dispensed, changed: false };
  if (line.uses === 0 || line.planned === 0n) return { used: null, ...kept };
  const scaled = (sum: Quantity) =>
    quantityFromMicro(multiplyRatio(line.dispensed, sum, line.planned, 'half-up'));
  const used = { placed: scaled(line.usedPlaced), dispensed: scaled(line.usedDispensed) };
  if (line.uses < FEWEST_USES) return { used, ...kept };
  const step = line.unit !== null && isWholeUnit(line.unit) ? ONE : stepOf(line.dispensed);
  const dispensed = atLeast(nearest(used.dispensed, step), step);
  const placed = atMost(nearest(used.placed, step), dispensed);
  if (near(dispensed, line.dispensed) && near(placed, line.placed)) return { used, ...kept };
  return { used, placed, dispensed, changed: true };
}

/** The mean of what was used beside the template, in steps that can be kept; nothing of nothing. */
export function meanOf(sum: Quantity, count: number, unit: string): Quantity {
  if (sum === 0n) return sum;
  const mean = multiplyRatio(sum, 1n, BigInt(count), 'half-up');
  const step = isWholeUnit(unit) ? ONE : stepOf(mean);
  return atLeast(nearest(quantityFromMicro(mean), step), step);
}

/** One sentence for people: what the template says and what was used. */
export function sentenceOf(says: Quantity, used: Quantity, unit: string, last: number): string {
  const shown = formatQuantity(nearest(used, stepOf(used)));
  const said = `The template says ${formatQuantity(says)} ${unit}`;
  return `${said}, the last ${last} used ${shown} ${unit}.`;
}

/** 0.001, or finer where that would be more than a tenth: 0.0023 g for a mm3 is not 0.002 g. */
function stepOf(value: bigint): bigint {
  let step = STEP;
  while (step > 1n && value < step * 10n) step /= 10n;
  return step;
}

function near(a: Quantity, b: Quantity): boolean {
  const difference = a > b ? a - b : b - a;
  return difference * NEAR_ENOUGH < b || difference === 0n;
}

function nearest(value: Quantity, step: bigint): Quantity {
  return quantityFromMicro(roundTo(value, step, 'half-up'));
}

function atLeast(value: Quantity, least: bigint): Quantity {
  return value < least ? quantityFromMicro(least) : value;
}

function atMost(value: Quantity, most: Quantity): Quantity {
  return value > most ? most : value;
}
