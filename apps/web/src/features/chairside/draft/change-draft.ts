import type { RestorationDraft, ScannedLot, VisitDraft } from './draft.js';
import { withFittingClass } from './fitting-class.js';
import { shiftedTo } from './next-tooth.js';

type Amounts = VisitDraft['amounts'];

function kept(amounts: Amounts, keep: (line: string) => boolean): Amounts {
  return Object.fromEntries(Object.entries(amounts).filter(([line]) => keep(line)));
}

export function withRestoration(draft: VisitDraft, added: RestorationDraft): VisitDraft {
  return { ...draft, restorations: [...draft.restorations, added] };
}

export function withoutRestoration(draft: VisitDraft, key: string): VisitDraft {
  return {
    ...draft,
    restorations: draft.restorations.filter((each) => each.key !== key),
    amounts: kept(draft.amounts, (line) => !line.startsWith(`${key}/`)),
  };
}

/** Changes one restoration; amounts of lines that are no longer planned are forgotten. */
export function withChange(
  draft: VisitDraft,
  key: string,
  change: Partial<RestorationDraft>,
): VisitDraft {
  const before = draft.restorations.find((each) => each.key === key);
  if (!before) return draft;
  const after = withFittingClass({ ...before, ...change });
  const stays = (line: string) =>
    !line.startsWith(`${key}/`) || isStillPlanned(line, before, after);
  return {
    ...draft,
    restorations: draft.restorations.map((each) => (each.key === key ? after : each)),
    amounts: kept(draft.amounts, stays),
  };
}

/** 'key/a2/5/consumable': gone with its template, its attempt, or its shade. */
function isStillPlanned(line: string, before: RestorationDraft, after: RestorationDraft): boolean {
  if (before.templateId !== after.templateId) return false;
  const attempt = Number(/\/a(\d+)\//.exec(line)?.[1] ?? 1);
  if (attempt > after.attempts) return false;
  const consumableId = line.slice(line.lastIndexOf('/') + 1);
  return !before.shades.includes(consumableId) || after.shades.includes(consumableId);
}

/** The same once more on the next tooth, right behind it. */
export function withCopy(draft: VisitDraft, key: string, copyKey: string): VisitDraft {
  const at = draft.restorations.findIndex((each) => each.key === key);
  const original = draft.restorations[at];
  const copy = original && shiftedTo(original, copyKey);
  if (!copy) return draft;
  return { ...draft, restorations: draft.restorations.toSpliced(at + 1, 0, copy) };
}

export function withAmount(draft: VisitDraft, line: string, amount: string | null): VisitDraft {
  const others = kept(draft.amounts, (each) => each !== line);
  return { ...draft, amounts: amount === null ? others : { ...others, [line]: amount } };
}

/** One lot for each consumable: what was scanned last is what is in the hand. */
export function withScanned(draft: VisitDraft, lot: ScannedLot): VisitDraft {
  const others = draft.scanned.filter((each) => each.consumableId !== lot.consumableId);
  return { ...draft, scanned: [...others, lot] };
}

export function withoutScanned(draft: VisitDraft, lotId: string): VisitDraft {
  return { ...draft, scanned: draft.scanned.filter((each) => each.lotId !== lotId) };
}
