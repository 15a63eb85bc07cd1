import { formatSurfaces } from '#lib/dentition';
import { isWholeUnit } from '#lib/measure';
import { type Actor, currencyStep, newId, type Tx, unknownReference } from '#lib/platform';
import {
  expandUsage,
  loadTemplates,
  type PlannedRestoration,
  readRestorations,
  type TemplateOf,
} from '#lib/procedures';
import { blockedOn, type Candidate, findCandidates } from '#lib/stock';
import { type ConsumableFacts, loadFacts, type VisitFacts } from '../db/visit-facts.js';
import { attributeCost, type VisitCost } from '../domain/attribute-cost.js';
import type { EarlierRestoration } from '../domain/check-redo.js';
import { checkScanned } from '../domain/check-scanned.js';
import { type IssuedVisit, issueVisit } from '../domain/issue-visit.js';
import { applyUsage, type UsageDraft } from '../domain/usage-plan.js';
import type { PlanVisitDto } from '../http/visit-inputs.dto.js';
import { refuseVisit } from '../visits.refusals.js';
import { readRedo, timed } from './read-visit.js';

/** A visit worked out in full, with nothing written yet. */
export interface PlannedVisit {
  readonly facts: VisitFacts;
  readonly location: NonNullable<VisitFacts['location']>;
  readonly notation: 'iso' | 'universal';
  readonly costShareKey: 'equal' | 'minutes' | 'surfaces';
  readonly staffCount: number;
  readonly withoutAnaesthetic: boolean;
  readonly restorations: readonly PlannedRestoration[];
  /** Per restoration: the earlier one that it does again. */
  readonly redoOf: readonly (EarlierRestoration | null)[];
  readonly issued: IssuedVisit;
  readonly cost: VisitCost;
  /** What is missing though goods are there that came or were opened after the visit's day. */
  readonly late: readonly string[];
}

interface Purpose {
  readonly dentistId: string | null;
  /** Left out: not known yet. */
  readonly chartReference?: string;
  /** Locks the stock that is chosen; a preview only looks. */
  readonly lock: boolean;
}

/** Plans a visit: three round trips, whatever the number of restorations and lines. */
export async function planVisit(
  tx: Tx,
  actor: Actor,
  body: PlanVisitDto,
  purpose: Purpose,
): Promise<PlannedVisit> {
  const notation = body.toothNotation ?? actor.toothNotation;
  const costShareKey = body.costShareKey ?? actor.costShareKey;
  const staffCount = body.staffCount ?? 2;
  const templateOf = await loadTemplates(
    tx,
    body.restorations.map((r) => ({ templateId: r.templateId, version: r.templateVersion })),
  );
  const read = readRestorations(body.restorations, notation, templateOf);
  refuseUnusedTemplates(body, templateOf);
  const restorations = timed(body, read);
  const facts = await loadFacts(tx, {
    locationId: body.locationId,
    dentistId: purpose.dentistId,
    consumableIds: [...namedConsumables(body, restorations)],
    lotIds: (body.scanned ?? []).map((scanned) => scanned.lotId),
    redoOf: body.restorations.flatMap((r) => r.redoOf ?? []),
  });
  const location = checkLocation(facts);
  checkConsumables(body, facts);
  const redoOf = readRedo(body, restorations, facts, purpose.chartReference ?? null);
  const lines = readUsage(body, restorations, staffCount, facts);
  const used = new Set(lines.filter((l) => l.dispensed > 0n).map((line) => line.consumableId));
  const candidates = await findCandidates(tx, {
    consumableIds: [...used],
    locationId: body.locationId,
    day: body.visitedOn,
    scanned: (body.scanned ?? []).flatMap((s) => [s.lotId, ...(s.holdingId ? [s.holdingId] : [])]),
    lock: purpose.lock,
  });
  refuseScanned(body, { day: body.visitedOn, lots: facts.lots, candidates, used });
  const issued = issueVisit({
    lines,
    candidates,
    day: body.visitedOn,
    locationId: body.locationId,
    scanned: body.scanned ?? [],
    lots: facts.lots,
    consumableOf: (id) => factsOf(facts, id),
    newId,
  });
  refuseTooLarge(issued);
  const planned = { restorations, redoOf, facts, costShareKey };
  const cost = costOf(issued, planned, currencyStep(actor.currency));
  const late = lateFor(issued, candidates, body.visitedOn);
  const withoutAnaesthetic = body.withoutAnaesthetic ?? false;
  const chair = { location, notation, staffCount, withoutAnaesthetic };
  return { ...planned, ...chair, issued, cost, late };
}

function lateFor(issued: IssuedVisit, candidates: readonly Candidate[], day: string): string[] {
  const missing = issued.lines.filter((line) => line.missing !== null);
  const wanted = new Set(missing.map((line) => line.draft.consumableId));
  const late = candidates.filter((candidate) => {
    const blocked = blockedOn(candidate, day);
    return blocked === 'not yet received' || blocked === 'opened later';
  });
  return [...new Set(late.map((candidate) => candidate.consumableId))].filter((id) =>
    wanted.has(id),
  );
}

export function factsOf(facts: VisitFacts, consumableId: string): ConsumableFacts {
  const found = facts.consumables.get(consumableId);
  if (!found) throw new Error(`Consumable ${consumableId} of a usage line was not loaded`);
  return found;
}

function namedConsumables(
  body: PlanVisitDto,
  restorations: readonly PlannedRestoration[],
): Set<string> {
  const planned = restorations.flatMap((r) => [
    ...r.shades,
    ...r.template.lines.flatMap((line) => line.consumableId ?? []),
  ]);
  const entered = (body.usage ?? []).flatMap((entry) => entry.consumableId ?? []);
  return new Set([...planned, ...entered]);
}

function refuseUnusedTemplates(body: PlanVisitDto, templateOf: TemplateOf): void {
  body.restorations.forEach((r, i) => {
    const stated = r.templateVersion !== undefined && r.templateVersion !== null;
    if (stated || templateOf(r.templateId)?.active !== false) return;
    throw notInUse(`restorations[${i}].templateId`, 'procedure template');
  });
}

function notInUse(field: string, what: string) {
  return refuseVisit('not_in_use', `This ${what} is no longer in use.`, [
    { field, message: `names a ${what} that is no longer in use` },
  ]);
}

function checkLocation(facts: VisitFacts): NonNullable<VisitFacts['location']> {
  const { location } = facts;
  if (!location) throw unknownReference('locationId', 'location');
  if (!location.active) throw notInUse('locationId', 'location');
  return location;
}

function checkConsumables(body: PlanVisitDto, facts: VisitFacts): void {
  const check = (id: string, field: string) => {
    if (!facts.consumables.has(id)) throw unknownReference(field, 'consumable');
  };
  body.restorations.forEach((r, i) => {
    r.shades?.forEach((id, n) => {
      check(id, `restorations[${i}].shades[${n}]`);
    });
  });
  body.usage?.forEach(({ consumableId }, i) => {
    if (consumableId) check(consumableId, `usage[${i}].consumableId`);
  });
}

function readUsage(
  body: PlanVisitDto,
  restorations: readonly PlannedRestoration[],
  staffCount: number,
  facts: VisitFacts,
): readonly UsageDraft[] {
  const planned = expandUsage({
    restorations,
    staffCount,
    withoutAnaesthetic: body.withoutAnaesthetic ?? false,
    isWhole: (id) => isWholeUnit(factsOf(facts, id).stock_unit),
  });
  const unitOf = (id: string) => facts.consumables.get(id)?.stock_unit;
  const applied = applyUsage(planned, body.usage ?? [], { restorations, unitOf });
  if (applied.ok) return applied.lines;
  const { field, message } = applied.error;
  throw refuseVisit('usage_not_possible', `${field} ${message}.`, [{ field, message }]);
}

function refuseScanned(body: PlanVisitDto, context: Parameters<typeof checkScanned>[1]): void {
  const problem = checkScanned(body.scanned ?? [], context);
  if (!problem) return;
  if ('field' in problem) {
    throw unknownReference(problem.field, problem.code === 'unknown_lot' ? 'lot' : 'holding of it');
  }
  const { field, message } = problem.error;
  throw refuseVisit(problem.code, `${field} ${message}.`, [problem.error]);
}

const MOST = 999_999_999_999_000_000n;

function refuseTooLarge(issued: IssuedVisit): void {
  const total = issued.lines.reduce((sum, line) => sum + line.cost, 0n);
  const largest = issued.lines.reduce((most, { charged }) => (charged > most ? charged : most), 0n);
  if (total <= MOST && largest <= MOST && !issued.plan.tooManyContainers) return;
  throw refuseVisit('too_large', 'The usage of this visit is more than the book can hold.', [
    { field: 'usage', message: 'adds up to more than the book can hold' },
  ]);
}

type Planned = Pick<PlannedVisit, 'restorations' | 'redoOf' | 'facts' | 'costShareKey'>;

function costOf(issued: IssuedVisit, planned: Planned, step: bigint): VisitCost {
  const { restorations, redoOf, facts, costShareKey: key } = planned;
  return attributeCost(
    restorations.map((r, i) => ({
      redo: redoOf[i] !== null,
      tooth: r.tooth,
      minutes: r.minutes,
      surfaces: formatSurfaces(r.surfaces).length,
    })),
    issued.lines.map(({ draft, cost }) => ({
      restoration: draft.restoration,
      tooth: draft.tooth,
      attempt: draft.attempt,
      category: factsOf(facts, draft.consumableId).category,
      cost,
    })),
    key,
    step,
  );
}
