import { isAnterior } from './anatomy.js';
import type { IsoTooth } from './iso-tooth.js';

/**
 * The surfaces in the order in which they are written: mesial, occlusal (posterior teeth) or
 * incisal (anterior teeth), distal, facial (lip or cheek side), lingual (tongue or palate side).
 */
export const SURFACES = ['M', 'O', 'I', 'D', 'F', 'L'] as const;

export type Surface = (typeof SURFACES)[number];

type SurfaceProblem =
  | 'unknown_surface'
  | 'surface_not_on_tooth'
  | 'surface_repeated'
  | 'no_surface';

type ParsedSurfaces =
  | { readonly ok: true; readonly surfaces: readonly Surface[] }
  | { readonly ok: false; readonly code: SurfaceProblem; readonly letter?: string };

/** Other letters in use: buccal and vestibular for facial, palatal for lingual. */
const LETTERS = new Map<string, Surface>([
  ...SURFACES.map((surface): [string, Surface] => [surface, surface]),
  ['B', 'F'],
  ['V', 'F'],
  ['P', 'L'],
]);

/**
 * Reads a combination such as 'MOD' or 'dl' for a tooth and puts it in the order of SURFACES;
 * spaces do not matter. The first letter that cannot stand is named, as it was written but in upper
 * case.
 */
export function parseSurfaces(tooth: IsoTooth, text: string): ParsedSurfaces {
  const found = new Set<Surface>();
  for (const letter of text.replace(/\s/g, '').toUpperCase()) {
    const surface = LETTERS.get(letter);
    if (surface === undefined) return { ok: false, code: 'unknown_surface', letter };
    if (!isOnTooth(tooth, surface)) return { ok: false, code: 'surface_not_on_tooth', letter };
    if (found.has(surface)) return { ok: false, code: 'surface_repeated', letter };
    found.add(surface);
  }
  if (found.size === 0) return { ok: false, code: 'no_surface' };
  return { ok: true, surfaces: inOrder([...found]) };
}

/** The letters in the order of SURFACES: 'MOD'. */
export function formatSurfaces(surfaces: readonly Surface[]): string {
  return inOrder(surfaces).join('');
}

/** How many surfaces face a neighbouring tooth: each needs its own wedge and matrix strip. */
export function proximalCount(surfaces: readonly Surface[]): number {
  return surfaces.filter((surface) => surface === 'M' || surface === 'D').length;
}

function isOnTooth(tooth: IsoTooth, surface: Surface): boolean {
  if (surface === 'O') return !isAnterior(tooth);
  return surface !== 'I' || isAnterior(tooth);
}

function inOrder(surfaces: readonly Surface[]): Surface[] {
  return SURFACES.filter((surface) => surfaces.includes(surface));
}
