import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type Money, minorStep, money, moneyFromMicro, quantityFromMicro, sum } from '#lib/measure';
import {
  type ChargedPlan,
  type ChargeLine,
  shareCharges,
  statedProblems,
} from './charge-shares.js';
import { FEE_CEILINGS } from './plan-share.js';

const CENT = minorStep(2);
const cents = (max: number): fc.Arbitrary<Money> =>
  fc.integer({ min: 0, max }).map((n) => moneyFromMicro(BigInt(n) * CENT));
const orNull = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: null });

const PLAN_IDS = ['larch', 'pine'] as const;

const plan: fc.Arbitrary<ChargedPlan> = fc.record({
  settings: fc.record({
    network: fc.boolean(),
    feeCeiling: fc.constantFrom(...FEE_CEILINGS),
    downgradeBilled: fc.boolean(),
  }),
  balance: fc.record({ deductibleLeft: cents(20_000), maximumLeft: orNull(cents(60_000)) }),
});

/** Amounts that somebody states for a fee: cut in three. */
const stated = (fee: Money, hasPlan: boolean) =>
  fc.tuple(fc.nat(1000), fc.nat(1000), fc.nat(1000)).map(([a, b, c]) => {
    const planPays = hasPlan ? moneyFromMicro((fee * BigInt(a)) / 1000n) : money('0');
    const rest = fee - planPays;
    const writeOff = moneyFromMicro((rest * BigInt(b)) / 1000n);
    const patientPays = moneyFromMicro(rest - writeOff);
    const used = hasPlan ? (fee * BigInt(c)) / 1000n : 0n;
    return { planPays, patientPays, writeOff, deductibleUsed: moneyFromMicro(used) };
  });

const line: fc.Arbitrary<ChargeLine> = fc
  .tuple(
    fc.record({
      fee: cents(50_000),
      allowed: orNull(cents(50_000)),
      alternate: orNull(cents(50_000)),
      coverage: orNull(
        fc.integer({ min: 0, max: 1_000_000 }).map((n) => quantityFromMicro(BigInt(n))),
      ),
      deductibleApplies: fc.boolean(),
    }),
    orNull(fc.constantFrom(...PLAN_IDS)),
  )
  .chain(([charge, planId]) =>
    fc
      .option(stated(charge.fee, planId !== null), { nil: null, freq: 3 })
      .map((of) => ({ charge, planId, stated: of })),
  );

const lines = fc.array(line, { maxLength: 8 });

describe('the lines of a visit', () => {
  it('are split into plan, patient and write-off that make up the fee; none is negative', () => {
    const property = fc.property(lines, plan, plan, (all, larch, pine) => {
      const { shares } = shareCharges(
        all,
        new Map([
          ['larch', larch],
          ['pine', pine],
        ]),
        CENT,
      );
      shares.forEach(({ planPays, patientPays, writeOff, deductibleUsed }, i) => {
        expect(sum([planPays, patientPays, writeOff])).toBe(all[i]?.charge.fee);
        for (const each of [planPays, patientPays, writeOff, deductibleUsed]) {
          expect(each >= 0n).toBe(true);
        }
      });
    });
    fc.assert(property);
  });

  it('never use more of a plan than was left, unless a person stated that it paid', () => {
    const property = fc.property(lines, plan, plan, (all, larch, pine) => {
      const plans = new Map([
        ['larch', larch],
        ['pine', pine],
      ]);
      const { shares, left } = shareCharges(all, plans, CENT);
      for (const [id, { balance }] of plans) {
        const [after, own] = [left.get(id), shares.filter((_, i) => all[i]?.planId === id)];
        if (!after || !balance) throw new Error('A plan was lost');
        expect(after.deductibleLeft >= 0n).toBe(true);
        expect((after.maximumLeft ?? 0n) >= 0n).toBe(true);
        if (all.some((each) => each.planId === id && each.stated)) continue;
        const used = sum(own.map((share) => share.deductibleUsed));
        expect(used + after.deductibleLeft).toBe(balance.deductibleLeft);
        if (balance.maximumLeft === null) continue;
        expect(sum(own.map((s) => s.planPays)) + (after.maximumLeft ?? 0n)).toBe(
          balance.maximumLeft,
        );
      }
    });
    fc.assert(property);
  });

  it('keep what a person stated, and leave the other plan alone', () => {
    const property = fc.property(lines, plan, plan, (all, larch, pine) => {
      const { shares } = shareCharges(
        all,
        new Map([
          ['larch', larch],
          ['pine', pine],
        ]),
        CENT,
      );
      all.forEach((each, i) => {
        if (each.stated) expect(shares[i]).toEqual(each.stated);
      });
      const only = all.filter((each) => each.planId !== 'pine');
      const alone = shareCharges(only, new Map([['larch', larch]]), CENT).shares;
      expect(shares.filter((_, i) => all[i]?.planId !== 'pine')).toEqual(alone);
    });
    fc.assert(property);
  });

  it('need what is left of a plan to be worked out', () => {
    const charge = {
      fee: money('100'),
      allowed: null,
      alternate: null,
      coverage: null,
      deductibleApplies: true,
    };
    const settings = { network: true, feeCeiling: 'never', downgradeBilled: true } as const;
    const untold = new Map([['larch', { settings, balance: null }]]);
    const under = { charge, planId: 'larch', stated: null };
    expect(() => shareCharges([under], untold, CENT)).toThrow('needs what is left');
  });
});

describe('stated amounts', () => {
  const share = (planPays: string, patientPays: string, writeOff: string, used = '0') => ({
    planPays: money(planPays),
    patientPays: money(patientPays),
    writeOff: money(writeOff),
    deductibleUsed: money(used),
  });
  const fields = (...of: Parameters<typeof statedProblems>) =>
    statedProblems(...of).map(({ field }) => field);

  it('add up to the fee, and a plan pays only where there is one', () => {
    const fee = money('100');
    expect(fields(fee, share('60', '30', '10', '100'), 'larch')).toEqual([]);
    expect(fields(fee, share('0', '90', '10'), null)).toEqual([]);
    expect(fields(fee, share('60', '30', '10.01'), 'larch')).toEqual(['patientPays']);
    expect(fields(fee, share('60', '30', '10'), null)).toEqual(['planId']);
    expect(fields(fee, share('0', '90', '10', '1'), null)).toEqual(['planId']);
    expect(fields(fee, share('0', '90', '10', '101'), 'larch')).toEqual(['deductibleUsed']);
  });
});
