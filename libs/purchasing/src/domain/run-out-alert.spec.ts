import { describe, expect, it } from '@jest/globals';
import { epochDay } from './forecast/calendar.js';
import { poisson } from './forecast/counts.js';
import { outlook, type RunOutFacts, runOutAlert } from './run-out-alert.js';

const MONDAY = epochDay('2026-05-04');
const day = (iso: string) => epochDay(iso);

const week = (mean: number, variance = mean) => [
  ...Array.from({ length: 5 }, () => ({ mean, variance })),
  ...[0, 1].map(() => ({ mean: 0, variance: 0 })),
];
const facts = (changes: Partial<RunOutFacts> = {}): RunOutFacts => ({
  consumable: {
    ...{ id: 'c', name: 'Strip', category: 'matrix', shade: null, size: null, grit: null },
    unit: 'piece',
  },
  today: MONDAY,
  usable: 10_000_000n,
  owed: 0n,
  coming: [],
  usual: week(2),
  booked: undefined,
  visits: [],
  deliveryOn: day('2026-05-07'),
  supplierName: 'Northgate',
  ordersSeen: null,
  ...changes,
});
const pieces = (n: number) => BigInt(n) * 1_000_000n;
const visit = (iso: string, toCome = 1, chartReference: string | null = 'C-7') => ({
  ...{ id: `v ${iso}`, day: iso, chartReference, toCome, need: pieces(1) },
});

describe('what may run out before a delivery', () => {
  it('is told by the chance that use until the delivery is more than what is there', () => {
    // Three days of two a day, as pure chance: a Poisson count of mean 6.
    const seen = outlook(facts());
    expect(seen.use).toBe(6);
    expect(seen.chance).toBeCloseTo(poisson(6).exceed(10), 12);
    expect(seen.chance).toBeCloseTo(0.0426, 4); // 1 - P(X <= 10), from tables: 0.9574
    expect(seen.day).toBeNull();
    expect(runOutAlert(facts())).toBeUndefined();
  });

  it('names the figures, the first day and the visits that may go without', () => {
    const visits = [visit('2026-05-04'), visit('2026-05-06', 3, null), visit('2026-05-07')];
    const alert = runOutAlert(facts({ usable: pieces(5), visits }));
    expect(alert).toMatchObject({
      id: 'runs-out-before-delivery:c',
      severity: 5,
      bookedVisits: [{ day: '2026-05-06', toCome: 3, need: '1' }],
    });
    const value = (name: string) => alert?.figures.find((each) => each.name === name)?.value;
    expect(value('use until delivery')).toBe('6');
    expect(value('days until delivery')).toBe('3');
    expect(value('chance')).toBe(String(Math.round(poisson(6).exceed(5) * 100)));
    expect(alert?.sentence).toContain('3 booked visits may go without, first on 2026-05-06.');
    expect(alert?.sentence).not.toContain('C-7');
  });

  it('says whether the day is the stated one or was seen, and by which share', () => {
    const short = { usable: pieces(5) };
    expect(runOutAlert(facts(short))?.sentence).toContain(
      'until a delivery ordered today from Northgate can be here on 2026-05-07, as is stated: 6',
    );
    const seen = runOutAlert(facts({ ...short, ordersSeen: 9 }));
    expect(seen?.sentence).toContain(
      'is here by 2026-05-07 in 80 of 100 cases, as in its 9 orders seen: 6 pieces are expected',
    );
    expect(seen?.figures).toEqual(
      expect.arrayContaining([
        { name: 'deliveries by then', value: '80', unit: '%' },
        { name: 'orders seen', value: '9', unit: '' },
      ]),
    );
  });

  it('counts what is booked once: more than usual raises it, a day booked out lowers it', () => {
    const much = { quantities: [pieces(9)], variances: [0], coverage: null };
    const more = outlook(facts({ booked: much }));
    expect([more.use, more.booked]).toEqual([13, 9]);
    const out = { quantities: [pieces(1), 0n, 0n], variances: [0, 0, 0], coverage: [1, 1, 1] };
    expect(outlook(facts({ booked: out }))).toMatchObject({ use: 1, chance: 0, day: null });
    const within = { quantities: [pieces(1)], variances: [0], coverage: null };
    expect(outlook(facts({ booked: within })).use).toBe(6);
  });

  it('uses nothing on days on which the practice is closed', () => {
    const friday = { today: day('2026-05-08'), deliveryOn: day('2026-05-11') };
    expect(outlook(facts(friday)).use).toBe(2);
  });

  it('counts an order from the day it is expected, and a late one not at all', () => {
    const low = { usable: pieces(2) };
    const coming = (iso: string) => [{ expectedOn: day(iso), quantity: pieces(50) }];
    expect(outlook(facts({ ...low, coming: coming('2026-05-04') })).day).toBeNull();
    expect(outlook(facts({ ...low, coming: coming('2026-05-06') })).day).toBe(day('2026-05-04'));
    const late = outlook(facts({ ...low, coming: coming('2026-05-03') }));
    expect(late).toEqual(outlook(facts(low)));
  });

  it('is sure where more is owed than there is, but not without any use', () => {
    const owed = { usable: pieces(2), owed: pieces(3) };
    expect(outlook(facts(owed))).toMatchObject({ chance: 1, day: MONDAY });
    expect(outlook(facts({ ...owed, usual: [] })).day).toBeNull();
    expect(outlook(facts({ ...owed, deliveryOn: MONDAY })).day).toBeNull();
    expect(runOutAlert(facts(owed))?.sentence).toMatch(/^2 pieces of Strip .* 3 pieces are owed/);
    const none = runOutAlert(facts({ usable: 0n }))?.sentence;
    expect(none).toMatch(/^No Strip is usable, and a delivery ordered today from Northgate/);
  });

  it('tells small amounts of paste apart', () => {
    const paste = { ...facts().consumable, unit: 'g' };
    const usual = week(0.06, 0.0036);
    const enough = facts({ consumable: paste, usual, usable: 1_000_000n });
    expect(outlook(enough).chance).toBeLessThan(0.001);
    expect(outlook({ ...enough, usable: 100_000n }).chance).toBeGreaterThan(0.5);
  });
});
