import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { Reason } from '#lib/dentition';
import type { Quantity } from '#lib/measure';
import { expandUsage } from './expand-usage.js';
import { expand, line, PIECES, restoration } from './restorations-for-tests.js';
import { DRIVERS, type PlannedLine, type PlannedRestoration } from './template.js';

const IDS = ['gel', 'strip', 'bur', 'bib', 'wedge'];
const amount = fc.bigInt({ min: 0n, max: 5_000_000n }).map((n) => n as Quantity);
const templateLine = fc
  .record({
    consumableId: fc.option(fc.constantFrom(...IDS)),
    driver: fc.constantFrom(...DRIVERS),
    amounts: fc.tuple(amount, amount),
    everyAttempt: fc.boolean(),
    reasons: fc.option(fc.constant<Reason[]>(['decay'])),
    sharesDose: fc.boolean(),
    anaesthetic: fc.boolean(),
  })
  .map(({ amounts: [a, b], ...rest }) => {
    const [placed, most] = a < b ? [a, b] : [b, a];
    return { ...rest, placed, dispensed: most };
  });
const place = fc.constantFrom<[number, string]>(
  [11, 'M'],
  [11, 'MID'],
  [21, 'F'],
  [16, 'MOD'],
  [36, 'O'],
  [46, 'DO'],
);
const anyRestoration = fc
  .record({
    lines: fc.array(templateLine, { maxLength: 8 }),
    on: place,
    reason: fc.constantFrom<Reason>('decay', 'cosmetic'),
    attempts: fc.integer({ min: 1, max: 3 }),
    cycles: fc.integer({ min: 1, max: 3 }),
    shades: fc.uniqueArray(fc.constantFrom('body', 'enamel', 'capsule-a', 'capsule-b')),
    volumeMm3: amount,
    depthMm: amount,
  })
  .map(({ lines, ...facts }) =>
    restoration(
      lines.map((each, index) => ({ ...each, lineNumber: index + 1 })),
      facts,
    ),
  );
const visit = fc.array(anyRestoration, { minLength: 1, maxLength: 5 });

function totals(lines: readonly PlannedLine[]): Map<string, bigint> {
  const sums = new Map<string, bigint>();
  for (const { consumableId, dispensed: used } of lines) {
    sums.set(consumableId, (sums.get(consumableId) ?? 0n) + used);
  }
  return sums;
}

function covers(more: Map<string, bigint>, less: Map<string, bigint>): boolean {
  return [...less].every(([id, used]) => (more.get(id) ?? 0n) >= used);
}

describe('any visit', () => {
  it('has only lines of something, never more placed than dispensed, each with its own key', () => {
    fc.assert(
      fc.property(visit, fc.integer({ min: 1, max: 4 }), (restorations, staff) => {
        const lines = expand(restorations, staff);
        for (const each of lines) {
          expect(each.dispensed > 0n && each.placed >= 0n).toBe(true);
          expect(each.placed <= each.dispensed).toBe(true);
          expect(each.restoration === null || each.tooth === null).toBe(true);
          if (PIECES.has(each.consumableId)) expect(each.dispensed % 1_000_000n).toBe(0n);
        }
        expect(new Set(lines.map(({ key }) => key)).size).toBe(lines.length);
      }),
    );
  });

  it('leaves out exactly the lines for anaesthesia when it goes without', () => {
    fc.assert(
      fc.property(visit, (restorations) => {
        const without = expandUsage({
          restorations,
          staffCount: 2,
          isWhole: (id) => PIECES.has(id),
          withoutAnaesthetic: true,
        });
        const stripped = restorations.map((r) => {
          const lines = r.template.lines.filter((each) => !each.anaesthetic);
          return { ...r, template: { ...r.template, lines } };
        });
        expect(without).toEqual(expand(stripped));
      }),
    );
  });

  it('uses the same in whatever order its restorations are listed', () => {
    fc.assert(
      fc.property(visit, (restorations) => {
        expect(totals(expand([...restorations].reverse()))).toEqual(totals(expand(restorations)));
      }),
    );
  });

  it('uses no less with one more surface, attempt, cycle, person or restoration', () => {
    fc.assert(
      fc.property(visit, fc.nat(4), (restorations, at) => {
        const used = totals(expand(restorations));
        const more = (change: (r: PlannedRestoration) => Partial<PlannedRestoration>) =>
          restorations.map((r, n) => (n === at % restorations.length ? { ...r, ...change(r) } : r));
        const wider = more((r) => ({ surfaces: [...new Set([...r.surfaces, 'M', 'L'] as const)] }));
        expect(covers(totals(expand(wider)), used)).toBe(true);
        const again = more((r) => ({ attempts: r.attempts + 1 }));
        expect(covers(totals(expand(again)), used)).toBe(true);
        const cycled = more((r) => ({ cycles: r.cycles + 1 }));
        expect(covers(totals(expand(cycled)), used)).toBe(true);
        expect(covers(totals(expand(restorations, 3)), used)).toBe(true);
        expect(covers(used, totals(expand(restorations.slice(1))))).toBe(true);
      }),
    );
  });

  it('shares with a restoration exactly like one of its own all that visit and tooth need', () => {
    fc.assert(
      fc.property(visit, fc.nat(4), (restorations, at) => {
        const shared = (lines: readonly PlannedLine[]) =>
          lines.filter((each) => each.restoration === null);
        const twin = restorations[at % restorations.length];
        const twice = twin ? [...restorations, twin] : restorations;
        expect(shared(expand(twice))).toEqual(shared(expand(restorations)));
      }),
    );
  });

  it('spreads an amount over shades without losing or gaining any', () => {
    fc.assert(
      fc.property(
        amount,
        fc.uniqueArray(fc.string({ minLength: 1 }), { minLength: 1, maxLength: 8 }),
        (dispensedEach, shades) => {
          const lines = [line(null, 'restoration', '0', { dispensed: dispensedEach })];
          const planned = expandUsage({
            restorations: [restoration(lines, { shades })],
            staffCount: 2,
            isWhole: () => false,
          });
          const sum = planned.reduce((total, each) => total + each.dispensed, 0n);
          expect(sum).toBe(dispensedEach);
        },
      ),
    );
  });
});
