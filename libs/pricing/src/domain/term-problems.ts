import type { Reason } from '#lib/dentition';
import type { FieldError } from '#lib/platform';

/** Terms as somebody sends them. */
export interface TermDraft {
  readonly feeId: string | null;
  readonly feeClass: string | null;
  readonly allowedFee: string | null;
  readonly alternateFee: string | null;
  readonly coverage: string | null;
  readonly reasons: readonly Reason[];
  readonly cosmeticNote: string | null;
}

/** What does not fit together in the terms of a plan, field by field. */
export function termProblems(term: TermDraft): FieldError[] {
  return [...subjectProblems(term), ...cosmeticProblems(term)];
}

function subjectProblems(term: TermDraft): FieldError[] {
  const problems: FieldError[] = [];
  const add = (field: string, message: string) => problems.push({ field, message });
  const { feeId, feeClass, allowedFee, alternateFee, coverage } = term;
  if (feeId === null && feeClass === null) add('feeId', 'must name a fee, or feeClass a class');
  if (feeId !== null && feeClass !== null) add('feeClass', 'does not go with one fee');
  if (feeId === null && allowedFee !== null) add('allowedFee', 'can only be that of one fee');
  if (feeId === null && alternateFee !== null) add('alternateFee', 'can only be that of one fee');
  if (allowedFee === null && alternateFee === null && coverage === null) {
    add('coverage', 'must be stated, or allowedFee, or alternateFee');
  }
  if (term.reasons.length === 0) add('reasons', 'must name at least one reason');
  return problems;
}

function cosmeticProblems({ reasons, feeId, cosmeticNote }: TermDraft): FieldError[] {
  if (!reasons.includes('cosmetic')) {
    if (cosmeticNote === null) return [];
    return [{ field: 'cosmeticNote', message: 'belongs to terms that cover cosmetic work' }];
  }
  const problems: FieldError[] = [];
  if (feeId === null) {
    problems.push({ field: 'reasons', message: 'can name cosmetic work for a single fee only' });
  }
  if (cosmeticNote === null) {
    problems.push({ field: 'cosmeticNote', message: 'must say who states that it is covered' });
  }
  return problems;
}
