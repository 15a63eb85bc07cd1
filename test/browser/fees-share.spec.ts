import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { shareOf } from '../../apps/web/src/features/fees/share.js';
import {
  chargeOf as chargeShown,
  decidingTerms,
  REASONS,
  type Term,
} from '../../apps/web/src/features/fees/terms.js';
import {
  minorStep,
  money,
  moneyFromMicro,
  quantityFromMicro,
} from '../../libs/measure/src/index.js';
import { FEE_CEILINGS, planShare } from '../../libs/pricing/src/domain/plan-share.js';
import { chargeOf, type PlanTerm } from '../../libs/pricing/src/domain/plan-terms.js';

// What a screen says while terms are typed must be what the service says afterwards.

const CENT = minorStep(2);
const RUNS = { numRuns: 2000 };

const micros = (most: bigint) => fc.bigInt({ min: 0n, max: most });
const cents = micros(40_000n).map((count) => moneyFromMicro(count * CENT));
const orNull = <T>(values: fc.Arbitrary<T>) => fc.option(values, { nil: null });
const coverage = fc
  .oneof(micros(1_000_000n), fc.constantFrom(0n, 500_000n, 800_000n, 1_000_000n))
  .map(quantityFromMicro);

const charges = fc.record({
  fee: cents,
  allowed: orNull(cents),
  alternate: orNull(cents),
  coverage: orNull(coverage),
  deductibleApplies: fc.boolean(),
});
const settings = fc.record({
  network: fc.boolean(),
  feeCeiling: fc.constantFrom(...FEE_CEILINGS),
  downgradeBilled: fc.boolean(),
});
/** What is left may be finer than a coin. */
const lefts = fc.record({
  deductible: micros(90_000_000n).map(moneyFromMicro),
  maximum: orNull(fc.oneof(micros(20_000n), micros(400_000_000n)).map(moneyFromMicro)),
});

describe('who pays what, as the screen of a plan says it', () => {
  it('is what the service says', () => {
    fc.assert(
      fc.property(charges, settings, lefts, (charge, plan, left) => {
        const { planPays, patientPays, writeOff, deductibleUsed, covered, exhausted } = shareOf(
          charge,
          plan,
          left,
          CENT,
        );
        const balance = { deductibleLeft: left.deductible, maximumLeft: left.maximum };
        expect({ planPays, patientPays, writeOff, deductibleUsed, covered, exhausted }).toEqual(
          planShare(charge, plan, balance, CENT),
        );
        expect(planPays + patientPays + writeOff).toBe(charge.fee);
      }),
      RUNS,
    );
  });

  it('rests on the terms that the service takes', () => {
    fc.assert(
      fc.property(termLists, lines, days, (terms, line, day) => {
        const shown = chargeShown(line, decidingTerms(line, terms, day));
        expect(shown).toEqual(chargeOf(line, terms.map(stored), day));
      }),
      RUNS,
    );
  });

  // Worked by hand, no source.
  it('writes off what a network practice may not ask', () => {
    const charge = {
      fee: money('200'),
      allowed: money('180'),
      alternate: money('150'),
      coverage: quantityFromMicro(800_000n),
      deductibleApplies: true,
    };
    const plan = { network: true, feeCeiling: 'never', downgradeBilled: true } as const;
    const left = { deductible: money('50'), maximum: money('1000') };
    expect(shareOf(charge, plan, left, CENT)).toMatchObject({
      planPays: money('80'),
      patientPays: money('100'),
      writeOff: money('20'),
      base: money('150'),
      limit: money('180'),
    });
  });
});

const days = fc.constantFrom('2026-01-01', '2026-02-01', '2026-03-01');
const feeIds = fc.constantFrom('fee-1', 'fee-2');
const classes = fc.constantFrom('basic', ' Basic', 'other');
const lines = fc.record({
  fee: cents,
  feeId: orNull(feeIds),
  feeClass: orNull(classes),
  reason: fc.constantFrom(...REASONS),
});
const texts = cents.map((amount) => `${amount / 1_000_000n}.${(amount % 1_000_000n) / CENT}`);
const termLists: fc.Arbitrary<Term[]> = fc.uniqueArray(
  fc.record({
    id: fc.stringMatching(/^[a-f]{3}$/),
    feeId: orNull(feeIds),
    feeCode: fc.constant(null),
    feeClass: orNull(classes),
    validFrom: days,
    allowedFee: orNull(texts),
    alternateFee: orNull(texts),
    coverage: orNull(fc.constantFrom('0', '0.5', '0.8', '1')),
    deductibleApplies: fc.boolean(),
    reasons: fc.subarray([...REASONS], { minLength: 1 }),
    cosmeticNote: orNull(fc.constantFrom(' ', 'Contract, section 9')),
  }),
  { selector: ({ id }) => id, maxLength: 8 },
);

function stored(term: Term): PlanTerm {
  const { allowedFee, alternateFee, coverage: share, reasons, feeCode: _, ...same } = term;
  const amount = (text: string | null) => (text === null ? null : money(text));
  const [whole = '0', fraction = ''] = (share ?? '0').split('.');
  return {
    ...same,
    allowed: amount(allowedFee),
    alternate: amount(alternateFee),
    coverage:
      share === null
        ? null
        : quantityFromMicro(BigInt(whole) * 1_000_000n + BigInt(fraction.padEnd(6, '0'))),
    reasons: reasons as PlanTerm['reasons'],
  };
}
