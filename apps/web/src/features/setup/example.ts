import {
  CAVITY_CLASSES,
  CAVITY_SIZES,
  type CavityClass,
  type CavitySize,
  cavityClassFits,
  formatSurfaces,
  formatTooth,
  type IsoTooth,
  isAnterior,
  isPrimary,
  parseIsoTooth,
  parseSurfaces,
  parseTooth,
  REASONS,
  type Reason,
  SURFACES,
  type Surface,
  type ToothNotation,
} from '#lib/dentition';
import type { Shape } from '../../api/client.js';

/** One restoration of the example. */
export interface ExampleTooth {
  /** Its place in the example, from 1: two restorations may be on one tooth. */
  readonly place: number;
  readonly tooth: IsoTooth;
  readonly surfaces: readonly Surface[];
  /** undefined where there is no cavity, as for a veneer. */
  readonly cavityClass: CavityClass | undefined;
  readonly size: CavitySize;
  readonly reason: Reason;
  readonly attempts: number;
}

export const MOST_TEETH = 4;
export const MOST_SHADES = 4;

/** A front tooth with one side to be filled: what most templates can be tried on. */
const FIRST = readTooth('11.M.III.medium.decay.1');

/** '21.MI.IV.medium.decay.1': so it stands in the address. */
function readTooth(text: string): ExampleTooth | undefined {
  const [digits = '', letters = '', cls, size, reason, attempts = ''] = text.split('.');
  const tooth = parseIsoTooth(digits);
  if (tooth === undefined) return undefined;
  const surfaces = parseSurfaces(tooth, letters);
  if (!surfaces.ok) return undefined;
  return fitting({
    place: 1,
    tooth,
    surfaces: surfaces.surfaces,
    cavityClass: CAVITY_CLASSES.find((each) => each === cls),
    size: CAVITY_SIZES.find((each) => each === size) ?? 'medium',
    reason: REASONS.find((each) => each === reason) ?? 'decay',
    attempts: /^[1-3]$/.test(attempts) ? Number(attempts) : 1,
  });
}

export function readTeeth(address: string | undefined): readonly ExampleTooth[] {
  const found = (address ?? '').split('~').flatMap((text) => readTooth(text) ?? []);
  const teeth = found.length === 0 && FIRST ? [FIRST] : found.slice(0, MOST_TEETH);
  return teeth.map((tooth, i) => ({ ...tooth, place: i + 1 }));
}

export function writeTeeth(teeth: readonly ExampleTooth[]): string {
  return teeth
    .map(({ tooth, surfaces, cavityClass, size, reason, attempts }) =>
      [tooth, formatSurfaces(surfaces), cavityClass ?? 'none', size, reason, attempts].join('.'),
    )
    .join('~');
}

type Case = Pick<
  Shape<'RestorationSummaryDto'>,
  'tooth' | 'surfaces' | 'cavityClass' | 'reason' | 'attempts'
>;

/** A restoration that was recorded, as an example would stand in the address. */
export function teethLike(
  { tooth, surfaces, cavityClass, reason, attempts }: Case,
  notation: ToothNotation,
): string {
  const iso = parseTooth(tooth, notation) ?? tooth;
  return [iso, surfaces, cavityClass ?? 'none', 'medium', reason, attempts].join('.');
}

/** The surfaces that this tooth has, in the order in which they are written. */
export function surfacesOf(tooth: IsoTooth): Surface[] {
  return SURFACES.filter((surface) => surface !== (isAnterior(tooth) ? 'O' : 'I'));
}

export function classesOf({ tooth, surfaces }: ExampleTooth): CavityClass[] {
  return CAVITY_CLASSES.filter((cls) => cavityClassFits(tooth, surfaces, cls).ok);
}

/** Permanent teeth first from the patient's upper right to the left, then the lower ones. */
export function exampleTeeth(): readonly IsoTooth[] {
  const digits = Array.from({ length: 40 }, (_, n) => n + 11);
  return digits.flatMap((n) => {
    const tooth = parseIsoTooth(n);
    return tooth === undefined || isPrimary(tooth) ? [] : [tooth];
  });
}

/** A class that cannot be on these surfaces gives way to the first that can. */
function fitting(example: ExampleTooth): ExampleTooth {
  const { cavityClass } = example;
  if (cavityClass === undefined) return example;
  const fit = classesOf(example);
  return fit.includes(cavityClass) ? example : { ...example, cavityClass: fit[0] };
}

/** Another tooth: its biting edge or surface takes the place of the other one's. */
export function withTooth(example: ExampleTooth, tooth: IsoTooth): ExampleTooth {
  const own = surfacesOf(tooth);
  const surfaces = example.surfaces.map((surface) => {
    if (own.includes(surface)) return surface;
    return surface === 'O' ? 'I' : 'O';
  });
  return fitting({ ...example, tooth, surfaces });
}

/** A surface more or less; the last one stays. */
export function withSurface(example: ExampleTooth, surface: Surface): ExampleTooth {
  const without = example.surfaces.filter((each) => each !== surface);
  const chosen =
    without.length < example.surfaces.length ? without : [...example.surfaces, surface];
  const surfaces = SURFACES.filter((each) => chosen.includes(each));
  return surfaces.length === 0 ? example : fitting({ ...example, surfaces });
}

/** The example as the service is asked about it. */
export function factsOf(
  teeth: readonly ExampleTooth[],
  shades: readonly string[],
  notation: ToothNotation,
): Shape<'RestorationFactsDto'>[] {
  return teeth.map(({ tooth, surfaces, cavityClass, size, reason, attempts }) => ({
    tooth: formatTooth(tooth, notation),
    surfaces: formatSurfaces(surfaces),
    cavityClass: cavityClass ?? null,
    size,
    reason,
    attempts,
    shades: [...shades],
  }));
}
