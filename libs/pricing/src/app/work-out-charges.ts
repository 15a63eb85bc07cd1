import { type Money, money, ZERO_MONEY } from '#lib/measure';
import {
  type Actor,
  currencyStep,
  type FieldError,
  type IsoDate,
  type Tx,
  unknownReference,
} from '#lib/platform';
import type { ChargedRestoration, ChargedVisit } from '../db/charges.js';
import { type KnownFee, loadFees } from '../db/fee-versions.js';
import { loadTerms, toTerm } from '../db/plan-terms.js';
import {
  type ChargeLine,
  type StatedShare,
  shareCharges,
  statedProblems,
} from '../domain/charge-shares.js';
import { chargeOf, type PlanTerm } from '../domain/plan-terms.js';
import type { NewChargeDto } from '../http/charge.dto.js';
import { refusePricing } from '../pricing.refusals.js';
import { type ChargePlan, loadChargePlans } from './charge-plans.js';
import { refuseFractions } from './coins.js';
import { findFee } from './find-fee.js';

/** What is to be recorded for one restoration. */
export interface WorkedOutCharge extends StatedShare {
  readonly restoration: ChargedRestoration;
  readonly feeEntry: KnownFee | null;
  readonly fee: Money;
  readonly plan: ChargePlan | null;
  readonly isStated: boolean;
}

export interface WorkedOutCharges {
  readonly charges: readonly WorkedOutCharge[];
  readonly plans: readonly ChargePlan[];
  readonly left: ReturnType<typeof shareCharges>['left'];
}

interface Asked {
  readonly visit: ChargedVisit;
  readonly restorations: readonly ChargedRestoration[];
  readonly inputs: readonly NewChargeDto[];
}

/** Fees, terms and what is left are those of the visit's day. Nothing is written. */
export async function workOutCharges(
  tx: Tx,
  actor: Actor,
  asked: Asked,
): Promise<WorkedOutCharges> {
  const { visit, inputs } = asked;
  for (const [i, input] of inputs.entries()) refuseUnpayable(actor, input, `charges[${i}].`);
  const chosen = chosenRestorations(asked);
  const known = await loadFees(tx, {
    codes: inputs.flatMap((input) => input.feeCode ?? []),
    templateIds: chosen.map((restoration) => restoration.template_id),
    day: visit.visited_on,
  });
  const fees = feesOf(asked, chosen, known);
  const plans = await loadChargePlans(tx, { visit, inputs });
  const lines = await linesOf(tx, asked, { chosen, fees, plans });
  const step = currencyStep(actor.currency);
  const { shares, left } = shareCharges(lines, plans, step);
  const charges = chosen.flatMap((restoration, i): WorkedOutCharge[] => {
    const [line, share, fee] = [lines[i], shares[i], fees[i]];
    if (!line || !share || !fee) throw new Error('A charge was not worked out');
    const plan = line.planId === null ? null : (plans.get(line.planId) ?? null);
    const isStated = line.stated !== null;
    return [{ restoration, feeEntry: fee.entry, fee: line.charge.fee, plan, isStated, ...share }];
  });
  return { charges, plans: [...plans.values()], left };
}

function refuseUnpayable(actor: Actor, input: NewChargeDto, at: string): void {
  const { fee, planPays, patientPays, writeOff, deductibleUsed } = input;
  const amounts = { fee, planPays, patientPays, writeOff, deductibleUsed };
  refuseFractions(
    actor,
    Object.fromEntries(Object.entries(amounts).map(([field, text]) => [`${at}${field}`, text])),
  );
}

function chosenRestorations({ restorations, inputs }: Asked): ChargedRestoration[] {
  const seen = new Set<string>();
  return inputs.map(({ restorationId }, i) => {
    const field = `charges[${i}].restorationId`;
    const found = restorations.find((each) => each.id === restorationId);
    if (!found) throw unknownReference(field, 'restoration of this visit');
    if (seen.has(restorationId)) {
      throw refusePricing('split_does_not_fit', 'A restoration is charged once.', [
        { field, message: 'is named twice' },
      ]);
    }
    seen.add(restorationId);
    return found;
  });
}

interface FoundFee {
  readonly entry: KnownFee | null;
  readonly amount: Money;
}

function feesOf(
  { inputs, visit }: Asked,
  chosen: readonly ChargedRestoration[],
  known: readonly KnownFee[],
): FoundFee[] {
  const problems: FieldError[] = [];
  const fees = inputs.flatMap((input, i): FoundFee[] => {
    const restoration = chosen[i];
    if (!restoration) throw new Error('A charge has no restoration');
    const { template_id: templateId, reason } = restoration;
    const feeCode = input.feeCode ?? null;
    const entry = findFee(known, { feeCode, templateId, reason }) ?? null;
    if (feeCode !== null && !entry) throw unknownReference(`charges[${i}].feeCode`, 'fee');
    const amount = input.fee == null ? (entry?.fee ?? null) : money(input.fee);
    if (amount !== null) return [{ entry, amount }];
    const field = `charges[${i}].${feeCode === null ? 'fee' : 'feeCode'}`;
    problems.push({ field, message: missing(entry, visit.visited_on) });
    return [];
  });
  const [first] = problems;
  if (first) throw refusePricing('fee_not_known', `${first.field} ${first.message}.`, problems);
  return fees;
}

function missing(entry: KnownFee | null, day: IsoDate): string {
  if (entry) return `has no fee that is valid on ${day}`;
  return 'must be stated: no fee is linked to this template and reason';
}

interface Found {
  readonly chosen: readonly ChargedRestoration[];
  readonly fees: readonly FoundFee[];
  readonly plans: ReadonlyMap<string, ChargePlan>;
}

async function linesOf(tx: Tx, { inputs, visit }: Asked, found: Found): Promise<ChargeLine[]> {
  const termsOf = new Map<string, readonly PlanTerm[]>();
  for (const id of found.plans.keys()) termsOf.set(id, (await loadTerms(tx, id)).map(toTerm));
  return inputs.map((input, i): ChargeLine => {
    const [restoration, fee] = [found.chosen[i], found.fees[i]];
    if (!restoration || !fee) throw new Error('A charge has no restoration or fee');
    const planId = input.planId ?? null;
    const stated = statedOf(input, fee.amount, `charges[${i}].`);
    const { entry, amount } = fee;
    const line = { fee: amount, reason: restoration.reason, feeId: entry?.id ?? null };
    const terms = planId === null ? [] : (termsOf.get(planId) ?? []);
    const feeClass = entry?.feeClass ?? null;
    const charge = chargeOf({ ...line, feeClass }, terms, visit.visited_on);
    if (planId !== null && stated === null) refuseUntold(found.plans.get(planId), i);
    return { charge, planId, stated };
  });
}

/** All three amounts or none. */
function statedOf(input: NewChargeDto, fee: Money, at: string): StatedShare | null {
  const parts = {
    planPays: input.planPays,
    patientPays: input.patientPays,
    writeOff: input.writeOff,
  };
  const named = Object.entries(parts).filter(([, text]) => text != null);
  if (named.length === 0 && input.deductibleUsed == null) return null;
  const open = Object.entries(parts).filter(([, text]) => text == null);
  if (open.length > 0) {
    const message = 'must be stated together with the other amounts';
    throw doesNotFit(open.map(([field]) => ({ field: `${at}${field}`, message })));
  }
  const stated = {
    planPays: money(parts.planPays ?? '0'),
    patientPays: money(parts.patientPays ?? '0'),
    writeOff: money(parts.writeOff ?? '0'),
    deductibleUsed: input.deductibleUsed == null ? ZERO_MONEY : money(input.deductibleUsed),
  };
  const problems = statedProblems(fee, stated, input.planId ?? null);
  if (problems.length > 0) {
    throw doesNotFit(problems.map(({ field, message }) => ({ field: `${at}${field}`, message })));
  }
  return stated;
}

function doesNotFit(problems: readonly FieldError[]) {
  const [first] = problems;
  const detail = `${first?.field} ${first?.message}.`;
  return refusePricing('split_does_not_fit', detail, problems);
}

function refuseUntold(plan: ChargePlan | undefined, i: number): void {
  if (plan?.balance) return;
  const detail =
    'Enter what was left of deductible and maximum for this chart and plan, or state the amounts.';
  throw refusePricing('balance_not_known', detail, [
    {
      field: `charges[${i}].planId`,
      message: 'names a plan of which nothing was recorded by the day of the visit',
    },
  ]);
}
