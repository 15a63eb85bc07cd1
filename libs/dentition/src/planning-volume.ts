import type { CavityClass } from './cavity-class.js';

export const CAVITY_SIZES = ['small', 'medium', 'large'] as const;

export type CavitySize = (typeof CAVITY_SIZES)[number];

type BySize = Readonly<Record<CavitySize, string>>;

/**
 * Cavity volumes in cubic millimetres, as decimals. Planning values with low confidence: the
 * product of dimensions assumed for each class, to be replaced by what the practice finds it uses.
 *
 * The large class I is the cavity of a study (4 x 5 x 4 mm; Braz Oral Res, micro-CT bulk-fill
 * study, abstract). Class VI stands for 0.02 to 0.04 g of paste at 2.0 g/cm3: common practice, no
 * source.
 */
export const PLANNING_VOLUMES: Readonly<Record<CavityClass, BySize>> = {
  I: { small: '12', medium: '30', large: '80' },
  II: { small: '48', medium: '78', large: '188' },
  III: { small: '3.6', medium: '12', large: '30' },
  IV: { small: '11.3', medium: '25', large: '85' },
  V: { small: '3.1', medium: '7.9', large: '22' },
  VI: { small: '10', medium: '15', large: '20' },
};

/**
 * Without a class: a direct veneer of 0.5 mm on an upper lateral or central incisor, or of 0.7 mm
 * on a central one. Crown widths and heights are textbook averages, from memory.
 */
const VENEER: BySize = { small: '25', medium: '38', large: '53' };

/** The planning volume in cubic millimetres; undefined as a class means a direct veneer. */
export function planningVolume(cls: CavityClass | undefined, size: CavitySize): string {
  return (cls === undefined ? VENEER : PLANNING_VOLUMES[cls])[size];
}

const WHOLE: BySize = { small: '1', medium: '1', large: '1' };

/** pi / 6 of the box is half an ellipsoid. */
const HALF_ELLIPSOID: BySize = { small: '0.523599', medium: '0.523599', large: '0.523599' };

/** The part of its box (length x width x depth) that a cavity fills, by the same assumptions. */
const PARTS: Readonly<Record<CavityClass, BySize>> = {
  I: WHOLE,
  II: WHOLE,
  III: WHOLE,
  // A corner is half a box, cut from edge to edge; half a crown is all of it.
  IV: { small: '0.5', medium: '0.5', large: '1' },
  V: HALF_ELLIPSOID,
  VI: WHOLE,
};

const VENEER_PART = '0.85';

/** As a decimal from 0 to 1; undefined as a class means a direct veneer. */
export function partOfBox(cls: CavityClass | undefined, size: CavitySize): string {
  return cls === undefined ? VENEER_PART : PARTS[cls][size];
}
