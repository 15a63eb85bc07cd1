import { type Money, money } from '#lib/measure';
import { type Actor, currencyStep, type IsoDate, type Tx, unknownReference } from '#lib/platform';
import {
  loadTemplates,
  type PlannedRestoration,
  readRestorations,
  type TemplateOf,
} from '#lib/procedures';
import { type ConsumableFacts, loadFacts, type VisitFacts } from '#lib/visits';
import { recordedOwnCosts } from '../db/recorded-costs.js';
import { compareWays, type QuotedWay } from '../domain/compare-ways.js';
import type { QuoteQuestionDto } from '../http/quote.dto.js';
import { refusePricing } from '../pricing.refusals.js';
import { refuseFractions } from './coins.js';
import { loadCharges, type QuotedCharge } from './quote-charges.js';
import { loadMinuteCosts, loadPlan, type QuotedPlan } from './quote-plan.js';

/** A quote worked out in full; nothing of it is written. */
export interface WorkedOutQuote {
  readonly day: IsoDate;
  readonly notation: 'iso' | 'universal';
  readonly restorations: readonly PlannedRestoration[];
  readonly charges: readonly QuotedCharge[];
  readonly plan: QuotedPlan | null;
  readonly facts: VisitFacts;
  readonly chairMinuteCost: Money | null;
  readonly recordedOwn: readonly (readonly Money[])[];
  readonly ways: readonly QuotedWay[];
}

export async function workOutQuote(
  tx: Tx,
  actor: Actor,
  body: QuoteQuestionDto,
  today: IsoDate,
): Promise<WorkedOutQuote> {
  const day = body.quotedOn ?? today;
  const notation = body.toothNotation ?? actor.toothNotation;
  refuseFractions(
    actor,
    Object.fromEntries(body.restorations.map((r, i) => [`restorations[${i}].fee`, r.fee])),
  );
  const restorations = await plannedRestorations(tx, body, notation);
  const facts = await loadFacts(tx, {
    locationId: body.locationId ?? null,
    dentistId: null,
    consumableIds: namedConsumables(restorations),
    lotIds: [],
  });
  checkFacts(body, facts);
  const plan = await loadPlan(tx, actor, body, day);
  const terms = plan?.terms ?? null;
  const charges = await loadCharges(tx, { inputs: body.restorations, restorations, terms, day });
  const rates = await loadMinuteCosts(tx, day);
  const chairMinuteCost = body.chairMinuteCost ? money(body.chairMinuteCost) : rates.chair;
  const costsOf = await recordedOwnCosts(tx, restorations.map(kindOf));
  const recordedOwn = restorations.map((restoration) => costsOf(kindOf(restoration)));
  const { setUpMinutes = null, targetContributionPerHour: target } = body;
  const ways = compareWays({
    restorations,
    charges: charges.map(({ charge }) => charge),
    plan: plan && { settings: plan.settings, balance: plan.balance },
    staffCount: body.staffCount ?? 2,
    costShareKey: body.costShareKey ?? actor.costShareKey,
    step: currencyStep(actor.currency),
    consumableOf: (id) => consumableOf(facts, id),
    setUpMinutes,
    chairMinuteCost,
    assistantMinuteCost: rates.assistant,
    targetPerHour: target ? money(target) : null,
    recordedOwn,
  });
  return {
    day,
    notation,
    restorations,
    charges,
    plan,
    facts,
    chairMinuteCost,
    recordedOwn,
    ways,
  };
}

async function plannedRestorations(
  tx: Tx,
  body: QuoteQuestionDto,
  notation: 'iso' | 'universal',
): Promise<PlannedRestoration[]> {
  const templateOf = await loadTemplates(
    tx,
    body.restorations.map((r) => ({ templateId: r.templateId, version: r.templateVersion })),
  );
  const restorations = readRestorations(body.restorations, notation, templateOf);
  refuseUnusedTemplates(body, templateOf);
  return restorations.map((restoration, i) =>
    body.restorations[i]?.withoutAnaesthetic ? withoutAnaesthetic(restoration) : restoration,
  );
}

/**
 * One that is made without: what its template has for anaesthesia is in no way of doing the work. A
 * visit whose restorations all are is planned as a visit without anaesthetic is.
 */
function withoutAnaesthetic(restoration: PlannedRestoration): PlannedRestoration {
  const { template } = restoration;
  const lines = template.lines.filter((line) => !line.anaesthetic);
  return { ...restoration, template: { ...template, lines } };
}

function refuseUnusedTemplates(body: QuoteQuestionDto, templateOf: TemplateOf): void {
  body.restorations.forEach((r, i) => {
    if (r.templateVersion != null || templateOf(r.templateId)?.active !== false) return;
    throw refusePricing('not_in_use', 'This procedure template is no longer in use.', [
      {
        field: `restorations[${i}].templateId`,
        message: 'names a procedure template that is no longer in use',
      },
    ]);
  });
}

function namedConsumables(restorations: readonly PlannedRestoration[]): string[] {
  const named = restorations.flatMap((r) => [
    ...r.shades,
    ...r.template.lines.flatMap((line) => line.consumableId ?? []),
  ]);
  return [...new Set(named)];
}

function checkFacts(body: QuoteQuestionDto, facts: VisitFacts): void {
  if (body.locationId && !facts.location) throw unknownReference('locationId', 'location');
  body.restorations.forEach((r, i) => {
    r.shades?.forEach((id, n) => {
      if (facts.consumables.has(id)) return;
      throw unknownReference(`restorations[${i}].shades[${n}]`, 'consumable');
    });
  });
}

export function consumableOf(facts: VisitFacts, id: string): ConsumableFacts {
  const found = facts.consumables.get(id);
  if (!found) throw new Error(`Consumable ${id} of a planned line was not loaded`);
  return found;
}

function kindOf({ template, reason }: PlannedRestoration) {
  return { templateId: template.templateId, reason };
}
