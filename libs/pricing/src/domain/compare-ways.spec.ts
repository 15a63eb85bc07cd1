import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { Reason } from '#lib/dentition';
import {
  formatMoney,
  type Money,
  minorStep,
  money,
  moneyFromMicro,
  type Quantity,
  quantity,
  quantityFromMicro,
} from '#lib/measure';
import { DRIVERS } from '#lib/procedures';
import { compareWays, type QuotedWay, type QuoteInput } from './compare-ways.js';
import { type Charge, FEE_CEILINGS } from './plan-share.js';
import { CONSUMABLES, consumableOf, restorationOn, templateLine } from './quotes-for-tests.js';
import { waysOf } from './ways.js';

const CENT = minorStep(2);

function charge(fee: string, more: Partial<Charge> = {}): Charge {
  const none = { allowed: null, alternate: null, coverage: null };
  return { fee: money(fee), ...none, deductibleApplies: true, ...more };
}

const VISIT_AND_OWN = [
  templateLine('glove', 'visit', '4'),
  templateLine('dam', 'front segment or quadrant', '1'),
  templateLine('gel', 'tooth', '0.08'),
  templateLine('paste', 'restoration', '0.06'),
];

function input(changes: Partial<QuoteInput> = {}): QuoteInput {
  return {
    restorations: [
      restorationOn([11, 'M'], 'decay', VISIT_AND_OWN),
      restorationOn([21, 'M'], 'cosmetic', VISIT_AND_OWN, { minutes: 50 }),
    ],
    charges: [
      charge('250', { allowed: money('180'), coverage: quantity('0.8') }),
      charge('320', { allowed: money('180') }),
    ],
    staffCount: 2,
    costShareKey: 'equal',
    step: CENT,
    consumableOf,
    plan: {
      settings: { network: true, feeCeiling: 'never', downgradeBilled: true },
      balance: { deductibleLeft: money('50'), maximumLeft: money('1000') },
    },
    setUpMinutes: null,
    chairMinuteCost: null,
    assistantMinuteCost: null,
    targetPerHour: null,
    recordedOwn: [[], []],
    ...changes,
  };
}

function way(kind: QuotedWay['kind'], from: QuoteInput): QuotedWay {
  const one = compareWays(from).find((each) => each.kind === kind);
  if (!one) throw new Error(`There is no way "${kind}"`);
  return one;
}

const text = (amount: Money | null | undefined) => (amount ? formatMoney(amount) : amount);

describe('the ways of doing the work', () => {
  it('keep the two reasons apart', () => {
    expect(waysOf(['decay', 'cosmetic', 'wear'])).toEqual([
      { kind: 'all in one visit', visits: [[0, 1, 2]] },
      { kind: 'insured first, cosmetic later', visits: [[0, 2], [1]] },
      { kind: 'insured only', visits: [[0, 2]] },
      { kind: 'cosmetic only', visits: [[1]] },
    ]);
    expect(waysOf(['decay', 'fracture'])).toHaveLength(1);
    expect(waysOf(['cosmetic'])).toHaveLength(1);
  });

  it('are compared to the cent (worked by hand)', () => {
    const together = way('all in one visit', input());
    // 4 gloves 0.36 + 1 dam 0.50; by tooth gel 2 x 0.33333336; paste 2 x 1.08: 3.69 in all.
    expect(text(together.material)).toBe('3.69');
    expect([together.planPays, together.patientPays, together.writeOff].map(text)).toEqual([
      '104.00',
      '396.00',
      '70.00',
    ]);
    expect(text(together.contribution)).toBe('496.31');
    expect(together.minutes).toBe(90);
    expect(text(together.contributionPerHour)).toBe('330.87');
    expect(together.chairCost).toBeNull();
    expect(together.repeated).toEqual([]);

    const apart = way('insured first, cosmetic later', input());
    expect(text(apart.material)).toBe('4.55');
    expect(apart.visits.map((visit) => text(visit.material))).toEqual(['2.28', '2.27']);
    expect(apart.repeated).toEqual([
      { consumableId: 'glove', quantity: quantity('4'), cost: money('0.36') },
      { consumableId: 'dam', quantity: quantity('1'), cost: money('0.5') },
    ]);
    expect(apart.repeatedMinutes).toBeNull();
    expect(together.lines.map((line) => text(line.materialAlone))).toEqual(['2.27', '2.27']);
    expect(text(way('cosmetic only', input()).patientPays)).toBe('320.00');
    expect(text(way('insured only', input()).patientPays)).toBe('76.00');
  });

  it('count set-up time, the cost of chair time and the wished contribution when known', () => {
    const known = input({
      setUpMinutes: 10,
      chairMinuteCost: money('2.5'),
      targetPerHour: money('300'),
    });
    const together = way('all in one visit', known);
    expect([together.minutes, text(together.chairCost)]).toEqual([100, '250.00']);
    expect(text(together.afterChairTime)).toBe('246.31');
    // Twice 40 minutes of an assistant at 0.60.
    const helped = way('all in one visit', { ...known, assistantMinuteCost: money('0.6') });
    expect([helped.assistantMinutes, text(helped.assistantCost)]).toEqual([80, '48.00']);
    expect(text(helped.afterChairTime)).toBe('198.31');
    expect(helped.contribution).toBe(together.contribution);
    // 3.69 + 300 x 100 / 60
    expect(text(together.neededIncome)).toBe('503.69');
    const [insured, cosmetic] = together.lines;
    // 1.85 + 300 x 45 / 60 is above the allowed 180: no fee can reach it.
    expect([text(insured?.material), insured?.lowestFee]).toEqual(['1.85', null]);
    expect(text(insured?.incomeLimit)).toBe('180.00');
    expect([text(cosmetic?.material), text(cosmetic?.lowestFee)]).toEqual(['1.84', '276.84']);
    const apart = way('insured first, cosmetic later', known);
    expect([apart.minutes, apart.repeatedMinutes]).toEqual([110, 10]);
  });

  it('show a range where every restoration has enough recorded ones', () => {
    const own = new Array<Money>(5).fill(money('2'));
    const together = way('all in one visit', input({ recordedOwn: [own, own] }));
    // 2 x 2.00 as recorded, and what the visit and its teeth share as planned: 1.53.
    expect(together.materialRange).toEqual({
      p10: money('5.53'),
      p50: money('5.53'),
      p90: money('5.53'),
    });
    expect(together.contributionRange?.p50).toBe(money('494.47'));
    const few = input({ recordedOwn: [own, own.slice(1)] });
    expect(way('all in one visit', few).materialRange).toBeNull();
    expect(way('insured only', few).materialRange).not.toBeNull();
  });
});

const PLACES: readonly [number, string][] = [
  [11, 'M'],
  [11, 'MI'],
  [21, 'F'],
  [24, 'MOD'],
  [36, 'O'],
];
const line = fc
  .record({
    consumable: fc.option(fc.constantFrom(...Object.keys(CONSUMABLES))),
    driver: fc.constantFrom(...DRIVERS),
    amount: fc.bigInt({ min: 1n, max: 4_000_000n }).map(quantityFromMicro),
    everyAttempt: fc.boolean(),
  })
  .map(({ consumable, driver, amount, everyAttempt }) => ({
    ...templateLine(consumable, driver, '1'),
    placed: amount,
    dispensed: amount,
    everyAttempt,
  }));
const anyRestoration = fc
  .record({
    place: fc.constantFrom(...PLACES),
    reason: fc.constantFrom<Reason>('decay', 'fracture', 'wear', 'cosmetic'),
    lines: fc.array(line, { minLength: 1, maxLength: 5 }),
    attempts: fc.integer({ min: 1, max: 2 }),
    shades: fc.uniqueArray(fc.constantFrom('paste', 'enamel', 'capsule'), { maxLength: 3 }),
    minutes: fc.integer({ min: 0, max: 90 }),
  })
  .map(({ place, reason, lines, ...more }) => restorationOn(place, reason, lines, more));
const cents = fc.bigInt({ min: 0n, max: 60_000n }).map((n) => moneyFromMicro(n * CENT));
const anyCharge = fc.record<Charge>({
  fee: cents,
  allowed: fc.option(cents),
  alternate: fc.option(cents),
  coverage: fc.option(fc.bigInt({ min: 0n, max: 1_000_000n }).map((n) => n as Quantity)),
  deductibleApplies: fc.boolean(),
});
const anyPlan = fc.record({
  settings: fc.record({
    network: fc.boolean(),
    feeCeiling: fc.constantFrom(...FEE_CEILINGS),
    downgradeBilled: fc.boolean(),
  }),
  balance: fc.record({ deductibleLeft: cents, maximumLeft: fc.option(cents) }),
});
const anyInput = fc
  .record({
    work: fc.array(fc.tuple(anyRestoration, anyCharge), { minLength: 1, maxLength: 6 }),
    plan: fc.option(anyPlan),
    costShareKey: fc.constantFrom<QuoteInput['costShareKey']>('equal', 'minutes', 'surfaces'),
    staffCount: fc.integer({ min: 1, max: 3 }),
    setUpMinutes: fc.option(fc.integer({ min: 0, max: 30 })),
    chairMinuteCost: fc.option(cents),
    assistantMinuteCost: fc.option(cents),
    targetPerHour: fc.option(cents),
  })
  .map(({ work, ...more }) =>
    input({
      ...more,
      restorations: work.map(([restoration]) => restoration),
      charges: work.map(([, each]) => each),
      recordedOwn: work.map(() => []),
    }),
  );

describe('any quote', () => {
  it('adds up: lines to visits, visits to the way, and who pays to the fee', () => {
    fc.assert(
      fc.property(anyInput, (from) => {
        for (const each of compareWays(from)) {
          const inLines = each.lines.reduce((total, { material }) => total + material, 0n);
          const inVisits = each.visits.reduce((total, { material }) => total + material, 0n);
          expect([inLines, inVisits]).toEqual([each.material, each.material]);
          expect(each.planPays + each.patientPays + each.writeOff).toBe(each.fee);
          expect(each.material % CENT).toBe(0n);
          const paid = each.planPays + each.patientPays;
          expect(each.contribution).toBe(paid - each.material);
        }
      }),
    );
  });

  it('never costs less material in two visits than in one, and says what is used again', () => {
    fc.assert(
      fc.property(anyInput, (from) => {
        const [together, apart] = compareWays(from);
        if (!together || apart?.kind !== 'insured first, cosmetic later') return;
        expect(apart.material >= together.material).toBe(true);
        const again = apart.repeated.reduce((total, { cost }) => total + cost, 0n);
        expect(again).toBe(apart.material - together.material);
        expect(apart.minutes >= together.minutes).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('charges alike restorations no more for sharing a visit than they would cost alone', () => {
    fc.assert(
      fc.property(anyInput, (from) => {
        // Where templates differ, what one needs for the visit is shared by all of it, and a key such
        // as surfaces weighs on the largest: then a line may bear more, and the quote shows it.
        const [like] = from.restorations;
        if (!like) return;
        const { template, shades, reason } = like;
        const restorations = from.restorations.map((r) => ({ ...r, template, shades, reason }));
        for (const { lines } of compareWays({ ...from, restorations, costShareKey: 'equal' })) {
          for (const { material, materialAlone } of lines) {
            // Each is rounded to the cent, the one up and the other down at most.
            expect(material <= materialAlone + CENT).toBe(true);
          }
        }
      }),
      { numRuns: 300 },
    );
  });

  it('gives lowest fees that reach the target, and none that is a cent too high', () => {
    fc.assert(
      fc.property(anyInput, cents, (from, targetPerHour) => {
        for (const { lines, neededIncome } of compareWays({ ...from, targetPerHour })) {
          let asked = 0n;
          for (const each of lines) {
            if (typeof each.lowestFee !== 'bigint') {
              expect(each.incomeLimit).not.toBeNull();
              return;
            }
            asked += each.lowestFee;
            const target = targetPerHour * BigInt(each.minutes);
            const left = (fee: bigint) => (fee - each.material) * 60n;
            expect(left(each.lowestFee) >= target).toBe(true);
            if (from.setUpMinutes === null) expect(left(each.lowestFee - CENT) < target).toBe(true);
          }
          expect(asked >= (neededIncome ?? 0n)).toBe(true);
        }
      }),
    );
  });
});
