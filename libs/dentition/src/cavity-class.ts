import { isAnterior } from './anatomy.js';
import type { IsoTooth } from './iso-tooth.js';
import { proximalCount, type Surface } from './surfaces.js';

/**
 * Black's classes: I pits and fissures; II proximal of a back tooth; III proximal of a front tooth
 * without its corner; IV with its corner; V gingival third; VI incisal edge or cusp tip. A
 * restoration may have none (a veneer).
 */
export const CAVITY_CLASSES = ['I', 'II', 'III', 'IV', 'V', 'VI'] as const;

export type CavityClass = (typeof CAVITY_CLASSES)[number];

type ClassFit =
  | { readonly ok: true }
  | {
      readonly ok: false;
      readonly code: 'class_not_on_tooth' | 'class_needs_surface';
      /** What the surfaces must be, for a person to read; only with class_needs_surface. */
      readonly needs?: string;
    };

interface ClassRule {
  /** Undefined for a class that every tooth can have. */
  readonly anterior?: boolean;
  readonly needs: (anterior: boolean) => string;
  readonly fits: (surfaces: ReadonlySet<Surface>, proximal: boolean, anterior: boolean) => boolean;
}

const RULES: Record<CavityClass, ClassRule> = {
  I: {
    needs: () => 'neither M nor D',
    fits: (_surfaces, proximal) => !proximal,
  },
  II: {
    anterior: false,
    needs: () => 'M or D',
    fits: (_surfaces, proximal) => proximal,
  },
  III: {
    anterior: true,
    needs: () => 'M or D, without I',
    fits: (surfaces, proximal) => proximal && !surfaces.has('I'),
  },
  IV: {
    anterior: true,
    needs: () => 'M or D, and I',
    fits: (surfaces, proximal) => proximal && surfaces.has('I'),
  },
  V: {
    needs: () => 'F or L',
    fits: (surfaces) => surfaces.has('F') || surfaces.has('L'),
  },
  VI: {
    needs: (anterior) => (anterior ? 'I' : 'O'),
    fits: (surfaces, _proximal, anterior) => surfaces.has(anterior ? 'I' : 'O'),
  },
};

/** Whether a cavity of this class can be on these surfaces of this tooth, and if not, why. */
export function cavityClassFits(
  tooth: IsoTooth,
  surfaces: readonly Surface[],
  cls: CavityClass,
): ClassFit {
  const rule = RULES[cls];
  const anterior = isAnterior(tooth);
  if (rule.anterior !== undefined && rule.anterior !== anterior) {
    return { ok: false, code: 'class_not_on_tooth' };
  }
  if (rule.fits(new Set(surfaces), proximalCount(surfaces) > 0, anterior)) return { ok: true };
  return { ok: false, code: 'class_needs_surface', needs: rule.needs(anterior) };
}
