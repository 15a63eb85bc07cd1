import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { combineBooked } from './booked-visits.js';
import { EVERY_DAY, epochDay, type WorkCalendar, weekdayOf } from './calendar.js';
import { NO_SHELF } from './choose-method.js';
import { lattice } from './lattice.js';
import { demandOverLead } from './lead-time-demand.js';
import { weekdayProfile } from './period-series.js';
import { seededRandom } from './seeded-random.js';
import { forecastHistory, judgeHistory, shelfPrior } from './shelf-forecast.js';
import { type DayUse, demandHistory } from './usage-history.js';

const WEEK: WorkCalendar = {
  openWeekdays: [true, true, true, true, true, false, false],
  closedDays: new Set(),
};
const MONDAY = epochDay('2024-01-01');
const OPTIONS = { horizonDays: 10, seed: 4, draws: 500 };
const G = 60_000n;

/** Portions used by day: each open day a count of portions, as `often` says. */
function history(
  days: number,
  often: (day: number, random: () => number) => number,
  over: { unit?: bigint; calendar?: WorkCalendar } = {},
) {
  const { unit = G, calendar = WEEK } = over;
  const random = seededRandom(11);
  const uses: DayUse[] = [];
  for (let t = 0; t < days; t += 1) {
    const portions = often(t, random);
    if (portions > 0) uses.push({ day: MONDAY + t, issued: BigInt(portions) * unit });
  }
  return demandHistory(uses, { firstDay: MONDAY, lastDay: MONDAY + days - 1, calendar });
}

function forecast(of: ReturnType<typeof history>, options = OPTIONS) {
  return forecastHistory(of, judgeHistory(of, options), NO_SHELF, options);
}

const open = (t: number) => weekdayOf(MONDAY + t) < 5;
const regular = (t: number, random: () => number) =>
  open(t) ? Math.floor(random() * 5) + (weekdayOf(MONDAY + t) === 1 ? 6 : 0) : 0;
const rare = (t: number, random: () => number) =>
  open(t) && random() < 0.06 ? 1 + Math.floor(random() * 3) : 0;

describe('the forecast of a regular item', () => {
  const item = forecast(history(728, regular));

  it('expects use on open days by their weekday, none when closed', () => {
    const week = item.expectedByDay(7).map(Number);
    expect(item.firstDay).toBe(MONDAY + 728);
    expect(week.slice(5)).toEqual([0, 0]);
    expect(week[1] ?? 0).toBeGreaterThan(2.5 * (week[2] ?? 0));
    const total = week.reduce((a, b) => a + b, 0) / Number(G);
    expect(total).toBeGreaterThan(13);
    expect(total).toBeLessThan(19);
    // Each day is rounded to a millionth of its own.
    const sum = item.expectedByDay(7).reduce((a, b) => a + b, 0n);
    expect(Math.abs(Number(item.over(7).mean - sum))).toBeLessThanOrEqual(7);
  });

  it('covers what the same process uses next as often as it says', () => {
    const long = history(728 + 1400, regular);
    for (const p of [0.5, 0.9, 0.98]) {
      const level = item.stepsOver(7).quantile(p);
      let [covered, weeks] = [0, 0];
      for (let t = 728; t + 7 <= long.demand.length; t += 7) {
        const used = long.demand.subarray(t, t + 7).reduce((a, b) => a + b, 0);
        weeks += 1;
        if (used <= level) covered += 1;
      }
      // Three standard errors of 200 weeks, and the level is an estimate of its own.
      expect(covered / weeks).toBeGreaterThan(p - 3 * Math.sqrt((p * (1 - p)) / weeks) - 0.05);
    }
  });

  it('is in whole portions at every level and grows with the horizon', () => {
    for (const p of [0.5, 0.9, 0.99]) {
      let before = 0n;
      for (const days of [0, 1, 5, 10, 30]) {
        const q = item.over(days).quantile(p);
        expect(q % G).toBe(0n);
        expect(q >= before).toBe(true);
        before = q;
      }
    }
    expect(item.over(0).quantile(0.99)).toBe(0n);
  });

  it('does not change with the unit, only its figures do', () => {
    const other = forecast(history(728, regular, { unit: 7n * G }));
    expect(other.item.method).toEqual(item.item.method);
    for (const p of [0.5, 0.95])
      expect(other.over(10).quantile(p)).toBe(7n * item.over(10).quantile(p));
  });

  it('feeds demand over a random lead time', () => {
    const lead = lattice([0, 0, 0.5, 0, 0, 0.5]);
    const over = demandOverLead((days) => item.stepsOver(days), lead);
    const mean = (item.stepsOver(2).mean + item.stepsOver(5).mean) / 2;
    expect(over.mean).toBeCloseTo(mean, 6);
  });
});

describe('every kind of item gets a sensible forecast', () => {
  it('nothing used yet: nothing expected, and it says so', () => {
    const none = forecast(history(100, () => 0));
    expect(none.over(30).quantile(0.99)).toBe(0n);
    expect(none.assumptions).toEqual([{ code: 'no use yet', days: 100 }]);
    expect(none.demandClass).toBeNull();
  });

  it('one use: its rate, unsure', () => {
    const once = forecast(history(70, (t) => (t === 30 ? 2 : 0)));
    expect(once.assumptions).toEqual([{ code: 'few uses', uses: 1 }]);
    expect(once.over(70).mean).toBeGreaterThan(0n);
    expect(once.over(70).quantile(0.5)).toBeLessThanOrEqual(once.over(70).quantile(0.98));
    expect(once.over(70).quantile(0.98)).toBeGreaterThan(0n);
  });

  it('all on one day, or a history of one day', () => {
    const day = forecast(history(1, () => 9));
    expect(day.assumptions.map((a) => a.code)).toContain('short history');
    expect(day.over(7).quantile(0.95)).toBeGreaterThan(0n);
    const burst = forecast(history(60, (t) => (t === 59 ? 50 : 0), { calendar: EVERY_DAY }));
    expect(Number(burst.over(10).mean)).toBeLessThan(Number(50n * G));
  });

  it('died out: dying, and it says since when', () => {
    const past = history(700, (t, r) => (t < 400 ? regular(t, r) : 0));
    const died = forecast(past);
    const alive = forecast(history(400, regular));
    expect(died.item.died).toBe(true);
    expect(died.assumptions).toContainEqual({
      code: 'died out',
      daysSinceUse: 699 - past.demand.findLastIndex((y) => y > 0),
    });
    expect(died.over(10).mean < alive.over(10).mean / 5n).toBe(true);
  });

  it('rare: mostly nothing, sometimes a few portions', () => {
    const item = forecast(history(728, rare));
    expect(item.demandClass).toMatch(/intermittent|lumpy/);
    expect(item.stepsOver(1).quantile(0.5)).toBe(0);
    expect(item.stepsOver(20).quantile(0.98)).toBeGreaterThanOrEqual(3);
    expect(item.stepsOver(20).cdf(0)).toBeGreaterThan(0.1);
  });

  it('says what it left out and what it counted', () => {
    const uses = [
      { day: MONDAY, issued: 9n * G, oneOff: 8n * G },
      { day: MONDAY + 1, issued: 0n, shortfall: 2n * G },
    ];
    const of = demandHistory(uses, { firstDay: MONDAY, lastDay: MONDAY + 90, calendar: WEEK });
    expect(forecast(of).assumptions).toEqual(
      expect.arrayContaining([
        { code: 'left out as one-off or retake', quantity: 8n * G },
        { code: 'shortfalls counted as use', quantity: 2n * G },
      ]),
    );
  });

  it('is the same each time it is asked, and learns from the shelf', () => {
    const all = [1, 2, 3].map((k) => history(400, (t, r) => k * rare(t, r)));
    const judged = all.map((h) => judgeHistory(h, OPTIONS));
    const shelf = shelfPrior(judged);
    expect(shelf.ratio).toBeGreaterThan(0.5);
    for (const [i, h] of all.entries()) {
      const own = judged[i];
      if (own === undefined) throw new Error('not judged');
      const item = forecastHistory(h, own, shelf, OPTIONS);
      const levels = [0.5, 0.9, 0.99];
      const ask = () => levels.map((p) => item.over(14).quantile(p));
      expect(ask()).toEqual(ask());
    }
  });

  it.each([-1, 1.5])('refuses to look %p days ahead', (days) => {
    expect(() => forecast(history(30, rare)).over(days)).toThrow(/days/);
  });
});

describe('the pattern of the week', () => {
  it('averages 1 over what was seen, closed days weigh nothing', () => {
    const profile = weekdayProfile(history(728, regular));
    expect(profile.slice(5)).toEqual([0, 0]);
    expect(profile.slice(0, 5).reduce((a, b) => a + b, 0)).toBeCloseTo(5, 9);
    expect(profile[1] ?? 0).toBeGreaterThan(2);
  });

  it('is flat while little is known', () => {
    const profile = weekdayProfile(history(28, (t) => (t === 1 ? 1 : 0)));
    for (const factor of profile.slice(0, 5)) expect(Math.abs(factor - 1)).toBeLessThan(0.25);
  });
});

describe('booked visits', () => {
  const days = fc
    .array(
      fc.record({
        usual: fc.double({ min: 0, max: 20, noNaN: true }),
        booked: fc.double({ min: 0, max: 20, noNaN: true }),
        covered: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      { minLength: 1, maxLength: 20 },
    )
    .map((rows) => ({
      usual: rows.map((r) => r.usual),
      booked: rows.map((r) => r.booked),
      coverage: rows.map((r) => r.covered),
    }));

  it('replace what they cover: total = booked + rest, nothing twice, nothing lost', () => {
    fc.assert(
      fc.property(days, fc.boolean(), ({ usual, booked, coverage }, known) => {
        const found = combineBooked(usual, { booked, coverage: known ? coverage : null });
        for (const [t, total] of found.expected.entries()) {
          const [u, b] = [usual[t] ?? 0, booked[t] ?? 0];
          const rest = (found.restShare[t] ?? 0) * u;
          expect(total).toBeCloseTo(b + rest, 9);
          expect(rest).toBeLessThanOrEqual(u + 1e-9);
          expect(rest).toBeGreaterThanOrEqual(0);
          if (!known) expect(total).toBeCloseTo(Math.max(u, b), 9);
        }
      }),
    );
  });

  it('change nothing when there are none, and are all there is when the day is full', () => {
    const none = combineBooked([3, 4], { booked: [0, 0], coverage: null });
    expect([...none.expected]).toEqual([3, 4]);
    const full = combineBooked([3, 4], { booked: [1, 0], coverage: [1, 1] });
    expect([...full.expected]).toEqual([1, 0]);
    const half = combineBooked([3], { booked: [2], coverage: [0.5] });
    expect([...half.expected]).toEqual([3.5]);
  });

  it('move the whole distribution', () => {
    const of = history(728, regular);
    const item = forecast(of);
    const plain = item.over(7);
    const nothing = { quantities: new Array<bigint>(7).fill(0n), coverage: null };
    expect(item.over(7, nothing).mean).toBe(plain.mean);
    const much = { quantities: [40n * G], coverage: null };
    const more = item.over(7, much);
    const monday = item.expectedByDay(1)[0] ?? 0n;
    const off = more.mean - (plain.mean - monday + 40n * G);
    expect(off <= 2n && off >= -2n).toBe(true);
    expect(more.quantile(0.9) > plain.quantile(0.9)).toBe(true);
    const full = { quantities: new Array<bigint>(7).fill(2n * G), coverage: new Array(7).fill(1) };
    expect(item.over(7, full).mean).toBe(14n * G);
  });

  it('move every method’s distribution by the same rule', () => {
    for (const often of [rare, regular]) {
      const of = history(400, often);
      const judged = judgeHistory(of, OPTIONS);
      for (const [index, loss] of judged.losses.entries()) {
        if (loss === null) continue;
        const losses = judged.losses.map((_, m) => (m === index ? 0.001 : 1e6));
        const item = forecastHistory(of, { ...judged, losses }, NO_SHELF, OPTIONS);
        const booked = { quantities: [3n * G, 0n, 6n * G], coverage: [0.5, 0, 1] };
        const alone = item.stepsOver(1).mean;
        const both = item.stepsOver(1, booked).mean;
        const tolerance = item.item.method.name === 'resampling' ? 0.3 : 1e-6;
        expect(Math.abs(both - (3 + alone / 2))).toBeLessThanOrEqual(tolerance * (1 + both));
      }
    }
  });

  it.each([
    [{ booked: [1], coverage: null }, /one entry per day/],
    [{ booked: [1, -1], coverage: null }, /booked of day 2/],
    [{ booked: [1, 1], coverage: [0, 1.5] }, /coverage of day 2/],
    [{ booked: [1, 1], coverage: [0] }, /coverage must have/],
  ])('refuse %j', (bad, message) => {
    expect(() => combineBooked([1, 1], bad)).toThrow(message);
  });
});
