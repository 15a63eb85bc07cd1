import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { formatMoney, money, moneyFromMicro } from '#lib/measure';
import { attributeCost, type CostedLine, type CostedRestoration } from './attribute-cost.js';

const CENT = 10_000n;

function line(changes: Partial<CostedLine> & { cost: CostedLine['cost'] }): CostedLine {
  return { restoration: null, tooth: null, attempt: 1, category: 'set-up', ...changes };
}

describe('a visit with two restorations', () => {
  const two: CostedRestoration[] = [
    { tooth: 11, minutes: 45, surfaces: 1 },
    { tooth: 21, minutes: 15, surfaces: 3 },
  ];
  const shared = line({ cost: money('3.17') });
  const totals = (key: 'equal' | 'minutes' | 'surfaces') =>
    attributeCost(two, [shared], key, CENT).restorations.map((r) => formatMoney(r.shared));

  it('splits shared cost by each key, to the cent', () => {
    expect(totals('equal')).toEqual(['1.59', '1.58']);
    expect(totals('minutes')).toEqual(['2.38', '0.79']);
    expect(totals('surfaces')).toEqual(['0.79', '2.38']);
  });

  it('gives a line of a tooth only to the restorations of that tooth', () => {
    const cost = attributeCost(two, [line({ tooth: 21, cost: money('0.40') })], 'equal', CENT);
    expect(cost.restorations.map((r) => formatMoney(r.shared))).toEqual(['0.00', '0.40']);
  });

  it('keeps own cost, shared cost, retakes and categories apart', () => {
    const lines = [
      line({ restoration: 0, category: 'composite', cost: money('1.08') }),
      line({ restoration: 0, category: 'composite', attempt: 2, cost: money('1.08') }),
      line({ restoration: 1, category: 'strips', cost: money('0.07') }),
      line({ cost: money('2.00') }),
    ];
    const cost = attributeCost(two, lines, 'equal', CENT);
    const [first, second] = cost.restorations;
    expect(formatMoney(cost.total)).toBe('4.23');
    expect(formatMoney(cost.retake)).toBe('1.08');
    expect(
      [first?.own, first?.shared, first?.retake].map((m) => formatMoney(m ?? money('9'))),
    ).toEqual(['2.16', '1.00', '1.08']);
    expect([...(second?.byCategory ?? [])].map(([c, m]) => `${c} ${formatMoney(m)}`)).toEqual([
      'strips 0.07',
      'set-up 1.00',
    ]);
  });

  it('rounds once: parts of cents do not get lost or added', () => {
    const third = moneyFromMicro(3_333n);
    const lines = [0, 1].map((restoration) => line({ restoration, cost: third }));
    const cost = attributeCost(two, lines, 'equal', CENT);
    expect(formatMoney(cost.total)).toBe('0.01');
    expect(cost.restorations.map((r) => formatMoney(r.own))).toEqual(['0.01', '0.00']);
  });

  it('splits equally where the key weighs nothing', () => {
    const idle = two.map((r) => ({ ...r, minutes: 0 }));
    const cost = attributeCost(idle, [shared], 'minutes', CENT);
    expect(cost.restorations.map((r) => formatMoney(r.shared))).toEqual(['1.59', '1.58']);
  });
});

const anyCost = fc.bigInt({ min: 0n, max: 10_000_000_000n }).map(moneyFromMicro);

const anyVisit = fc
  .array(
    fc.record({
      tooth: fc.constantFrom(11, 21, 36),
      minutes: fc.integer({ min: 0, max: 240 }),
      surfaces: fc.integer({ min: 1, max: 5 }),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .chain((restorations) =>
    fc.record({
      restorations: fc.constant(restorations),
      key: fc.constantFrom('equal' as const, 'minutes' as const, 'surfaces' as const),
      step: fc.constantFrom(1_000_000n, CENT, 1_000n),
      lines: fc.array(
        fc.record({
          restoration: fc.option(fc.nat({ max: restorations.length - 1 })),
          tooth: fc.constant(null),
          attempt: fc.integer({ min: 1, max: 3 }),
          category: fc.constantFrom('composite', 'adhesive', 'set-up'),
          cost: anyCost,
        }),
        { maxLength: 20 },
      ),
    }),
  );

describe('for any visit (rule 6)', () => {
  it('categories add up to restorations, restorations to the visit, in whole steps', () => {
    fc.assert(
      fc.property(anyVisit, ({ restorations, lines, key, step }) => {
        const cost = attributeCost(restorations, lines, key, step);
        const exact = lines.reduce((sum, l) => sum + l.cost, 0n);
        const difference = cost.total - exact;
        expect((difference < 0n ? -difference : difference) * 2n <= step).toBe(true);
        let sum = 0n;
        for (const r of cost.restorations) {
          const total = r.own + r.shared;
          sum += total;
          expect([...r.byCategory.values()].reduce((a, b) => a + b, 0n)).toBe(total);
          expect(r.own >= 0n && r.shared >= 0n && r.retake >= 0n && r.retake <= total).toBe(true);
          for (const part of [r.own, r.shared, r.retake, ...r.byCategory.values()]) {
            expect(part % step).toBe(0n);
          }
        }
        expect(sum).toBe(cost.total);
      }),
      { numRuns: 3000 },
    );
  });

  it('does not depend on the order of the lines', () => {
    fc.assert(
      fc.property(anyVisit, ({ restorations, lines, key, step }) => {
        const one = attributeCost(restorations, lines, key, step);
        const other = attributeCost(restorations, [...lines].reverse(), key, step);
        expect(other.total).toBe(one.total);
        const totals = (cost: typeof one) => cost.restorations.map((r) => r.own + r.shared);
        expect(totals(other)).toEqual(totals(one));
      }),
    );
  });
});
