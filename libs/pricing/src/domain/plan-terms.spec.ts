import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { REASONS, type Reason } from '#lib/dentition';
import { money, quantity } from '#lib/measure';
import { chargeOf, type PlanTerm, USUAL_REASONS } from './plan-terms.js';

const DAY = '2026-11-25';

function term(changes: Partial<PlanTerm>): PlanTerm {
  return {
    id: 'a',
    feeId: null,
    feeClass: null,
    validFrom: '2026-01-01',
    allowed: null,
    alternate: null,
    coverage: null,
    deductibleApplies: true,
    reasons: USUAL_REASONS,
    cosmeticNote: null,
    ...changes,
  };
}

function line(reason: Reason = 'decay') {
  return { fee: money('250'), feeId: 'F1', feeClass: 'Basic', reason };
}

describe('the terms of a plan', () => {
  const ofClass = term({ feeClass: 'basic', coverage: quantity('0.8') });
  const ofFee = term({ feeId: 'F1', allowed: money('180') });

  it('come from the fee, and coverage from its class where the fee says none', () => {
    expect(chargeOf(line(), [ofClass, ofFee], DAY)).toEqual({
      fee: money('250'),
      allowed: money('180'),
      alternate: null,
      coverage: quantity('0.8'),
      deductibleApplies: true,
    });
    const own = term({ feeId: 'F1', coverage: quantity('0.5'), deductibleApplies: false });
    expect(chargeOf(line(), [own, ofClass], DAY)).toMatchObject({
      coverage: quantity('0.5'),
      deductibleApplies: false,
    });
    expect(chargeOf({ ...line(), feeId: null, feeClass: null }, [ofClass, ofFee], DAY)).toEqual({
      ...chargeOf(line(), [], DAY),
    });
  });

  it('are those in force on the day, and of two of one day the one recorded later', () => {
    const later = term({ id: 'b', feeId: 'F1', validFrom: '2026-11-26', allowed: money('190') });
    const corrected = term({ id: 'c', feeId: 'F1', allowed: money('185') });
    const terms = [later, corrected, ofFee];
    expect(chargeOf(line(), terms, DAY).allowed).toBe(money('185'));
    expect(chargeOf(line(), terms, '2026-11-26').allowed).toBe(money('190'));
    expect(chargeOf(line(), terms, '2025-12-31').allowed).toBeNull();
  });

  it('drop a downgrade when newer terms of the fee name none', () => {
    const downgraded = term({ feeId: 'F1', allowed: money('180'), alternate: money('120') });
    const lifted = term({ id: 'b', feeId: 'F1', validFrom: '2026-06-01', allowed: money('185') });
    expect(chargeOf(line(), [downgraded], DAY).alternate).toBe(money('120'));
    expect(chargeOf(line(), [downgraded, lifted], DAY).alternate).toBeNull();
    const covering = term({ id: 'c', feeId: 'F1', coverage: quantity('0.5') });
    expect(chargeOf(line(), [downgraded, covering], DAY).alternate).toBe(money('120'));
  });

  it('cover only the reasons they name', () => {
    const covered = REASONS.filter(
      (reason) => chargeOf(line(reason), [ofClass], DAY).coverage !== null,
    );
    expect(covered).toEqual(['decay', 'fracture']);
    const worn = term({ feeClass: 'basic', coverage: quantity('0.5'), reasons: ['wear'] });
    expect(chargeOf(line('wear'), [worn], DAY).coverage).toBe(quantity('0.5'));
  });

  it('never cover cosmetic work but by a term of the fee itself that has a note', () => {
    const any = fc.record({
      feeId: fc.constantFrom('F1', null),
      feeClass: fc.constantFrom('basic', null),
      reasons: fc.subarray([...REASONS]),
      cosmeticNote: fc.constantFrom('Letter of 2 May', ' ', null),
    });
    fc.assert(
      fc.property(fc.array(any), (list) => {
        const terms = list.map((each, i) =>
          term({ ...each, id: String(i), coverage: quantity('0.8') }),
        );
        const { coverage } = chargeOf(line('cosmetic'), terms, DAY);
        const noted = list.some(
          (each) =>
            each.feeId === 'F1' &&
            each.reasons.includes('cosmetic') &&
            each.cosmeticNote?.startsWith('Letter'),
        );
        if (!noted) expect(coverage).toBeNull();
      }),
    );
    const noted = term({
      feeId: 'F1',
      coverage: quantity('0.3'),
      reasons: ['cosmetic'],
      cosmeticNote: 'Letter of the plan, 2 May 2026',
    });
    expect(chargeOf(line('cosmetic'), [noted], DAY).coverage).toBe(quantity('0.3'));
  });
});
