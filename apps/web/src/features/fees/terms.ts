import { type Money, money, quantity } from '#lib/measure';
import type { Shape } from '../../api/client.js';
import type { Charge } from './share.js';

export type Term = Omit<Shape<'PlanTermDto'>, 'recordedAt'>;

export const REASONS = ['decay', 'fracture', 'wear', 'cosmetic'] as const;
export type Reason = (typeof REASONS)[number];
export const FEE_CEILINGS = ['never', 'non-covered', 'exhausted', 'both'] as const;

/** What is charged: a fee of the practice, or only an amount of some class. */
interface Line {
  readonly fee: Money;
  readonly feeId: string | null;
  readonly feeClass: string | null;
  readonly reason: Reason;
}

/** The terms that decide about a line on a day: one about its fees, one about what is covered. */
interface Deciding {
  readonly fees: Term | undefined;
  readonly covering: Term | undefined;
}

const saysCoverage = ({ coverage }: Term) => coverage !== null;
const saysFees = ({ allowedFee, alternateFee }: Term) =>
  allowedFee !== null || alternateFee !== null;

const sameClass = (a: string | null, b: string | null) =>
  a !== null && b !== null && a.trim().toLowerCase() === b.trim().toLowerCase();

/** The terms of the fee itself go before those of its class, as in the service. */
export function decidingTerms(
  line: Pick<Line, 'feeId' | 'feeClass'>,
  terms: readonly Term[],
  day: string,
): Deciding {
  const inForce = terms.filter((term) => term.validFrom <= day);
  const own = inForce.filter((term) => term.feeId !== null && term.feeId === line.feeId);
  const ofClass = inForce.filter((term) => sameClass(term.feeClass, line.feeClass));
  return {
    fees: latest(own.filter(saysFees)),
    covering: latest(own.filter(saysCoverage)) ?? latest(ofClass.filter(saysCoverage)),
  };
}

export function chargeOf(line: Line, { fees, covering }: Deciding): Charge {
  const covered = covering !== undefined && coversReason(covering, line.reason);
  const amount = (text: string | null | undefined) => (text == null ? null : money(text));
  return {
    fee: line.fee,
    allowed: amount(fees?.allowedFee),
    alternate: amount(fees?.alternateFee),
    coverage: covered && covering.coverage !== null ? quantity(covering.coverage) : null,
    deductibleApplies: covering?.deductibleApplies ?? true,
  };
}

function coversReason(term: Term, reason: Reason): boolean {
  if (!term.reasons.includes(reason)) return false;
  return reason !== 'cosmetic' || (term.feeId !== null && !!term.cosmeticNote?.trim());
}

/** The one with the latest day; of two of one day the one recorded later. */
function latest(terms: readonly Term[]): Term | undefined {
  return terms.reduce<Term | undefined>((best, term) => {
    if (best === undefined || term.validFrom > best.validFrom) return term;
    return term.validFrom === best.validFrom && term.id > best.id ? term : best;
  }, undefined);
}

/** Whether any part of a term counts on a day, or will from a later one. */
export function standingOf(
  term: Term,
  terms: readonly Term[],
  day: string,
): 'counts' | 'later' | 'replaced' {
  if (term.validFrom > day) return replacedOn(term, terms, term.validFrom) ? 'replaced' : 'later';
  return replacedOn(term, terms, day) ? 'replaced' : 'counts';
}

function replacedOn(term: Term, terms: readonly Term[], day: string): boolean {
  const same = terms.filter(
    (other) =>
      other.validFrom <= day &&
      (term.feeId === null ? sameClass(other.feeClass, term.feeClass) : other.feeId === term.feeId),
  );
  const stillFees = saysFees(term) && latest(same.filter(saysFees))?.id === term.id;
  return !stillFees && !(saysCoverage(term) && latest(same.filter(saysCoverage))?.id === term.id);
}
