import { newKey } from '../../../api/idempotency.js';
import { rememberedPlace } from './device-memory.js';
import { newDraft, type VisitDraft } from './draft.js';

/** The visit that is being entered survives a reload; each tab and person has its own. */
const keyOf = (personId: string) => `traybook.chairside.draft.${personId}`;

export function freshDraft(chartReference?: string): VisitDraft {
  return newDraft(newKey(), rememberedPlace(), chartReference);
}

function isDraft(value: unknown): value is VisitDraft {
  return (
    typeof value === 'object' && value !== null && 'visitId' in value && 'restorations' in value
  );
}

export function storedDraft(personId: string): VisitDraft | undefined {
  try {
    const value: unknown = JSON.parse(sessionStorage.getItem(keyOf(personId)) ?? 'null');
    return isDraft(value) ? value : undefined;
  } catch {
    // Not ours, or cut off: begin anew.
    return undefined;
  }
}

export function storeDraft(personId: string, draft: VisitDraft | undefined): void {
  if (draft === undefined) sessionStorage.removeItem(keyOf(personId));
  else sessionStorage.setItem(keyOf(personId), JSON.stringify(draft));
}
