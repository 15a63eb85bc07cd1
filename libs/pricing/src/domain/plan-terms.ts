import type { Reason } from '#lib/dentition';
import type { Money, Quantity } from '#lib/measure';
import type { IsoDate } from '#lib/platform';
import type { Charge } from './plan-share.js';

/** What a plan says about one fee or one class of fees from a day on. */
export interface PlanTerm {
  readonly id: string;
  readonly feeId: string | null;
  readonly feeClass: string | null;
  readonly validFrom: IsoDate;
  readonly allowed: Money | null;
  readonly alternate: Money | null;
  /** Null: this term says nothing about coverage. */
  readonly coverage: Quantity | null;
  readonly deductibleApplies: boolean;
  /** The reasons for which it is covered. */
  readonly reasons: readonly Reason[];
  /** Who says that cosmetic work is covered. */
  readonly cosmeticNote: string | null;
}

/** What is covered unless a term says otherwise. */
export const USUAL_REASONS: readonly Reason[] = ['decay', 'fracture'];

interface Line {
  readonly fee: Money;
  readonly feeId: string | null;
  readonly feeClass: string | null;
  readonly reason: Reason;
}

/** A cosmetic note that is only blanks says nothing. */
function coversCosmetic(term: Pick<PlanTerm, 'feeId' | 'reasons' | 'cosmeticNote'>): boolean {
  return term.feeId !== null && term.reasons.includes('cosmetic') && !!term.cosmeticNote?.trim();
}

/**
 * What a plan says about a line on a day. The terms of the fee itself go before those of its class;
 * allowed and alternate fee are the fee's own only, and terms that name one of them replace both. The reason decides: a line made for another reason than those
 * covered is not covered, and a cosmetic one only where the fee's own term says so with a note.
 */
export function chargeOf(line: Line, terms: readonly PlanTerm[], day: IsoDate): Charge {
  const inForce = terms.filter((term) => term.validFrom <= day);
  const own = inForce.filter((term) => term.feeId !== null && term.feeId === line.feeId);
  const ofClass = inForce.filter((term) => sameClass(term.feeClass, line.feeClass));
  const speaksOfCoverage = (term: PlanTerm) => term.coverage !== null;
  const covering = latest(own.filter(speaksOfCoverage)) ?? latest(ofClass.filter(speaksOfCoverage));
  const fees = latest(own.filter((term) => term.allowed !== null || term.alternate !== null));
  const covered = covering !== undefined && coversReason(covering, line.reason);
  return {
    fee: line.fee,
    allowed: fees?.allowed ?? null,
    alternate: fees?.alternate ?? null,
    coverage: covered ? covering.coverage : null,
    deductibleApplies: covering?.deductibleApplies ?? true,
  };
}

function coversReason(term: PlanTerm, reason: Reason): boolean {
  return reason === 'cosmetic' ? coversCosmetic(term) : term.reasons.includes(reason);
}

function sameClass(a: string | null, b: string | null): boolean {
  return a !== null && b !== null && a.trim().toLowerCase() === b.trim().toLowerCase();
}

/** The one with the latest day; of two of the same day the one recorded later. */
function latest(terms: readonly PlanTerm[]): PlanTerm | undefined {
  return terms.reduce<PlanTerm | undefined>((best, term) => {
    if (best === undefined || term.validFrom > best.validFrom) return term;
    return term.validFrom === best.validFrom && term.id > best.id ? term : best;
  }, undefined);
}
