import type { VisitDraft } from './draft.js';
import { isMinutes, isTyped, TIMES, wrongSides } from './measures.js';
import { ofRestoration, type Trouble } from './trouble.js';

export interface CheckWords {
  readonly required: string;
  readonly future: string;
  readonly tooth: string;
  readonly surfaces: string;
  readonly reason: string;
  readonly template: string;
  readonly shades: string;
  readonly length: string;
  readonly side: string;
  readonly minutes: string;
}

interface Context {
  readonly today: string;
  readonly words: CheckWords;
  /** Whether a template, for a reason, asks for shades; false while that is not known. */
  readonly asksForShades: (templateId: string, reason: string | null) => boolean;
}

/** What can be seen to be wrong before anything is sent, in the order of the screen. */
export function checkDraft(draft: VisitDraft, { today, words, asksForShades }: Context): Trouble {
  const trouble: Record<string, string> = {};
  for (const field of ['chartReference', 'dentistId', 'locationId'] as const) {
    if (draft[field].trim() === '') trouble[field] = words.required;
  }
  if (draft.visitedOn > today) trouble.visitedOn = words.future;
  for (const time of TIMES) {
    const typed = draft[time];
    if (isTyped(typed) && !isMinutes(typed)) trouble[time] = words.minutes;
  }
  if (draft.restorations.length === 0) trouble.tooth = words.tooth;
  for (const each of draft.restorations) {
    const wrong = (field: string, sentence: string) => {
      trouble[ofRestoration(each.key, field)] = sentence;
    };
    if (each.surfaces.length === 0) wrong('surfaces', words.surfaces);
    if (each.reason === null) wrong('reason', words.reason);
    if (each.templateId === '') wrong('templateId', words.template);
    else if (each.shades.length === 0 && asksForShades(each.templateId, each.reason)) {
      wrong('shades', words.shades);
    }
    const { unread, missing } = wrongSides(each);
    for (const side of missing) wrong(side, words.side);
    for (const side of unread) wrong(side, words.length);
  }
  return trouble;
}
