import {
  type CavityClass,
  type CavitySize,
  cavityClassFits,
  formatSurfaces,
  type IsoTooth,
  parseSurfaces,
  parseTooth,
  type Reason,
  type ToothNotation,
} from '#lib/dentition';
import type { FieldError, IsoDate } from '#lib/platform';

export const BOOKED_STATES = ['booked', 'kept', 'dropped'] as const;
export type BookedState = (typeof BOOKED_STATES)[number];

/** A restoration that is booked, as a person or a file says it. Only the template must be known. */
export interface BookedRestorationInput {
  readonly templateId: string;
  readonly tooth?: string | null;
  readonly surfaces?: string | null;
  readonly cavityClass?: CavityClass | null;
  readonly size?: CavitySize | null;
  readonly reason?: Reason | null;
  readonly shades?: readonly string[] | null;
}

/** A visit that is booked, or a number of alike ones on a day. */
export interface BookedVisitInput {
  readonly day: IsoDate;
  readonly chartReference?: string | null;
  readonly dentistId?: string | null;
  readonly locationId?: string | null;
  /** Its name elsewhere, e.g. in the list that it came from: at most one booking has it. */
  readonly externalReference?: string | null;
  /** So many visits of this kind; 1 when left out. */
  readonly alike?: number | null;
  /** ISO 3950 or Universal numbers; the practice's setting when left out. */
  readonly toothNotation?: ToothNotation | null;
  readonly restorations: readonly BookedRestorationInput[];
}

/** A restoration as it is kept: null where nobody said. */
export interface BookedRestoration {
  readonly templateId: string;
  readonly tooth: IsoTooth | null;
  readonly surfaces: string | null;
  readonly cavityClass: CavityClass | null;
  readonly size: CavitySize | null;
  readonly reason: Reason | null;
  readonly shades: readonly string[];
}

export interface BookedVisit {
  readonly day: IsoDate;
  readonly chartReference: string | null;
  readonly dentistId: string | null;
  readonly locationId: string | null;
  readonly externalReference: string | null;
  readonly alike: number;
  readonly restorations: readonly BookedRestoration[];
}

export type ReadBooking =
  | { readonly ok: true; readonly booking: BookedVisit }
  | { readonly ok: false; readonly problems: readonly FieldError[] };

/** Reads a booking with its defaults filled in, or answers every field that is wrong. */
export function readBooking(input: BookedVisitInput, notation: ToothNotation): ReadBooking {
  const alike = input.alike ?? 1;
  const chartReference = input.chartReference?.trim() ?? null;
  const read = input.restorations.map((each, i) =>
    readPlace(each, input.toothNotation ?? notation, `restorations[${i}].`),
  );
  const problems = read.flatMap((each) => each.problems);
  problems.push(...sizeProblems(input, alike));
  if (chartReference !== null && alike > 1) {
    problems.push({ field: 'alike', message: 'must be 1 where a chart is named' });
  }
  if (problems.length > 0) return { ok: false, problems };
  const booking = {
    day: input.day,
    chartReference,
    dentistId: input.dentistId ?? null,
    locationId: input.locationId ?? null,
    externalReference: input.externalReference?.trim() ?? null,
    alike,
    restorations: read.map((each) => each.restoration),
  };
  return { ok: true, booking };
}

export const MOST_ALIKE = 200;
export const MOST_RESTORATIONS = 32;
export const LONGEST_CHART = 60;
export const LONGEST_REFERENCE = 120;

/** What a request is checked for before it gets here, and a row of a file is not. */
function sizeProblems(input: BookedVisitInput, alike: number): FieldError[] {
  const found: FieldError[] = [];
  const check = (fits: boolean, field: string, message: string) => {
    if (!fits) found.push({ field, message });
  };
  const length = (text: string | null | undefined) => text?.trim().length ?? 1;
  const fits = (n: number, most: number) => Number.isInteger(n) && n >= 1 && n <= most;
  check(fits(alike, MOST_ALIKE), 'alike', `must be a whole number from 1 to ${MOST_ALIKE}`);
  check(
    fits(input.restorations.length, MOST_RESTORATIONS),
    'restorations',
    `must have 1 to ${MOST_RESTORATIONS} entries`,
  );
  check(
    fits(length(input.chartReference), LONGEST_CHART),
    'chartReference',
    `must be 1 to ${LONGEST_CHART} characters`,
  );
  check(
    fits(length(input.externalReference), LONGEST_REFERENCE),
    'externalReference',
    `must be 1 to ${LONGEST_REFERENCE} characters`,
  );
  return found;
}

interface ReadPlace {
  readonly restoration: BookedRestoration;
  readonly problems: FieldError[];
}

function readPlace(input: BookedRestorationInput, as: ToothNotation, path: string): ReadPlace {
  const problems: FieldError[] = [];
  const wrong = (field: string, message: string) => {
    problems.push({ field: path + field, message });
  };
  const { cavityClass = null, size = null, reason = null } = input;
  const tooth = input.tooth ? (parseTooth(input.tooth, as) ?? null) : null;
  if (input.tooth && tooth === null) {
    const written = as === 'iso' ? 'ISO 3950, e.g. 11' : 'Universal notation, e.g. 8';
    wrong('tooth', `is not a tooth in ${written}`);
  }
  let surfaces: string | null = null;
  if (input.surfaces && !input.tooth) wrong('surfaces', 'needs a tooth');
  if (cavityClass && !input.surfaces) wrong('cavityClass', 'needs surfaces');
  if (input.surfaces && tooth !== null) {
    const parsed = parseSurfaces(tooth, input.surfaces);
    if (!parsed.ok) wrong('surfaces', surfaceWords(parsed.code, parsed.letter ?? ''));
    else {
      surfaces = formatSurfaces(parsed.surfaces);
      const fits = cavityClass === null || cavityClassFits(tooth, parsed.surfaces, cavityClass).ok;
      if (!fits) wrong('cavityClass', 'does not occur on these surfaces of this tooth');
    }
  }
  const said = { templateId: input.templateId, tooth, surfaces, cavityClass, size, reason };
  return { restoration: { ...said, shades: input.shades ?? [] }, problems };
}

type SurfaceCode = Extract<ReturnType<typeof parseSurfaces>, { ok: false }>['code'];

function surfaceWords(code: SurfaceCode, letter: string): string {
  if (code === 'unknown_surface') return `has the letter ${letter}, which names no surface`;
  if (code === 'surface_not_on_tooth') return `has ${letter}, which this tooth does not have`;
  return code === 'surface_repeated' ? `names the surface ${letter} twice` : 'names no surface';
}

/** Whether two bookings say the same. */
export function sameBooking(a: BookedVisit, b: BookedVisit): boolean {
  return keyOf(a) === keyOf(b);
}

function keyOf(booking: BookedVisit): string {
  const { day, chartReference, dentistId, locationId, externalReference, alike } = booking;
  const head = [day, chartReference, dentistId, locationId, externalReference, alike];
  const each = booking.restorations.map((r) => [
    ...[r.templateId, r.tooth, r.surfaces, r.cavityClass, r.size, r.reason, r.shades],
  ]);
  return JSON.stringify([head, each]);
}
