declare const notation: unique symbol;

/**
 * A tooth by its two digits in ISO 3950: the quadrant (1-4 permanent, 5-8 primary, clockwise as the
 * dentist sees it) and the place counted from the midline. Stored so whatever notation is shown.
 */
export type IsoTooth = number & { readonly [notation]: 'iso3950' };

/**
 * Each arch from the patient's right to the left: the four rows of a chart, permanent teeth first.
 */
const ROWS = [
  [18, 17, 16, 15, 14, 13, 12, 11, 21, 22, 23, 24, 25, 26, 27, 28],
  [48, 47, 46, 45, 44, 43, 42, 41, 31, 32, 33, 34, 35, 36, 37, 38],
  [55, 54, 53, 52, 51, 61, 62, 63, 64, 65],
  [85, 84, 83, 82, 81, 71, 72, 73, 74, 75],
];

/**
 * All 52 teeth in chart order: upper then lower permanent arch, upper then lower primary arch, each
 * from the patient's right to the left.
 */
export const ISO_TEETH: readonly IsoTooth[] = ROWS.flat().map((digits) => digits as IsoTooth);

const BY_DIGITS = new Map<string, IsoTooth>(ISO_TEETH.map((tooth) => [String(tooth), tooth]));

/** The tooth with these two digits, as a number or as text; undefined when there is none. */
export function parseIsoTooth(value: number | string): IsoTooth | undefined {
  return BY_DIGITS.get(String(value));
}

/** The place from the midline: 1 to 8 in the permanent dentition, 1 to 5 in the primary one. */
export function placeOf(tooth: IsoTooth): number {
  return tooth % 10;
}

export function isPrimary(tooth: IsoTooth): boolean {
  return tooth > 50;
}
