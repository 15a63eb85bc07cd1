import { unknownReference } from '#lib/platform';
import type { PlannedRestoration } from '#lib/procedures';
import type { VisitFacts } from '../db/visit-facts.js';
import { checkRedo, type EarlierRestoration } from '../domain/check-redo.js';
import { spreadMinutes } from '../domain/spread-minutes.js';
import type { PlanVisitDto } from '../http/visit-inputs.dto.js';
import { refuseVisit } from '../visits.refusals.js';

/** The restorations with the minutes of the chair and of assistants that the visit took. */
export function timed(
  body: PlanVisitDto,
  restorations: readonly PlannedRestoration[],
): PlannedRestoration[] {
  const [chair, assistants] = (['minutes', 'assistantMinutes'] as const).map((field) => {
    const each = restorations.map((r, i) => ({
      stated: body.restorations[i]?.[field] ?? null,
      planned: r.template[field],
    }));
    const spread = spreadMinutes(each, body[field] ?? null);
    if (spread.ok) return spread.minutes;
    const { message } = spread;
    throw refuseVisit('minutes_do_not_fit', `${field} ${message}.`, [{ field, message }]);
  });
  return restorations.map((r, i) => ({
    ...r,
    minutes: chair?.[i] ?? r.minutes,
    assistantMinutes: assistants?.[i] ?? r.assistantMinutes,
  }));
}

/** Per restoration: the earlier one that it does again; refuses one that cannot be. */
export function readRedo(
  body: PlanVisitDto,
  restorations: readonly PlannedRestoration[],
  facts: VisitFacts,
  chartReference: string | null,
): (EarlierRestoration | null)[] {
  const redos = restorations.map((r, i) => {
    return { redoOf: body.restorations[i]?.redoOf ?? null, tooth: r.tooth };
  });
  const { earlier } = facts;
  const problem = checkRedo(redos, { day: body.visitedOn, chartReference, earlier });
  if (problem?.code === 'unknown') throw unknownReference(problem.field, 'restoration');
  if (problem) {
    const { field, message } = problem.error;
    throw refuseVisit('redo_does_not_fit', `${field} ${message}.`, [problem.error]);
  }
  return redos.map(({ redoOf }) => (redoOf === null ? null : (earlier.get(redoOf) ?? null)));
}
