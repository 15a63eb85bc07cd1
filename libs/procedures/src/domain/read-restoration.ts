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
  readonly depthMm?: string | null;
  readonly minutes?: number | null;
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
 * class, medium in size). Problems are named `restorations[index].field`.
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
  const problems = [...place.problems];
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
    volumeMm3: quantity(input.volumeMm3 ?? planningVolume(cavityClass, size)),
    depthMm: quantity(input.depthMm ?? planningDepth(cavityClass, size)),
    minutes: input.minutes ?? template.minutes,
  };
}

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
