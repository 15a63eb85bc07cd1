import type { CavityClass, CavitySize } from '#lib/dentition';

type BySize = Readonly<Record<CavitySize, string>>;

/** Common practice, no source. */
const USUAL: BySize = { small: '2', medium: '2', large: '2' };

/**
 * Cavity depths in millimetres, as decimals: the depths assumed for the planning volumes of the
 * same classes and sizes. Low confidence, to be replaced by what the practice records. The large
 * class I is the cavity of a study (4 x 5 x 4 mm; Braz Oral Res, micro-CT bulk-fill study,
 * abstract).
 */
const PLANNING_DEPTHS: Readonly<Record<CavityClass, BySize>> = {
  I: { small: '2', medium: '2.5', large: '4' },
  II: USUAL,
  III: { small: '1.2', medium: '2', large: '2.5' },
  IV: { small: '2.5', medium: '2.5', large: '2.5' },
  V: { small: '1', medium: '1.5', large: '2' },
  VI: USUAL,
};

/** Without a class: a direct veneer of 0.5 or 0.7 mm. */
const VENEER: BySize = { small: '0.5', medium: '0.5', large: '0.7' };

/** The planning depth in millimetres; undefined as a class means a direct veneer. */
export function planningDepth(cls: CavityClass | undefined, size: CavitySize): string {
  return (cls === undefined ? VENEER : PLANNING_DEPTHS[cls])[size];
}
