import { proximalCount } from '#lib/dentition';
import {
  add,
  layersForDepth,
  max,
  multiplyQuantity,
  type Quantity,
  quantity,
  quantityFromMicro,
  roundTo,
  splitLargestRemainder,
  ZERO_QUANTITY,
} from '#lib/measure';
import type { Driver, PlannedRestoration, TemplateLine } from './template.js';

export type IsWhole = (consumableId: string) => boolean;

/** How much of something is placed and dispensed; never more placed than dispensed. */
export interface Amount {
  readonly placed: Quantity;
  readonly dispensed: Quantity;
}

export interface ConsumableAmount extends Amount {
  readonly consumableId: string;
}

const ONE = quantity('1');

/** How often a line's amount is used in one attempt at this restoration, in millionths. */
function driverCount(driver: Driver, restoration: PlannedRestoration): Quantity {
  switch (driver) {
    case 'surface':
      return times(restoration.surfaces.length);
    case 'proximal surface':
      return times(proximalCount(restoration.surfaces));
    case 'layer':
      return times(layersForDepth(restoration.depthMm, restoration.template.layerThicknessMm));
    case 'mm3':
      return restoration.volumeMm3;
    case 'shade':
      return times(Math.max(1, chosenShades(restoration).length));
    case 'cycle':
      return times(restoration.cycles);
    default:
      return ONE;
  }
}

/**
 * What one attempt uses of a line, consumable by consumable, before whole units are rounded up. A
 * line without a consumable is spread equally over the chosen shades; counted per shade, each shade
 * takes the full amount.
 */
export function amountsOf(
  line: TemplateLine,
  restoration: PlannedRestoration,
  isWhole: IsWhole,
): ConsumableAmount[] {
  const { placed, dispensed } = line;
  const shades = chosenShades(restoration);
  if (line.consumableId === null && line.driver === 'shade') {
    return shades.map((consumableId) => ({ consumableId, placed, dispensed }));
  }
  const amount = scaled(line, driverCount(line.driver, restoration));
  if (line.consumableId !== null) return [{ consumableId: line.consumableId, ...amount }];
  return spread(amount, shades, isWhole);
}

export function scaled(amount: Amount, count: Quantity): Amount {
  return {
    placed: multiplyQuantity(amount.placed, count, 'half-up'),
    dispensed: multiplyQuantity(amount.dispensed, count, 'half-up'),
  };
}

export function plus(a: Amount, b: Amount): Amount {
  return { placed: add(a.placed, b.placed), dispensed: add(a.dispensed, b.dispensed) };
}

export function greater(a: Amount, b: Amount): Amount {
  return { placed: max(a.placed, b.placed), dispensed: max(a.dispensed, b.dispensed) };
}

export const NOTHING: Amount = { placed: ZERO_QUANTITY, dispensed: ZERO_QUANTITY };

export function times(count: number): Quantity {
  return quantityFromMicro(BigInt(count) * ONE);
}

/** What is counted in pieces or uses is used whole. */
export function rounded(amount: Amount, whole: boolean): Amount {
  if (!whole) return { placed: amount.placed, dispensed: amount.dispensed };
  return { placed: wholeUnits(amount.placed), dispensed: wholeUnits(amount.dispensed) };
}

function chosenShades(restoration: PlannedRestoration): string[] {
  return [...new Set(restoration.shades)];
}

function spread(amount: Amount, shades: readonly string[], isWhole: IsWhole): ConsumableAmount[] {
  if (shades.length === 0) return [];
  const counted = shades.every(isWhole);
  const placed = shares(amount.placed, shades.length, counted);
  const dispensed = shares(amount.dispensed, shades.length, counted);
  return shades.map((consumableId, n) => {
    const share = { placed: placed[n] ?? ZERO_QUANTITY, dispensed: dispensed[n] ?? ZERO_QUANTITY };
    return { consumableId, ...share };
  });
}

/** Equal shares that add up; of something counted, each chosen shade takes at least one. */
function shares(total: Quantity, parts: number, counted: boolean): Quantity[] {
  const least = total === 0n || !counted ? ZERO_QUANTITY : times(parts);
  const whole = counted ? max(wholeUnits(total), least) : total;
  const equal = new Array<bigint>(parts).fill(1n);
  return splitLargestRemainder(whole, equal, counted ? ONE : 1n).map(quantityFromMicro);
}

function wholeUnits(amount: Quantity): Quantity {
  return quantityFromMicro(roundTo(amount, ONE, 'up'));
}
