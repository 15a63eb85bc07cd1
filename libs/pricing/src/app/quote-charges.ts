import { type Money, money } from '#lib/measure';
import { type FieldError, type IsoDate, refuse, type Tx } from '#lib/platform';
import type { PlannedRestoration } from '#lib/procedures';
import { type KnownFee, loadFees } from '../db/fee-versions.js';
import { type Charge } from '../domain/plan-share.js';
import { chargeOf, type PlanTerm } from '../domain/plan-terms.js';
import type { QuotedRestorationDto } from '../http/quote.dto.js';
import { refusePricing } from '../pricing.refusals.js';

export interface QuotedCharge {
  readonly charge: Charge;
  readonly feeCode: string | null;
}

interface ChargesOf {
  readonly inputs: readonly QuotedRestorationDto[];
  readonly restorations: readonly PlannedRestoration[];
  /** Null: no plan. */
  readonly terms: readonly PlanTerm[] | null;
  readonly day: IsoDate;
}

/** What is asked for each restoration, and what the plan says about it. */
export async function loadCharges(tx: Tx, of: ChargesOf): Promise<QuotedCharge[]> {
  const { inputs, restorations, terms, day } = of;
  const known = await loadFees(tx, {
    codes: inputs.flatMap((input) => input.feeCode ?? []),
    templateIds: inputs.map((input) => input.templateId),
    day,
  });
  const problems: FieldError[] = [];
  const charges = inputs.map((input, i): QuotedCharge | null => {
    const at = `restorations[${i}]`;
    const entry = input.feeCode ? byCode(known, input.feeCode) : byTemplate(known, input);
    if (input.feeCode && !entry) {
      const message = 'names no fee of this practice';
      throw refuse('unknown_reference', `There is no fee with the code ${input.feeCode}.`, [
        { field: `${at}.feeCode`, message },
      ]);
    }
    const fee = amountOf(input, entry);
    if (fee === null) {
      problems.push(missing(at, input, entry, day));
      return null;
    }
    const reason = restorations[i]?.reason ?? input.reason;
    const line = { fee, reason, feeId: entry?.id ?? null, feeClass: entry?.feeClass ?? null };
    return { charge: chargeOf(line, terms ?? [], day), feeCode: entry?.code ?? null };
  });
  const [first] = problems;
  if (first) throw refusePricing('fee_not_known', `${first.field} ${first.message}.`, problems);
  return charges.flatMap((charge) => charge ?? []);
}

function byCode(known: readonly KnownFee[], code: string): KnownFee | undefined {
  const wanted = code.trim().toLowerCase();
  return known.find((fee) => fee.code.toLowerCase() === wanted);
}

/** The fee of the template for this reason, else the one for any reason. */
function byTemplate(
  known: readonly KnownFee[],
  { templateId, reason }: QuotedRestorationDto,
): KnownFee | undefined {
  const own = known.filter((fee) => fee.active && fee.templateId === templateId);
  return own.find((fee) => fee.reason === reason) ?? own.find((fee) => fee.reason === null);
}

function amountOf(input: QuotedRestorationDto, entry: KnownFee | undefined): Money | null {
  if (input.fee != null) return money(input.fee);
  return entry?.fee ?? null;
}

function missing(
  at: string,
  input: QuotedRestorationDto,
  entry: KnownFee | undefined,
  day: IsoDate,
): FieldError {
  if (entry) {
    const field = input.feeCode ? `${at}.feeCode` : `${at}.fee`;
    return { field, message: `has no fee that is valid on ${day}` };
  }
  const message = 'must be stated: no fee is linked to this template and reason';
  return { field: `${at}.fee`, message };
}
