import { isAnterior } from '#lib/dentition';
import type { Place, RestorationDraft, VisitDraft } from './draft.js';

// What one device remembers, so that a usual visit takes few taps. It names no patient.

const PLACE = 'traybook.chairside.place';
const SHADES = 'traybook.chairside.shades';
const TEMPLATES = 'traybook.chairside.templates';
const MOST_SHADES = 8;

function read(key: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(key) ?? 'null');
  } catch {
    // Somebody else wrote there; it counts as nothing remembered.
    return null;
  }
}

function texts(value: unknown): Record<string, string> {
  if (typeof value !== 'object' || value === null) return {};
  return Object.fromEntries(
    Object.entries(value).filter(
      (entry): entry is [string, string] => typeof entry[1] === 'string',
    ),
  );
}

export function rememberedPlace(): Place {
  const { dentistId = '', locationId = '' } = texts(read(PLACE));
  return { dentistId, locationId };
}

export function rememberPlace({ dentistId, locationId }: Place): void {
  localStorage.setItem(PLACE, JSON.stringify({ dentistId, locationId }));
}

/** The last shades that were used, the latest first. */
export function recentShades(): string[] {
  return Object.values(texts(read(SHADES)));
}

const kindOf = ({ tooth, cavityClass }: Pick<RestorationDraft, 'tooth' | 'cavityClass'>): string =>
  `${isAnterior(tooth) ? 'front' : 'back'} ${cavityClass ?? 'none'}`;

/** The template that was last used for such a cavity. */
export function usualTemplate(of: Pick<RestorationDraft, 'tooth' | 'cavityClass'>): string {
  return texts(read(TEMPLATES))[kindOf(of)] ?? '';
}

export function rememberVisit(draft: VisitDraft): void {
  rememberPlace(draft);
  const used = draft.restorations.flatMap((each) => each.shades);
  const shades = [...new Set([...used, ...recentShades()])].slice(0, MOST_SHADES);
  localStorage.setItem(SHADES, JSON.stringify(shades));
  const templates = texts(read(TEMPLATES));
  for (const each of draft.restorations) templates[kindOf(each)] = each.templateId;
  localStorage.setItem(TEMPLATES, JSON.stringify(templates));
}
