import { quadrantOf } from './anatomy.js';
import { ISO_TEETH, type IsoTooth, isPrimary, parseIsoTooth, placeOf } from './iso-tooth.js';

/** How teeth are written: ISO 3950 ('11', '51') or Universal ('8', 'E'). */
export const TOOTH_NOTATIONS = ['iso', 'universal'] as const;

export type ToothNotation = (typeof TOOTH_NOTATIONS)[number];

/**
 * The Universal label: permanent teeth '1' to '32' and primary teeth 'A' to 'T', both counted from
 * the upper right, along the upper arch, and back along the lower one.
 */
export function isoToUniversal(tooth: IsoTooth): string {
  const primary = isPrimary(tooth);
  const perQuadrant = primary ? 5 : 8;
  const quadrant = quadrantOf(tooth);
  const place = placeOf(tooth);
  // Quadrants 1 and 3 are counted towards the midline, 2 and 4 away from it.
  const inQuadrant = quadrant % 2 === 1 ? perQuadrant + 1 - place : place;
  const number = (quadrant - 1) * perQuadrant + inQuadrant;
  return primary ? String.fromCharCode(64 + number) : String(number);
}

const BY_UNIVERSAL = new Map(ISO_TEETH.map((tooth) => [isoToUniversal(tooth), tooth]));

/** The tooth with this Universal label, a letter in either case; undefined when there is none. */
export function universalToIso(label: string): IsoTooth | undefined {
  return BY_UNIVERSAL.get(label.toUpperCase());
}

export function formatTooth(tooth: IsoTooth, notation: ToothNotation): string {
  return notation === 'iso' ? String(tooth) : isoToUniversal(tooth);
}

/**
 * Reads what a person wrote in the notation they use; spaces around it do not matter. Undefined
 * when it names no tooth. The notation is never guessed: '11' is a different tooth in each.
 */
export function parseTooth(text: string, notation: ToothNotation): IsoTooth | undefined {
  const label = text.trim();
  return notation === 'iso' ? parseIsoTooth(label) : universalToIso(label);
}
