import { withChange } from '../draft/change-draft.js';
import { usualTemplate } from '../draft/device-memory.js';
import type { VisitDraft } from '../draft/draft.js';

/** Offers the template that was last used for such a cavity, as long as none was chosen. */
export function withUsualTemplate(
  draft: VisitDraft,
  key: string,
  templates: readonly { readonly id: string }[],
): VisitDraft {
  const of = draft.restorations.find((each) => each.key === key);
  if (of?.templateId !== '' || of.surfaces.length === 0) return draft;
  const usual = usualTemplate(of);
  if (!templates.some(({ id }) => id === usual)) return draft;
  return withChange(draft, key, { templateId: usual });
}
