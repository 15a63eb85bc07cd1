import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  formatMoney,
  type Money,
  minorStep,
  money,
  moneyFromMicro,
  quantity,
  quantityFromMicro,
  sum,
} from '#lib/measure';
import {
  type Balance,
  type Charge,
  FEE_CEILINGS,
  incomeLimit,
  type PlanSettings,
  type PlanShare,
  planShare,
  planShares,
  withoutPlan,
} from './plan-share.js';

const CENT = minorStep(2);
const NETWORK: PlanSettings = { network: true, feeCeiling: 'never', downgradeBilled: true };
const OUTSIDE: PlanSettings = { ...NETWORK, network: false };
const PLENTY: Balance = { deductibleLeft: money('0'), maximumLeft: money('1000') };

function charge(texts: {
  fee: string;
  allowed?: string;
  alternate?: string;
  coverage?: string;
}): Charge {
  return {
    fee: money(texts.fee),
    allowed: texts.allowed === undefined ? null : money(texts.allowed),
    alternate: texts.alternate === undefined ? null : money(texts.alternate),
    coverage: texts.coverage === undefined ? null : quantity(texts.coverage),
    deductibleApplies: true,
  };
}

function shown({ planPays, patientPays, writeOff }: PlanShare): string[] {
  return [planPays, patientPays, writeOff].map((amount) => formatMoney(amount));
}

describe('one line', () => {
  const usual = { fee: '250', allowed: '180', coverage: '0.8' };
  const deductible = { ...PLENTY, deductibleLeft: money('50') };

  // Arithmetic on the usual terms of plans (usual fee, allowed fee, deductible, coverage, maximum).
  it.each([
    ['plain', usual, NETWORK, PLENTY, ['144.00', '36.00', '70.00']],
    ['with a deductible', usual, NETWORK, deductible, ['104.00', '76.00', '70.00']],
    [
      'a downgrade with a deductible',
      { ...usual, alternate: '120' },
      NETWORK,
      deductible,
      ['56.00', '124.00', '70.00'],
    ],
    [
      'the maximum nearly used',
      usual,
      NETWORK,
      { ...PLENTY, maximumLeft: money('40') },
      ['40.00', '140.00', '70.00'],
    ],
    ['out of network', usual, OUTSIDE, PLENTY, ['144.00', '106.00', '0.00']],
  ])('%s', (_name, terms, plan, balance, expected) => {
    expect(shown(planShare(charge(terms), plan, balance, CENT))).toEqual(expected);
  });

  // Public billing-help pages on alternate benefit: 200 asked and allowed, 100 for the cheaper
  // treatment, 80 % paid of that: the plan pays 80 and the patient 120.
  it('the published downgrade example', () => {
    const terms = charge({ fee: '200', allowed: '200', alternate: '100', coverage: '0.8' });
    const balance = { deductibleLeft: money('0'), maximumLeft: null };
    expect(shown(planShare(terms, NETWORK, balance, CENT))).toEqual(['80.00', '120.00', '0.00']);
    const notBilled = { ...NETWORK, downgradeBilled: false };
    expect(shown(planShare(terms, notBilled, balance, CENT))).toEqual(['80.00', '20.00', '100.00']);
    expect(shown(planShare(terms, { ...notBilled, network: false }, balance, CENT))).toEqual([
      '80.00',
      '120.00',
      '0.00',
    ]);
  });

  // An insurer's provider bulletin: for cosmetic work the patient pays the full fee; notices of a
  // national dental association: some contracts hold the allowed fee on it all the same.
  it('cosmetic work, without and with a ceiling in the contract', () => {
    const cosmetic = charge({ fee: '250', allowed: '180' });
    const by = (feeCeiling: PlanSettings['feeCeiling']) =>
      shown(planShare(cosmetic, { ...NETWORK, feeCeiling }, PLENTY, CENT));
    expect(by('never')).toEqual(['0.00', '250.00', '0.00']);
    expect(by('exhausted')).toEqual(['0.00', '250.00', '0.00']);
    expect(by('non-covered')).toEqual(['0.00', '180.00', '70.00']);
    expect(by('both')).toEqual(['0.00', '180.00', '70.00']);
    expect(shown(withoutPlan(money('250')))).toEqual(['0.00', '250.00', '0.00']);
  });

  it('covered work once the maximum is used up, by what the ceiling binds', () => {
    const nothingLeft = { ...PLENTY, maximumLeft: money('0') };
    const by = (feeCeiling: PlanSettings['feeCeiling']) =>
      shown(planShare(charge(usual), { ...NETWORK, feeCeiling }, nothingLeft, CENT));
    expect(by('never')).toEqual(['0.00', '250.00', '0.00']);
    expect(by('non-covered')).toEqual(['0.00', '250.00', '0.00']);
    expect(by('exhausted')).toEqual(['0.00', '180.00', '70.00']);
    expect(by('both')).toEqual(['0.00', '180.00', '70.00']);
  });

  it('is not counted against the deductible where that does not apply', () => {
    const preventive = { ...charge(usual), deductibleApplies: false };
    const share = planShare(preventive, NETWORK, deductible, CENT);
    expect(shown(share)).toEqual(['144.00', '36.00', '70.00']);
    expect(share.deductibleUsed).toBe(0n);
  });

  it('is rounded once: 80.625 % of 62.02 is 50.003625, so 50.00', () => {
    const odd = charge({ fee: '62.02', allowed: '62.02', coverage: '0.80625' });
    expect(shown(planShare(odd, NETWORK, PLENTY, CENT))).toEqual(['50.00', '12.02', '0.00']);
  });
});

describe('several lines', () => {
  it('use up deductible and maximum in their order', () => {
    const line = charge({ fee: '250', allowed: '180', coverage: '0.8' });
    const balance = { deductibleLeft: money('200'), maximumLeft: money('200') };
    const { shares, left } = planShares([line, line, line], NETWORK, balance, CENT);
    expect(shares.map(shown)).toEqual([
      ['0.00', '180.00', '70.00'],
      ['128.00', '52.00', '70.00'],
      ['72.00', '108.00', '70.00'],
    ]);
    expect([left.deductibleLeft, left.maximumLeft]).toEqual([0n, 0n]);
  });
});

const cents = fc.bigInt({ min: 0n, max: 100_000n }).map((n) => moneyFromMicro(n * CENT));
const share = fc.bigInt({ min: 0n, max: 1_000_000n }).map(quantityFromMicro);
const anyCharge = fc.record<Charge>({
  fee: cents,
  allowed: fc.option(cents),
  alternate: fc.option(cents),
  coverage: fc.option(share),
  deductibleApplies: fc.boolean(),
});
const anyPlan = fc.record<PlanSettings>({
  network: fc.boolean(),
  feeCeiling: fc.constantFrom(...FEE_CEILINGS),
  downgradeBilled: fc.boolean(),
});
const anyBalance = fc.record<Balance>({ deductibleLeft: cents, maximumLeft: fc.option(cents) });
const charges = fc.array(anyCharge, { minLength: 1, maxLength: 6 });

const totals = (list: readonly PlanShare[]) => ({
  plan: sum(list.map((each) => each.planPays)),
  patient: sum(list.map((each) => each.patientPays)),
});

describe('any lines under any plan', () => {
  it('rule 7: plan + patient + write-off = fee, and none of them is negative', () => {
    fc.assert(
      fc.property(charges, anyPlan, anyBalance, (list, plan, balance) => {
        const { shares, left } = planShares(list, plan, balance, CENT);
        shares.forEach((each, i) => {
          const { planPays, patientPays, writeOff, deductibleUsed } = each;
          expect(planPays + patientPays + writeOff).toBe(list[i]?.fee);
          for (const part of [planPays, patientPays, writeOff, deductibleUsed]) {
            expect(part >= 0n).toBe(true);
          }
          if (!plan.network) expect(writeOff).toBe(0n);
        });
        expect(left.deductibleLeft >= 0n).toBe(true);
        expect(left.maximumLeft === null || left.maximumLeft >= 0n).toBe(true);
      }),
    );
  });

  it('never take more than the maximum from the plan, nor more than the deductible off', () => {
    fc.assert(
      fc.property(charges, anyPlan, anyBalance, (list, plan, balance) => {
        const { shares } = planShares(list, plan, balance, CENT);
        const used = sum(shares.map((each) => each.deductibleUsed));
        expect(used <= balance.deductibleLeft).toBe(true);
        const { maximumLeft } = balance;
        expect(maximumLeft === null || totals(shares).plan <= maximumLeft).toBe(true);
      }),
    );
  });

  it('cost the patient no more under a ceiling than without one', () => {
    fc.assert(
      fc.property(charges, anyPlan, anyBalance, (list, plan, balance) => {
        const bound = planShares(list, plan, balance, CENT).shares;
        const free = planShares(list, { ...plan, feeCeiling: 'never' }, balance, CENT).shares;
        bound.forEach((each, i) => {
          expect(each.patientPays <= (free[i]?.patientPays ?? 0n)).toBe(true);
          expect(each.planPays).toBe(free[i]?.planPays);
        });
      }),
    );
  });

  it('cost the patient no more with more coverage', () => {
    const lines = fc.tuple(charges, fc.nat(5), share, share);
    fc.assert(
      fc.property(lines, anyPlan, anyBalance, ([list, at, a, b], plan, balance) => {
        // Once the maximum is gone a contract may let go of its allowed fee: coverage that uses up
        // the maximum sooner then costs the patient of a later line more. Not where it stays bound.
        const bound = { ...plan, feeCeiling: 'both' as const, downgradeBilled: true };
        const [less, more] = a < b ? [a, b] : [b, a];
        const pays = (coverage: Charge['coverage'], under: PlanSettings, of: readonly Charge[]) =>
          totals(
            planShares(
              of.map((each, i) => (i === at % of.length ? { ...each, coverage } : each)),
              under,
              balance,
              CENT,
            ).shares,
          ).patient;
        expect(pays(more, bound, list) <= pays(less, bound, list)).toBe(true);
        const one = list.slice(0, 1);
        if (less > 0n) expect(pays(more, plan, one) <= pays(less, plan, one)).toBe(true);
      }),
    );
  });

  it('take more from the plan with more maximum and less with more deductible', () => {
    fc.assert(
      fc.property(charges, anyPlan, anyBalance, cents, (list, plan, balance, extra) => {
        const plus = (amount: Money) => moneyFromMicro(amount + extra);
        const pays = (left: Balance) => totals(planShares(list, plan, left, CENT).shares).plan;
        const { deductibleLeft, maximumLeft } = balance;
        const richer = { ...balance, maximumLeft: maximumLeft === null ? null : plus(maximumLeft) };
        expect(pays(richer) >= pays(balance)).toBe(true);
        const later = { ...balance, deductibleLeft: plus(deductibleLeft) };
        expect(pays(later) <= pays(balance)).toBe(true);
      }),
    );
  });

  it('cost the patient no less at a higher fee', () => {
    fc.assert(
      fc.property(anyCharge, cents, anyPlan, anyBalance, (line, extra, plan, balance) => {
        const dearer = { ...line, fee: moneyFromMicro(line.fee + extra) };
        const now = planShare(line, plan, balance, CENT);
        const then = planShare(dearer, plan, balance, CENT);
        expect(then.patientPays >= now.patientPays).toBe(true);
        expect(then.writeOff >= now.writeOff).toBe(true);
        expect(then.planPays >= now.planPays).toBe(true);
      }),
    );
  });

  it('bring in the smaller of the fee and the limit, whatever the fee', () => {
    fc.assert(
      fc.property(anyCharge, anyPlan, anyBalance, (line, plan, balance) => {
        const limit = incomeLimit(line, plan, balance, CENT);
        const { planPays, patientPays } = planShare(line, plan, balance, CENT);
        const smaller = limit === null || limit > line.fee ? line.fee : limit;
        expect(planPays + patientPays).toBe(smaller);
      }),
    );
  });
});
