import {
  type CavityClass,
  type CavitySize,
  cavityClassFits,
  type IsoTooth,
  parseSurfaces,
  parseTooth,
  planningVolume,
  type Reason,
  type Surface,
  type ToothNotation,
} from '#lib/dentition';
import { quantity } from '#lib/measure';
import { cavityVolume } from './cavity-volume.js';
import { planningDepth } from './planning-depth.js';
import type { PlannedRestoration, TemplateVersion } from './template.js';

/** A restoration as a person entered it; whatever is left out has a default. */
export interface RestorationInput {
  readonly tooth: string;
  readonly surfaces: string;
  readonly cavityClass?: CavityClass | null;
  readonly size?: CavitySize | null;
  readonly reason: Reason;
  readonly templateId: string;
  /** The latest when left out. */
  readonly templateVersion?: number | null;
  readonly shades?: readonly string[] | null;
  readonly attempts?: number | null;
  readonly cycles?: number | null;
  readonly volumeMm3?: string | null;
  /** With width and depth, instead of a volume. */
  readonly lengthMm?: string | null;
  readonly widthMm?: string | null;
  readonly depthMm?: string | null;
  readonly minutes?: number | null;
  readonly assistantMinutes?: number | null;
}

/** Finds a template version, the latest when none is named; undefined when there is none. */
export type TemplateOf = (templateId: string, version?: number) => TemplateVersion | undefined;

export interface RestorationProblem {
  /** Whether the field names something that does not exist, rather than not fitting the others. */
  readonly unknown: boolean;
  readonly field: string;
  readonly message: string;
}

export type ReadRestoration =
  | { readonly ok: true; readonly restoration: PlannedRestoration }
  | { readonly ok: false; readonly problems: readonly RestorationProblem[] };

/**
 * Reads one restoration of a visit: checks it against the tooth and its template and fills in the
 * defaults (one attempt, one cycle, the template's minutes, the planning volume and depth of its
 * class, medium in size). Length, width and depth make the volume, if they are given. Problems are named `restorations[index].field`.
 */
export function readRestoration(
  input: RestorationInput,
  index: number,
  notation: ToothNotation,
  templateOf: TemplateOf,
): ReadRestoration {
  const at = (field: string) => `restorations[${index}].${field}`;
  const template = templateOf(input.templateId, input.templateVersion ?? undefined);
  const place = readPlace(input, notation);
  const problems = [...place.problems, ...dimensionProblems(input)];
  if (template === undefined) problems.push(unknownTemplate(input, templateOf));
  else if (needsShades(template, input.reason) && !input.shades?.length) {
    problems.push(wrong('shades', 'must name at least one, because the template asks for shades'));
  }
  if (problems.length > 0 || template === undefined || place.tooth === undefined) {
    return { ok: false, problems: problems.map((each) => ({ ...each, field: at(each.field) })) };
  }
  const { tooth, surfaces } = place;
  const { reason } = input;
  return { ok: true, restoration: { tooth, surfaces, reason, template, ...rest(input, template) } };
}

function rest(input: RestorationInput, template: TemplateVersion) {
  const cavityClass = input.cavityClass ?? undefined;
  const size = input.size ?? 'medium';
  return {
    ...(cavityClass === undefined ? {} : { cavityClass }),
    shades: input.shades ?? [],
    attempts: input.attempts ?? 1,
    cycles: input.cycles ?? 1,
    ...volumeOf(input, cavityClass, size),
    depthMm: quantity(input.depthMm ?? planningDepth(cavityClass, size)),
    minutes: input.minutes ?? template.minutes,
    assistantMinutes: input.assistantMinutes ?? template.assistantMinutes,
  };
}

type Volume = Pick<PlannedRestoration, 'volumeMm3' | 'volumeSource' | 'lengthMm' | 'widthMm'>;

function volumeOf(
  input: RestorationInput,
  cavityClass: CavityClass | undefined,
  size: CavitySize,
): Volume {
  const { lengthMm: length, widthMm: width, depthMm: depth, volumeMm3 } = input;
  if (length && width && depth) {
    const sides = { lengthMm: quantity(length), widthMm: quantity(width) };
    const volume = cavityVolume({ ...sides, depthMm: quantity(depth), cavityClass, size });
    return { volumeMm3: volume, volumeSource: 'dimensions', ...sides };
  }
  return {
    volumeMm3: quantity(volumeMm3 ?? planningVolume(cavityClass, size)),
    volumeSource: volumeMm3 ? 'entered' : 'planning value',
    lengthMm: null,
    widthMm: null,
  };
}

/** Length and width are given together, with a depth, and instead of a volume. */
function dimensionProblems(input: RestorationInput): RestorationProblem[] {
  const { lengthMm, widthMm, depthMm, volumeMm3 } = input;
  if (!lengthMm && !widthMm) return [];
  if (volumeMm3) return [wrong('volumeMm3', 'follows from the dimensions: leave one of them out')];
  const problems: RestorationProblem[] = [];
  for (const [field, value] of Object.entries({ lengthMm, widthMm, depthMm })) {
    if (!value) problems.push(wrong(field, 'is needed for a volume from dimensions'));
  }
  if (problems.length > 0) return problems;
  const size = input.size ?? 'medium';
  const { volumeMm3: volume } = volumeOf(input, input.cavityClass ?? undefined, size);
  if (volume > 0n && volume <= MOST_MM3) return [];
  return [wrong('lengthMm', 'makes, with width and depth, a volume outside 0 to 10000 mm3')];
}

const MOST_MM3 = quantity('10000');

interface Place {
  readonly tooth: IsoTooth | undefined;
  readonly surfaces: readonly Surface[];
  readonly problems: RestorationProblem[];
}

function readPlace(input: RestorationInput, notation: ToothNotation): Place {
  const tooth = parseTooth(input.tooth, notation);
  if (tooth === undefined) {
    const written = notation === 'iso' ? 'ISO 3950, e.g. 11' : 'Universal notation, e.g. 8';
    const problems = [wrong('tooth', `is not a tooth in ${written}`)];
    return { tooth, surfaces: [], problems };
  }
  const read = parseSurfaces(tooth, input.surfaces);
  if (!read.ok) {
    const problems = [wrong('surfaces', SURFACE_WORDS[read.code](read.letter ?? ''))];
    return { tooth, surfaces: [], problems };
  }
  const { surfaces } = read;
  const fit = input.cavityClass
    ? cavityClassFits(tooth, surfaces, input.cavityClass)
    : { ok: true };
  if (fit.ok) return { tooth, surfaces, problems: [] };
  const needs = 'needs' in fit && fit.needs ? `needs the surfaces ${fit.needs}` : NOT_THIS_TOOTH;
  return { tooth, surfaces, problems: [wrong('cavityClass', needs)] };
}

const NOT_THIS_TOOTH = 'does not occur on this tooth';

const SURFACE_WORDS = {
  unknown_surface: (letter: string) => `has the letter ${letter}, which names no surface`,
  surface_not_on_tooth: (letter: string) => `has ${letter}, which this tooth does not have`,
  surface_repeated: (letter: string) => `names the surface ${letter} twice`,
  no_surface: () => 'must name at least one surface',
} as const;

function needsShades(template: TemplateVersion, reason: Reason): boolean {
  return template.lines.some(
    (line) =>
      line.consumableId === null && (line.reasons === null || line.reasons.includes(reason)),
  );
}

function unknownTemplate(input: RestorationInput, templateOf: TemplateOf): RestorationProblem {
  const known =
    typeof input.templateVersion === 'number' && templateOf(input.templateId) !== undefined;
  return known
    ? { unknown: true, field: 'templateVersion', message: 'is not a version of this template' }
    : {
        unknown: true,
        field: 'templateId',
        message: 'names no procedure template of this practice',
      };
}

function wrong(field: string, message: string): RestorationProblem {
  return { unknown: false, field, message };
}
