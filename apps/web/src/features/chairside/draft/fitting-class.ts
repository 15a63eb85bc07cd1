import {
  CAVITY_CLASSES,
  type CavityClass,
  cavityClassFits,
  type IsoTooth,
  type Surface,
} from '#lib/dentition';
import type { RestorationDraft } from './draft.js';

/** The classes that these surfaces of this tooth can have. */
export function fittingClasses(tooth: IsoTooth, surfaces: readonly Surface[]): CavityClass[] {
  if (surfaces.length === 0) return [];
  return CAVITY_CLASSES.filter((cls) => cavityClassFits(tooth, surfaces, cls).ok);
}

/** The class that the surfaces leave no doubt about; null where a person has to say. */
function plainClass(tooth: IsoTooth, surfaces: readonly Surface[]): CavityClass | null {
  const fitting = fittingClasses(tooth, surfaces);
  const proximal = fitting.find((cls) => cls === 'II' || cls === 'III' || cls === 'IV');
  if (proximal !== undefined) return proximal;
  if (surfaces.length !== 1) return null;
  if (surfaces[0] === 'O') return 'I';
  return surfaces[0] === 'F' ? 'V' : null;
}

/** Lets the class follow the surfaces until a person has chosen one, and while that still fits. */
export function withFittingClass(of: RestorationDraft): RestorationDraft {
  const { tooth, surfaces, cavityClass, classChosen } = of;
  const holds = cavityClass === null || fittingClasses(tooth, surfaces).includes(cavityClass);
  if (classChosen && holds) return of;
  return { ...of, classChosen: false, cavityClass: plainClass(tooth, surfaces) };
}
