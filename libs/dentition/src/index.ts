export {
  archOf,
  isAnterior,
  quadrantOf,
  regionOf,
  type ToothKind,
  toothKind,
} from './anatomy.js';
export { CAVITY_CLASSES, type CavityClass, cavityClassFits } from './cavity-class.js';
export { ISO_TEETH, type IsoTooth, isPrimary, parseIsoTooth } from './iso-tooth.js';
export {
  formatTooth,
  isoToUniversal,
  parseTooth,
  TOOTH_NOTATIONS,
  type ToothNotation,
  universalToIso,
} from './notation.js';
export {
  CAVITY_SIZES,
  type CavitySize,
  PLANNING_VOLUMES,
  partOfBox,
  planningVolume,
} from './planning-volume.js';
export { REASONS, type Reason } from './reasons.js';
export {
  formatSurfaces,
  parseSurfaces,
  proximalCount,
  SURFACES,
  type Surface,
} from './surfaces.js';
