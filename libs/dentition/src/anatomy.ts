import { type IsoTooth, isPrimary, placeOf } from './iso-tooth.js';

type Quadrant = 1 | 2 | 3 | 4;
type Arch = 'upper' | 'lower';
type Region = `${Arch} front` | `quadrant ${Quadrant}`;

const PERMANENT_KINDS = [
  'central incisor',
  'lateral incisor',
  'canine',
  'first premolar',
  'second premolar',
  'first molar',
  'second molar',
  'third molar',
] as const;

export type ToothKind = (typeof PERMANENT_KINDS)[number];

const PRIMARY_KINDS: readonly ToothKind[] = [
  'central incisor',
  'lateral incisor',
  'canine',
  'first molar',
  'second molar',
];

/** Incisors and canines. */
export function isAnterior(tooth: IsoTooth): boolean {
  return placeOf(tooth) <= 3;
}

/**
 * 1 upper right, 2 upper left, 3 lower left, 4 lower right, of the patient; primary teeth likewise.
 */
export function quadrantOf(tooth: IsoTooth): Quadrant {
  const first = Math.floor(tooth / 10);
  return (isPrimary(tooth) ? first - 4 : first) as Quadrant;
}

export function archOf(tooth: IsoTooth): Arch {
  return quadrantOf(tooth) <= 2 ? 'upper' : 'lower';
}

/** The part of the mouth that is isolated together: canine to canine, otherwise the quadrant. */
export function regionOf(tooth: IsoTooth): Region {
  return isAnterior(tooth) ? `${archOf(tooth)} front` : `quadrant ${quadrantOf(tooth)}`;
}

/** The name of the tooth, without its side and arch. */
export function toothKind(tooth: IsoTooth): ToothKind {
  const kind = (isPrimary(tooth) ? PRIMARY_KINDS : PERMANENT_KINDS)[placeOf(tooth) - 1];
  if (kind === undefined) throw new RangeError(`${tooth} is not a tooth of ISO 3950.`);
  return kind;
}
